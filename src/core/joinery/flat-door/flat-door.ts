import { hasStop, type Problem } from '#core/problems';
import { describeBuilt } from '../built-piece.ts';
import { checkDoor, checkDoorPossible } from './checks.ts';
import { chooseDoor, type DoorChoices } from './choices.ts';
import { flatDoorFixings, flatDoorJoints } from './lists.ts';
import { flatDoorParameters } from './parameters.ts';
import { flatDoorParts } from './parts.ts';
import { workOutDoor, type DoorLayout } from './sizes.ts';
import { flatDoorSteps } from './steps.ts';
import { placeNewDoor } from '../hung-door/choices.ts';
import { fitLock } from '../hung-door/fit-lock.ts';
import { checkParameters } from '../parameter-checks.ts';
import { envelopeOf, nothing } from '../parts.ts';
import { checkExtent } from '../piece-findings.ts';
import { checkSmallParts } from '../small-parts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type FlatDoor = Extract<Piece, { kind: 'flat-door' }>;

/**
 * A flat door: a sheet with solid lippings, rounded corners and vent slots (joinery B2). Frame of the piece: origin at the
 * lower left of the door, x right, y up, z to the viewer, z = 0 on its face with the hinge knuckles.
 */
export function buildFlatDoor(piece: FlatDoor, context: BuildContext): BuiltPiece {
  const limits = [
    ...checkParameters(piece.parameters, flatDoorParameters, piece.letter),
    ...checkExtent(piece.parameters, flatDoorParameters, piece.letter),
    ...checkSlotCount(piece),
  ];
  const { choices, findings } = chooseDoor(piece.parameters, context);
  const early = [...limits, ...findings, ...checkSize(piece, choices)];
  const unusable = hasStop(limits) || !(choices.width > 0 && choices.height > 0);
  if (unusable) return describe(piece, choices, early);
  const layout = workOutDoor(choices, context.settings);
  const impossible = checkDoorPossible(layout);
  if (impossible.length) {
    return describe(piece, choices, [...early, ...impossible], { working: layout.book.steps() });
  }
  return finish({ piece, context, layout, early });
}

function finish(made: {
  readonly piece: FlatDoor;
  readonly context: BuildContext;
  readonly layout: DoorLayout;
  readonly early: readonly Problem[];
}): BuiltPiece {
  const { piece, context, layout, early } = made;
  const parts = fitLock(flatDoorParts(piece, layout), layout.book, layout.choices);
  const findings = [...early, ...checkDoor(layout, context.settings), ...checkSmallParts(parts)];
  return describe(piece, layout.choices, findings, {
    parts,
    joints: flatDoorJoints(piece, layout),
    fixings: flatDoorFixings(layout, parts),
    steps: flatDoorSteps(piece, layout, { parts, settings: context.settings }),
    working: layout.book.steps(),
    envelope: envelopeOf(parts) ?? nothing,
  });
}

function describe(
  piece: FlatDoor,
  { frame }: DoorChoices,
  findings: readonly Problem[],
  made: Partial<BuiltPiece> = {},
): BuiltPiece {
  return describeBuilt(
    piece,
    frame?.built.seenFrom ?? 'standing in front of the door, on the side of its hinge knuckles',
    findings,
    made,
  );
}

/** A door without a frame needs its size entered. */
function checkSize({ name, parameters }: FlatDoor, choices: DoorChoices): readonly Problem[] {
  if (
    parameters.frame !== undefined ||
    parameters.cabinetFront !== undefined ||
    (choices.width > 0 && choices.height > 0)
  )
    return [];
  const lacking = [...(choices.width > 0 ? [] : ['width']), ...(choices.height > 0 ? [] : ['height'])];
  return [
    {
      severity: 'stop',
      code: 'door-size-missing',
      message: `${name} hangs in no frame of this project, and its ${lacking.join(' and ')} ${lacking.length > 1 ? 'have' : 'has'} not been entered.`,
      remedy: 'Choose the door frame it hangs in, or enter the clear size less the gaps.',
      source: 'joinery B1, B2',
    },
  ];
}

const mostSlots = 100; // a guard against a slip of the keys, far beyond any door

function checkSlotCount({ parameters }: FlatDoor): readonly Problem[] {
  const { slots = 0 } = parameters;
  // no number, or one below nothing, is told by `checkParameters`
  if (!(slots > 0) || !Number.isFinite(slots) || (Number.isInteger(slots) && slots <= mostSlots)) return [];
  return [
    {
      severity: 'stop',
      code: 'count-not-whole',
      message: `${slots} slots in each band were asked for.`,
      remedy: `Enter a whole number, ${mostSlots} at most; 0 for none.`,
    },
  ];
}

/** A flat door with the trade's defaults: for the first frame without a door, else of a usual size, to be replaced by the real one. */
export function newFlatDoor(start: NewPiece): Piece {
  const { materials } = start;
  const thicknessOf = (material: NewPiece['materials'][number]) =>
    material.kind === 'sheet' ? Math.abs(material.thickness - 18) : Infinity;
  const sheets = materials.filter((material) => material.kind === 'sheet');
  const core = [...sheets].sort((one, other) => thicknessOf(one) - thicknessOf(other))[0] ?? materials[0];
  const lipping = materials.find((material) => material.kind === 'solid') ?? materials[0];
  const hangsIn = placeNewDoor(start.pieces ?? []);
  return {
    kind: 'flat-door',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: {
      ...(hangsIn ?? { width: 580, height: 1700 }),
      materials: { core: core?.id ?? '', lipping: lipping?.id ?? '' },
    },
  };
}
