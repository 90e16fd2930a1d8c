import type { Shape } from '#core/geometry';
import { distanceBetween } from '#core/geometry';
import type { Problem } from '#core/problems';
import { checkLining, refuseCount } from './checks.ts';
import { liningFixings, liningJoints, liningSteps } from './lists.ts';
import { slatLiningParameters } from './parameters.ts';
import { slatLiningParts } from './parts.ts';
import { workOutLining, type LiningChoices } from './sizes.ts';
import { fillDefaults } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import { readOpening } from '../survey-fit.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type SlatLining = Extract<Piece, { kind: 'slat-lining' }>;

/** A lining of slats over cleats (joinery B4). Frame of the piece as in `slatLiningParts`. */
export function buildSlatLining(piece: SlatLining, context: BuildContext): BuiltPiece {
  const { choices, found } = choose(piece, context);
  return buildFrom({
    piece,
    what: 'lining',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the lining',
    table: slatLiningParameters,
    found,
    lacking: lackSize(piece, choices),
    workOut: () => workOutLining(choices, context.settings),
    positive: { names: ['run', 'O', 's', 'g', 't', 'cleat_pitch'], source: 'joinery B4' },
    refuse: refuseCount,
    parts: (layout) => slatLiningParts(piece, layout),
    finish: (layout, parts) => ({
      joints: liningJoints(piece, layout),
      fixings: liningFixings(layout),
      steps: liningSteps(layout, parts),
      findings: checkLining(layout, context.settings),
    }),
  });
}

function choose({ parameters }: SlatLining, context: BuildContext) {
  const { values, given } = fillDefaults(parameters, slatLiningParameters);
  const slats = findMaterial(context, parameters.materials.slats, { for: 'the slats', kind: 'solid' });
  const cleats = findMaterial(context, parameters.materials.cleats, { for: 'the cleats', kind: 'solid' });
  const size = measure(context, parameters.direction ?? 'across');
  const choices = {
    run: 0,
    span: 0,
    ...size?.sizes,
    ...values,
    given,
    measured: size ? `shape ${context.shapeName ?? ''}` : null,
    isBetweenSides: size?.isBetweenSides ?? false,
    curved: size?.curved ?? false,
    stock: { slats: slats.material, cleats: cleats.material },
  } as unknown as LiningChoices;
  return { choices, found: [...slats.findings, ...cleats.findings, ...(size?.findings ?? [])] };
}

interface Measured {
  readonly sizes: { readonly run: number; readonly span: number };
  /** Whether the slats go in between two of its sides. */
  readonly isBetweenSides: boolean;
  readonly curved: boolean;
  readonly findings: readonly Problem[];
}

/** Run and span of a shape: of an opening its smaller sides less what bows in, of hull sections their length and the longest girth. */
function measure({ shape, shapeName }: BuildContext, direction: 'across' | 'upright'): Measured | null {
  if (!shape) return null;
  if (shape.kind === 'sections') return measureSections(shape);
  const opening = readOpening(shape, shapeName ?? 'The shape');
  if (!opening.ok)
    return { sizes: { run: 0, span: 0 }, isBetweenSides: true, curved: false, findings: opening.problems };
  const { corners, bow } = opening.value;
  const { BL, BR, TR, TL } = corners;
  const bowsIn = (one: number, other: number) => Math.min(0, one) + Math.min(0, other);
  const width = Math.min(distanceBetween(BL, BR), distanceBetween(TL, TR)) + bowsIn(bow.left, bow.right);
  const height = Math.min(distanceBetween(BL, TL), distanceBetween(BR, TR)) + bowsIn(bow.head, bow.sill);
  const sizes = direction === 'across' ? { run: width, span: height } : { run: height, span: width };
  return { sizes, isBetweenSides: true, curved: false, findings: [] };
}

function measureSections({ sections = [] }: Shape): Measured {
  const girths = sections.map(({ line }) =>
    line.slice(1).reduce((sum, point, i) => sum + distanceBetween(line[i] ?? point, point), 0),
  );
  const stations = sections.map(({ at }) => at);
  const run = Math.max(0, ...stations) - Math.min(0, ...stations);
  return { sizes: { run, span: Math.max(0, ...girths) }, isBetweenSides: false, curved: true, findings: [] };
}

function lackSize({ name }: SlatLining, { run, span }: LiningChoices): readonly Problem[] {
  if (run > 0 && span > 0) return [];
  const lacking = [...(run > 0 ? [] : ['along']), ...(span > 0 ? [] : ['across'])].join(' and ');
  return [
    {
      severity: 'stop',
      code: 'lining-size-missing',
      message: `${name}: the size ${lacking} the slats is not known.`,
      remedy: 'Enter it, or choose a measured shape.',
      source: 'joinery B4',
    },
  ];
}

/** A lining with the trade's defaults, of a usual size unless it is fitted to a shape. */
export function newSlatLining(start: NewPiece): Piece {
  const solid = start.materials.find((material) => material.kind === 'solid') ?? start.materials[0];
  return {
    kind: 'slat-lining',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: {
      ...(start.shape ? {} : { run: 1200, span: 742 }),
      materials: { slats: solid?.id ?? '', cleats: solid?.id ?? '' },
    },
  };
}
