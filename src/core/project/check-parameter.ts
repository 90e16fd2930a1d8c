import { parametersOf, type ParameterInfo, type Piece } from '#core/joinery';
import { unreachable, type Problem } from '#core/problems';

import type { ParameterValue } from './commands.ts';

/** Why a parameter of a piece cannot have this value by its name or type; null when it can. Limits are the piece's own to judge. */
export function findParameterFault(piece: Piece, key: string, value: ParameterValue | null): Problem | null {
  const known = parametersOf(piece.kind);
  const info = known.find((each) => each.key === key);
  if (!info)
    return fault(
      'parameter-unknown',
      key,
      `Piece ${piece.letter} "${piece.name}" has no parameter "${key}".`,
      `It has: ${known.map((each) => each.key).join(', ')}.`,
    );
  if (value === null)
    return info.required === true
      ? fault('parameter-required', key, `${info.label} cannot be left out.`, 'Choose a value for it.')
      : null;
  if (suits(info, value)) return null;
  return fault(
    'parameter-unfit',
    key,
    `${info.label} cannot be ${JSON.stringify(value)}.`,
    `It takes ${describe(info)}.`,
  );
}

function suits(info: ParameterInfo, value: ParameterValue): boolean {
  switch (info.type) {
    case 'length':
    case 'number':
      return typeof value === 'number' && Number.isFinite(value);
    case 'whole':
      return typeof value === 'number' && Number.isInteger(value);
    case 'yes-no':
      return typeof value === 'boolean';
    case 'choice':
      return (info.choices ?? []).some((choice) => choice.value === value);
    case 'material':
    case 'piece':
      return typeof value === 'string';
    case 'lengths':
    case 'numbers':
      return Array.isArray(value) && value.every((each) => typeof each === 'number' && Number.isFinite(each));
    case 'cells':
      return Array.isArray(value) && value.every((row) => Array.isArray(row) && row.every(isCell));
    default:
      return unreachable(info.type);
  }
}

function isCell(cell: unknown): boolean {
  return cell === 'drawer' || cell === 'door' || cell === 'open';
}

function describe(info: ParameterInfo): string {
  switch (info.type) {
    case 'length':
      return 'a length in mm';
    case 'number':
      return 'a number';
    case 'whole':
      return 'a whole number';
    case 'yes-no':
      return 'yes or no';
    case 'choice':
      return `one of ${(info.choices ?? []).map((choice) => choice.value).join(', ')}`;
    case 'material':
      return 'the id of a material';
    case 'piece':
      return 'the id of a piece';
    case 'lengths':
      return 'a list of lengths in mm';
    case 'numbers':
      return 'a list of numbers';
    case 'cells':
      return 'rows of drawer, door or open';
    default:
      return unreachable(info.type);
  }
}

function fault(code: string, about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, about, message, remedy };
}
