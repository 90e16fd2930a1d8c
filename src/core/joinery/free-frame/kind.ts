import { formatNumber, markSize } from '#core/units';
import type { KindOfPiece } from '../kind.ts';
import { partAddress } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import { fixingSpacing } from '../rules.ts';
import { chainSteps } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { checkFrame, refuseFrame } from './checks.ts';
import { gapOf } from './members.ts';
import { freeFrameParameters } from './parameters.ts';
import { frameParts, sizeTongues } from './parts.ts';
import { chooseFrame, runsThrough, workOutFrame, type FreeFrameLayout } from './sizes.ts';

const show = markSize;
type FreeFrame = Extract<Piece, { kind: 'free-frame' }>;

function build(piece: FreeFrame, context: BuildContext): BuiltPiece {
  const { choices, findings, lacking } = chooseFrame(piece.parameters, context, piece.name);
  return buildFrom<FreeFrameLayout>({
    piece,
    what: 'frame',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the frame',
    table: freeFrameParameters,
    found: findings,
    lacking,
    workOut: () => sizeTongues(workOutFrame(choices)),
    positive: { names: [], source: 'joinery B1' },
    refuse: refuseFrame,
    parts: (layout) => frameParts(piece, layout),
    finish: (layout, parts) => ({
      joints: joints(piece, layout),
      fixings: fixings(layout),
      steps: steps(layout, parts),
      findings: checkFrame(layout, parts, context.settings),
    }),
  });
}

function joints(piece: Piece, layout: FreeFrameLayout): readonly Joint[] {
  const { choices, points } = layout;
  const count = points.length;
  return points.map((_, i) => ({
    kind: choices.joint === 'spline' ? 'mitre-and-spline' : choices.joint,
    between: [partAddress(piece, ((i + count - 1) % count) + 1), partAddress(piece, i + 1)],
    count: 1,
    settings: settingsAt(layout, i),
  }));
}

function settingsAt(layout: FreeFrameLayout, i: number): readonly string[] {
  const { book, choices, points, ends } = layout;
  const v = book.value;
  const corner = i + 1;
  const before = i === 0 ? points.length : i;
  const alpha = v(`alpha_${corner}`);
  if (ends[i]?.after === 'mitre') {
    const [a, b] = [v(`phi_a_${corner}`), v(`phi_b_${corner}`)];
    const spline = () =>
      `Slot in the middle of the thickness, ${show(v('t'))} wide and ${show(v('d'))} deep, face side to the fence.`;
    return [
      `Corner ${formatNumber(alpha, 2)}°: member ${corner} ${formatNumber(a, 2)}° from its edge (saw ${formatNumber(Math.abs(90 - a), 2)}° off square), member ${before} ${formatNumber(b, 2)}° (${formatNumber(Math.abs(90 - b), 2)}° off square).`,
      ...(choices.joint === 'spline' ? [spline()] : []),
    ];
  }
  const keeps = runsThrough(points, i, choices.through) === 'after' ? corner : before;
  const cut = `Corner ${formatNumber(alpha, 2)}°: shoulders ${formatNumber(Math.abs(90 - alpha), 2)}° off square.`;
  switch (choices.joint) {
    case 'half-lap':
      return [
        cut,
        `Half of ${show(v('T'))} from each, ${show(v('T') / 2)} deep; member ${keeps} keeps its face.`,
      ];
    case 'bridle':
      return [
        cut,
        `Tongue ${show(v('t'))} in the middle; member ${keeps} has the slot, ${show(v('t') + 2 * gapOf(layout), 2)} wide.`,
      ];
    case 'loose-tenon':
      return [
        cut,
        `Member ${keeps} runs through. Slot ${show(v('t') + 2 * gapOf(layout), 2)} wide, ${show(v('d'))} deep in both, square to the joint.`,
      ];
    case 'butt':
    case 'mitre':
    case 'spline':
      return [cut, `Member ${keeps} runs through; two screws through it.`];
  }
}

