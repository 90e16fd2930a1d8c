import { hasStop, type Problem } from '#core/problems';
import { enteredAperture, measuredAperture, type Aperture } from './aperture.ts';
import { checkLids, refuseLids } from './checks.ts';
import { lidsFixings, lidsJoints, lidsSteps } from './lists.ts';
import { lidsParameters } from './parameters.ts';
import { lidsParts } from './parts.ts';
import type { LidsChoices } from './layout.ts';
import { workOutLids } from './sizes.ts';
import { fillDefaults } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type Lids = Extract<Piece, { kind: 'lids' }>;

/** A row of loose lids on cleats and bearers (joinery B10). Frame of the piece as in `lidsParts`. */
export function buildLids(piece: Lids, context: BuildContext): BuiltPiece {
  const { choices, found, lacking } = choose(piece, context);
  return buildFrom({
    piece,
    what: 'lid',
    seenFrom: context.shape?.seenFrom ?? 'from above, standing in front',
    table: lidsParameters,
    found,
    lacking,
    workOut: () => workOutLids(choices),
    positive: {
      names: ['L', 'W', 'n', 'lid_L', 'lid_W', 'span', 'bearing', 'bearing_mid'],
      source: 'joinery B10',
    },
    refuse: refuseLids,
    parts: (layout) => lidsParts(piece, layout),
    finish: (layout, parts) => ({
      joints: lidsJoints(layout, parts),
      fixings: lidsFixings(layout, parts),
      steps: lidsSteps(layout, parts),
      findings: checkLids(layout, context.settings),
    }),
  });
}

function choose(piece: Lids, context: BuildContext) {
  const { parameters } = piece;
  const { values, given } = fillDefaults(parameters, lidsParameters);
  const lids = findMaterial(context, parameters.materials.lids, { for: 'the lids', kind: 'sheet' });
  const cleats = findMaterial(context, parameters.materials.cleats, { for: 'the cleats', kind: 'solid' });
  const { aperture, measured, problems } = findAperture(piece, context);
  const choices = {
    ...values,
    given,
    aperture: aperture ?? enteredAperture(0, 0),
    measured,
    stock: { lids: lids.material, cleats: cleats.material },
  } as unknown as LidsChoices;
  return {
    choices,
    found: [...lids.findings, ...cleats.findings],
    lacking: aperture ? [] : hasStop(problems) ? problems : lackSize(piece),
  };
}

interface Found {
  readonly aperture: Aperture | null;
  readonly measured: string | null;
  readonly problems: readonly Problem[];
}

/** As entered when both sizes are, else the measured shape. */
function findAperture({ parameters: { length, width } }: Lids, { shape, shapeName }: BuildContext): Found {
  if (length !== undefined && width !== undefined) {
    return { aperture: enteredAperture(length, width), measured: null, problems: [] };
  }
  if (!shape) return { aperture: null, measured: null, problems: [] };
  const found = measuredAperture(shape, shapeName ?? 'The shape');
  return found.ok
    ? { aperture: found.value, measured: `shape ${shapeName ?? ''}`, problems: [] }
    : { aperture: null, measured: null, problems: found.problems };
}

function lackSize({ name }: Lids): readonly Problem[] {
  return [
    {
      severity: 'stop',
      code: 'aperture-missing',
      message: `${name}: the aperture is neither measured nor entered.`,
      remedy: 'Choose a measured opening or outline seen from above, or enter length and width.',
      source: 'joinery B10',
    },
  ];
}

/** Lids with the trade's defaults, over a berth of a usual size unless they are fitted to a shape. */
export function newLids(start: NewPiece): Piece {
  const sheets = start.materials.flatMap((material) => (material.kind === 'sheet' ? [material] : []));
  const off = ({ thickness }: (typeof sheets)[number]) => Math.abs(thickness - 12);
  const sheet = [...sheets].sort((one, other) => off(one) - off(other))[0] ?? start.materials[0];
  const solid = start.materials.find((material) => material.kind === 'solid') ?? start.materials[0];
  return {
    kind: 'lids',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: {
      ...(start.shape ? {} : { length: 1840, width: 610 }),
      materials: { lids: sheet?.id ?? '', cleats: solid?.id ?? '' },
    },
  };
}
