import { hasStop, sortBySeverity } from '#core/problems';
import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { checkChoices, checkFrame } from './checks.ts';
import { chooseFrame } from './choices.ts';
import type { FrameChoices } from './choices.ts';
import { explainFit } from './explain.ts';
import { frameFixings } from './fixings.ts';
import { checkJoints } from './joint-checks.ts';
import { frameJoints } from './joints.ts';
import { layOutFrame } from './layout.ts';
import type { FrameLayout } from './layout.ts';
import { frameNumbers, layMembers } from './members.ts';
import { doorFrameParameters } from './parameters.ts';
import { makeMember } from './parts.ts';
import { workOutSizes } from './sizes.ts';
import { frameSteps } from './steps.ts';
import { infillThickness, makeCovers, makeInfill, makeStops } from './trim.ts';
import { workOutTrim } from './trim-sizes.ts';
import { checkParameters } from '../parameter-checks.ts';
import { envelopeOf, findMaterial, nothing } from '../parts.ts';
import { checkSmallParts } from '../small-parts.ts';
import { cornerNames, readOpening } from '../survey-fit.ts';
import type { Material, NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece, Part, WorkingStep } from '../types.ts';

type DoorFrame = Extract<Piece, { kind: 'door-frame' }>;

/**
 * A door frame or lining for an opening out of square (joinery B1). Frame of the piece: origin at the corner BL of the
 * opening, x right and y up along the frame, z to the viewer, z = 0 on the bulkhead's face towards the viewer.
 */
export function buildDoorFrame(piece: DoorFrame, context: BuildContext): BuiltPiece {
  const limits = checkParameters(piece.parameters, doorFrameParameters, piece.letter);
  const choices = chooseFrame(piece.parameters, context.settings);
  const early = [...limits, ...checkChoices(choices, piece.parameters)];
  if (!context.shape) return unbuilt(piece, context, [measureFirst(piece), ...early]);
  const name = context.shapeName ?? piece.shape ?? 'opening';
  const opening = readOpening(context.shape, name);
  if (!opening.ok) return unbuilt(piece, context, [...opening.problems, ...early]);
  if (hasStop(limits) || (choices.infill && choices.infillOrdinates.length < 2)) {
    return unbuilt(piece, context, early);
  }
  const stock = chooseStock(choices, context);
  const layout = layOutFrame(choices, opening.value, name);
  workOutSizes(layout);
  workOutTrim(layout, { frame: stock.frame, infillThickness: infillThickness(stock.infill) });
  const impossible = checkPossible(layout);
  const findings = [...early, ...stock.findings, ...impossible];
  if (impossible.length) return unbuilt(piece, context, findings, layout.book.steps());
  return finish({ piece, context, layout, stock, findings });
}

interface FrameStock {
  readonly frame: Material;
  readonly covers: Material;
  readonly infill: Material;
  readonly findings: readonly Problem[];
}

function chooseStock(choices: FrameChoices, context: BuildContext): FrameStock {
  const { materials } = choices;
  const frame = findMaterial(context, materials.frame, { for: 'the frame', kind: 'solid' });
  const covers = findMaterial(context, materials.covers ?? materials.frame, {
    for: 'the covers',
    kind: 'solid',
  });
  const infill = findMaterial(context, materials.infill ?? materials.frame, {
    for: 'the panel above the head',
    kind: 'either',
  });
  return {
    frame: frame.material,
    covers: covers.material,
    infill: infill.material,
    findings: [
      ...frame.findings,
      ...(materials.covers ? covers.findings : []),
      ...(choices.infill && materials.infill ? infill.findings : []),
    ],
  };
}

interface Made {
  readonly piece: DoorFrame;
  readonly context: BuildContext;
  readonly layout: FrameLayout;
  readonly stock: FrameStock;
  readonly findings: readonly Problem[];
}

function finish({ piece, context, layout, stock, findings }: Made): BuiltPiece {
  const { book } = layout;
  const seenFrom = context.shape?.seenFrom ?? '';
  const made = makeParts({ piece, context, layout, stock, findings });
  const parts = made.filter(isSound);
  const v = book.value;
  return {
    piece: piece.id,
    letter: piece.letter,
    name: piece.name,
    kind: 'door-frame',
    seenFrom,
    parts,
    joints: frameJoints(piece, layout),
    matchedSets: [],
    fixings: frameFixings(layout, parts),
    steps: frameSteps(piece, layout, parts),
    working: book.steps(),
    envelope: envelopeOf(parts) ?? nothing,
    opening: Object.fromEntries(
      cornerNames.map((corner) => [corner, { x: v(`x${corner}`), y: v(`y${corner}`) }]),
    ),
    turn: (v('phi') * Math.PI) / 180,
    findings: sortBySeverity(
      [
        ...findings,
        ...made.filter((part) => !isSound(part)).map(unmakeable),
        ...explainFit(layout),
        ...checkFrame(layout, context.settings),
        ...checkJoints(layout, stock.frame),
        ...checkSmallParts(parts),
      ].map((found) => ({
        about: piece.letter,
        ...found,
      })),
    ),
  };
}