function fixings({ choices, book, points }: FreeFrameLayout): readonly Fixing[] {
  const v = book.value;
  const length = points.reduce((sum, _, i) => sum + v(`side_${i + 1}`), 0);
  const wall = `Screw 4.5 × ${Math.ceil((v('T') + 30) / 5) * 5}, countersunk, stainless A4`;
  const corner = `Screw 5 × ${Math.ceil((Math.max(...points.map((_, i) => v(`w_${i + 1}`))) + 50) / 10) * 10}, countersunk, stainless A4`;
  return [
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'corners', source: 'joinery C' },
    ...(choices.joint === 'butt'
      ? [{ item: corner, quantity: 2 * points.length, use: 'corners', source: 'joinery C1' }]
      : []),
    {
      item: wall,
      quantity: Math.max(points.length * 2, Math.ceil(length / fixingSpacing.most) + points.length),
      use: 'frame to the boat',
      source: 'joinery A11',
    },
    ...(choices.gap > 0
      ? [
          {
            item: 'Packing wedges, pair',
            quantity: Math.ceil(length / fixingSpacing.most) + points.length,
            use: 'frame to the boat',
            source: 'joinery A11',
          },
        ]
      : []),
  ];
}

function steps(layout: FreeFrameLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const { choices, points } = layout;
  const members = parts.slice(0, points.length);
  const four = points.length === 4 && choices.chosen?.rectangle;
  const close =
    choices.joint === 'butt'
      ? 'glue and screw the corners'
      : 'glue it with blocks or a band round it, end grain sized first';
  return chainSteps([
    inWorkshop(
      'plane',
      15 * points.length,
      'Plane the members to width and thickness in one setting, one spare with them.',
      { parts: members },
    ),
    inWorkshop(
      'cut',
      12 * points.length,
      'Cut the ends, longest member first; try each angle on offcuts of the same width.',
      { parts: members },
    ),
    inWorkshop('joints', 20 * points.length, 'Cut the joints, face side always to the fence or table.', {
      parts,
    }),
    inWorkshop(
      'dry',
      20,
      `Dry fit on a flat bench${four ? `; diagonals equal within ${show(1)}` : ' over its full-size drawing'}.`,
      { parts },
    ),
    inWorkshop('glue', 40, `Finish the edges inside, then ${close}; wind ${show(1)} at most.`, { parts }),
    inWorkshop('finish', 90, 'Flush the joints, break the edges, finish all round.', { parts: members }),
    aboard(
      'fix',
      60,
      choices.gap > 0
        ? `Wedge it in with about ${show(choices.gap)} all round, corners first, and screw it.`
        : 'Bed it and screw it, corners first.',
      { parts: members, take: ['wedges', 'level', 'drill'] },
    ),
  ]);
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const frame = materials.find(({ kind }) => kind === 'solid') ?? materials[0];
  return {
    kind: 'free-frame',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: { ...(!shape && { width: 600, height: 400 }), materials: { frame: frame?.id ?? '' } },
  };
}

export const freeFrameKind: KindOfPiece<'free-frame'> = {
  words: {
    name: 'Free frame',
    purpose: 'Members round any outline, whatever its angles',
    help: [
      'Members lie flat round an outline without a dent: a measured opening or outline, corners you enter, or a rectangle. They may differ in width.',
      'Every corner is worked out at its own angle. A mitre between members of unequal width does not halve the angle: take both settings from the joint list.',
      'A spline or a half-lap holds best; a lap in plywood only with a backing, a butt only where it is covered.',
      'Glue it over its full-size drawing: angles other than square cannot be checked by diagonals.',
    ],
  },
  parameters: freeFrameParameters,
  shape: { kinds: ['opening', 'outline'], required: false },
  gapToShape: 'gap',
  seen: { across: ['Fw', 'side_1', 'w_4'], up: ['Fh', 'side_2', 'w_1'] },
  build,
  make,
};
