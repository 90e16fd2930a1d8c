import { hasStop, type Problem } from '#core/problems';
import { describeBuilt } from '../built-piece.ts';
import { checkFront, checkFrontPossible } from './checks.ts';
import { chooseFront, type FrontChoices } from './choices.ts';
import { openingInPiece, type FrontOpening } from './fit.ts';
import { frameParts } from './frame.ts';
import { closedCells } from './cells.ts';
import { makeFronts } from './fronts.ts';
import { checkFrontJoints } from './joint-checks.ts';
import { frontFixings, frontJoints } from './lists.ts';
import { cabinetFrontParameters } from './parameters.ts';
import { matchFronts } from './sets.ts';
import { workOutFront, type FrontLayout } from './sizes.ts';
import { frontSteps } from './steps.ts';
import { checkParameters } from '../parameter-checks.ts';
import { envelopeOf, nothing } from '../parts.ts';
import { checkExtent } from '../piece-findings.ts';
import { readOpening } from '../survey-fit.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type CabinetFront = Extract<Piece, { kind: 'cabinet-front' }>;

/**
 * A face frame with its fronts (joinery B6), to sizes entered or within a measured opening. Frame of the piece: origin
 * at the lower left corner of the frame, x right, y up, z to the viewer, z = 0 at the face of the frame.
 */
export function buildCabinetFront(piece: CabinetFront, context: BuildContext): BuiltPiece {
  const limits = [
    ...checkParameters(piece.parameters, cabinetFrontParameters, piece.letter),
    ...checkExtent(piece.parameters, cabinetFrontParameters, piece.letter),
  ];
  const { choices, findings } = chooseFront(piece.parameters, context);
  const early = [...limits, ...findings, ...checkGrid(piece, choices)];
  const name = context.shapeName ?? piece.shape ?? 'the opening';
  const read = context.shape ? readOpening(context.shape, name) : null;
  if (read && !read.ok) return describe(piece, context, [...read.problems, ...early]);
  const opening = read ? { measured: read.value, name } : null;
  const lacking = opening ? [] : checkSize(piece, choices);
  if (hasStop([...early.filter((one) => one.code !== 'material-missing'), ...lacking])) {
    return describe(piece, context, [...lacking, ...early]);
  }
  return finish({ piece, context, choices, opening, early });
}

interface Request {
  readonly piece: CabinetFront;
  readonly context: BuildContext;
  readonly choices: FrontChoices;
  readonly opening: FrontOpening | null;
  readonly early: readonly Problem[];
}

function finish({ piece, context, choices, opening, early }: Request): BuiltPiece {
  const layout = workOutFront(choices, opening);
  const impossible = checkFrontPossible(layout);
  if (impossible.length) {
    return describe(piece, context, [...early, ...impossible], { working: layout.book.steps() });
  }
  const cells = closedCells(piece, layout);
  const sets = matchFronts(piece, layout, cells);
  const parts = [...frameParts(piece, layout), ...makeFronts(piece, layout, sets)];
  const made = { parts, cells, sets };
  const findings = [...early, ...checkFront(layout, made, context.settings), ...checkFrontJoints(layout)];
  return describe(piece, context, findings, {
    parts,
    joints: frontJoints(piece, layout),
    matchedSets: sets.map(({ id, parts: members, direction, between, trim }) => ({
      id,
      parts: members,
      direction,
      between,
      trim,
    })),
    fixings: frontFixings(layout, cells),
    steps: frontSteps(layout, made),
    working: layout.book.steps(),
    envelope: envelopeOf(parts) ?? nothing,
    ...openingOf(layout),
  });
}

function openingOf({ book, opening }: FrontLayout): Pick<BuiltPiece, 'opening' | 'turn'> {
  if (!opening) return {};
  return { opening: openingInPiece(book), turn: -opening.measured.tilt };
}

function describe(
  piece: CabinetFront,
  context: BuildContext,
  findings: readonly Problem[],
  made: Partial<BuiltPiece> = {},
): BuiltPiece {
  return describeBuilt(piece, context.shape?.seenFrom ?? 'standing in front of the cabinet', findings, made);
}

/** Without a measured opening both sizes must be entered. */
function checkSize(piece: CabinetFront, { width, height }: FrontChoices): readonly Problem[] {
  const lacking = [...(width === null ? ['width'] : []), ...(height === null ? ['height'] : [])];
  if (lacking.length === 0) return [];
  return [
    {
      severity: 'stop',
      code: 'size-missing',
      message: `${piece.name} has no ${lacking.join(' and ')}, and no measured opening to be fitted to.`,
      remedy: 'Choose a measured opening, or enter width and height.',
      source: 'joinery A10, B6',
    },
  ];
}

/** The grid must be of whole numbers, and what closes it must have as many rows and columns. */
function checkGrid({ parameters }: CabinetFront, { rows, columns }: FrontChoices): readonly Problem[] {
  const whole = (value: number) => Number.isInteger(value) && value >= 1 && value <= 100;
  if (!whole(rows) || !whole(columns)) {
    return [
      {
        severity: 'stop',
        code: 'grid-not-whole',
        message: `${columns} × ${rows} openings were asked for.`,
        remedy: 'Enter whole numbers, 1 or more.',
        source: 'joinery B6',
      },
    ];
  }
  const { cells } = parameters;
  if (!cells || (cells.length === rows && cells.every((row) => row.length === columns))) return [];
  return [
    {
      severity: 'warn',
      code: 'cells-do-not-fit',
      message: `What closes the openings is given for ${cells.length} rows of ${cells.map((row) => row.length).join(', ')}; the grid has ${rows} rows of ${columns}. Cells not said are drawers.`,
      remedy: 'Say for every opening whether it is a drawer, a door or open.',
      source: 'joinery B6',
    },
  ];
}

/** A cabinet front of four drawers with the trade's defaults; fitted to its opening when there is one. */
export function newCabinetFront(start: NewPiece): Piece {
  const solid = start.materials.find((material) => material.kind === 'solid');
  const sheets = start.materials.filter((material) => material.kind === 'sheet');
  const thickest = sheets.reduce<(typeof sheets)[number] | undefined>(
    (best, sheet) => (best && best.thickness >= sheet.thickness ? best : sheet),
    undefined,
  );
  const first = start.materials[0];
  return {
    kind: 'cabinet-front',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: {
      ...(!start.shape && { width: 460, height: 640 }),
      columns: 1,
      rows: 4,
      materials: {
        frame: (solid ?? first)?.id ?? '',
        fronts: (thickest ?? solid ?? first)?.id ?? '',
      },
    },
  };
}