function makeParts({ piece, context, layout, stock }: Made): readonly Part[] {
  const numbers = frameNumbers(layout);
  // Sheet's measured thickness, a film on each of its faces and on both walls, and a hair (joinery 0.7, C7).
  const groove = infillThickness(stock.infill) + 4 * context.settings.film + 0.2;
  const made = {
    numbers,
    stock: { material: stock.frame, groove, seenFrom: context.shape?.seenFrom ?? '' },
  };
  return [
    ...layMembers(layout, numbers).map((member) => makeMember(piece, layout, member, made)),
    ...makeStops(piece, layout, numbers, stock.frame),
    ...makeCovers(piece, layout, numbers, stock.covers),
    ...makeInfill(piece, layout, numbers, stock.infill),
  ];
}

/** True when every size of a part is a positive number. */
function isSound(part: Part): boolean {
  const sizes = [part.finished, part.cut, part.rough].flatMap((size) => Object.values(size));
  return sizes.every((value) => Number.isFinite(value) && value > 0);
}

function unmakeable(part: Part): Problem {
  const { length, width, thickness } = part.finished;
  const sizes = [length, width, thickness].map((value) =>
    Number.isFinite(value) ? markSize(value) : 'nothing',
  );
  return {
    severity: 'stop',
    code: 'part-impossible',
    about: part.id,
    message: `${part.name} comes out at ${sizes.join(' × ')}: it cannot be made, and is left out.`,
    remedy: 'Check the widths and thicknesses it is worked out from.',
    source: 'joinery B1',
  };
}

const mustBePositive = [
  'Fw',
  'Fh',
  'Wc',
  'Hc',
  'Wd',
  'Hd',
  'head_L',
  'jamb_left_L',
  'jamb_right_L',
  'sill_L',
  'stop_head_L',
  'infill_W',
] as const;

/** Says which size came out at nothing: the opening is too small for what was asked. */
function checkPossible({ book }: FrameLayout): readonly Problem[] {
  const bad = mustBePositive.find((name) => book.has(name) && !(book.value(name) > 0));
  if (!bad) return [];
  const label = book.steps().find((step) => step.name === bad)?.label ?? bad;
  const opening = `${book.value('xBR').toFixed(0)} × ${book.value('yTL').toFixed(0)}`;
  return [
    {
      severity: 'stop',
      code: 'frame-impossible',
      message: `No frame fits: ${label} comes out at ${book.value(bad).toFixed(1)} in an opening of about ${opening}.`,
      remedy: 'Take thinner members, check the units of the readings, or measure again.',
      source: 'joinery B1',
    },
  ];
}

function measureFirst(piece: DoorFrame): Problem {
  return {
    severity: 'stop',
    code: 'opening-not-measured',
    message: `${piece.name} has no measured opening to be fitted to.`,
    remedy:
      'Measure widths at the foot, a third, two thirds and the top; both heights; both diagonals; plumb of both sides; level of sill and head; bow of the sides; thickness of the bulkhead at six points.',
    source: 'joinery A10, A3',
  };
}

function unbuilt(
  piece: DoorFrame,
  context: BuildContext,
  findings: readonly Problem[],
  working: readonly WorkingStep[] = [],
): BuiltPiece {
  return {
    piece: piece.id,
    letter: piece.letter,
    name: piece.name,
    kind: 'door-frame',
    seenFrom: context.shape?.seenFrom ?? '',
    parts: [],
    joints: [],
    matchedSets: [],
    fixings: [],
    steps: [],
    working,
    envelope: nothing,
    findings: sortBySeverity(findings.map((found) => ({ about: piece.letter, ...found }))),
  };
}

/** A door frame with the trade's defaults; boat bulkheads are thin, so the cover on the far face is the stop. */
export function newDoorFrame(start: NewPiece): Piece {
  const solid = start.materials.find((material) => material.kind === 'solid');
  const frame = (solid ?? start.materials[0])?.id ?? '';
  return {
    kind: 'door-frame',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: { stop: 'cover', materials: { frame } },
  };
}
