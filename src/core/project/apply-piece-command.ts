import type { Piece } from '#core/joinery';
import { fail, succeed, unreachable, type Result } from '#core/problems';

import { findParameterFault } from './check-parameter.ts';
import type { ParameterValue, PieceCommand } from './commands.ts';
import { addItem, changeItem, removeItem } from './lists.ts';
import type { Project } from './types.ts';

/** The project after a change of what is to be made. */
export function applyPieceCommand(project: Project, command: PieceCommand): Result<Project> {
  const { pieces } = project;
  switch (command.kind) {
    case 'add-piece':
      return withPieces(project, addItem(pieces, command.piece, 'piece', command.at));
    case 'change-piece':
      return withPieces(
        project,
        changeItem(pieces, command.id, 'piece', () => succeed(command.piece)),
      );
    case 'set-parameter':
      return withPieces(
        project,
        changeItem(pieces, command.id, 'piece', (piece) => setParameter(piece, command.key, command.value)),
      );
    case 'remove-piece':
      return withPieces(project, removeItem(pieces, command.id, 'piece'));
    default:
      return unreachable(command);
  }
}

const materialKey = /^materials\.(.+)$/;

/** The piece with one parameter set; its key and type are checked against the kind, so the piece stays what it is. */
function setParameter(piece: Piece, key: string, value: ParameterValue | null): Result<Piece> {
  const fault = findParameterFault(piece, key, value);
  if (fault) return fail(fault);
  const use = materialKey.exec(key)?.[1];
  const parameters =
    use === undefined
      ? put(piece.parameters, key, value)
      : { ...piece.parameters, materials: put(piece.parameters.materials, use, value) };
  return succeed({ ...piece, parameters } as Piece);
}

function put(values: object, key: string, value: ParameterValue | null): object {
  const others = Object.fromEntries(Object.entries(values).filter(([each]) => each !== key));
  if (value === null) return others;
  return key in values ? { ...values, [key]: value } : { ...others, [key]: value };
}

function withPieces(project: Project, pieces: Result<readonly Piece[]>): Result<Project> {
  return pieces.ok ? succeed({ ...project, pieces: pieces.value }) : pieces;
}
