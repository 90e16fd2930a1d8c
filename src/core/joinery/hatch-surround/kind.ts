import { formatNumber, markSize } from '#core/units';
import type { KindOfPiece } from '../kind.ts';
import { partAddress } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { checkSurround, refuseSurround } from './checks.ts';
import { sizeLaps } from './laps.ts';
import { hatchSurroundParameters } from './parameters.ts';
import { segmentNumber, surroundNumbers, surroundParts } from './parts.ts';
import { chooseSurround, workOutSurround, type SurroundLayout } from './sizes.ts';

const show = markSize;
type HatchSurround = Extract<Piece, { kind: 'hatch-surround' }>;

function build(piece: HatchSurround, context: BuildContext): BuiltPiece {
  const { choices, findings, lacking } = chooseSurround(piece.parameters, context, piece.name);
  return buildFrom<SurroundLayout>({
    piece,
    what: 'surround',
    seenFrom: context.shape?.seenFrom ?? 'standing below the hatch, looking up at the ring',
    table: hatchSurroundParameters,
    found: findings,
    lacking,
    workOut: () => sizeLaps(workOutSurround(choices)),
    positive: { names: ['ring_W', 'ring_H', 'Ri'], source: 'joinery B16' },
    refuse: refuseSurround,
    parts: (layout) => surroundParts(piece, layout),
    finish: (layout, parts) => ({
      joints: joints(piece, layout),
      fixings: fixings(layout),
      steps: steps(layout, parts),
      findings: checkSurround(layout, context.settings),
    }),
  });
}

function joints(piece: Piece, layout: SurroundLayout): readonly Joint[] {
  const { choices } = layout;
  if (choices.form !== 'segments') return [];
  const { straightA, straightB, segment } = surroundNumbers;
  const address = (number: number) => partAddress(piece, number);
  const settings = jointSettings(layout);
  const lapped = choices.joint === 'half-lap';
  const places = Array.from({ length: choices.segments }, (_, i) => (lapped ? segmentNumber(i) : segment));
  const ends = [places[0] ?? segment, places[places.length - 1] ?? segment];
  const joint = (one: number, other: number, count: number): Joint => ({
    ...{ kind: choices.joint, between: [address(one), address(other)], count, settings },
  });
  const straights = [straightA, straightB];
  if (!lapped)
    return [
      ...straights.map((number) => joint(number, segment, 4)),
      ...(choices.segments > 1 ? [joint(segment, segment, 4 * (choices.segments - 1))] : []),
    ];
  return [
    ...straights.flatMap((number) => ends.map((end) => joint(number, end, 2))),
    ...places.slice(1).map((number, i) => joint(places[i] ?? segment, number, 4)),
  ];
}

function jointSettings({ choices, book }: SurroundLayout): readonly string[] {
  const v = book.value;
  const ends = `Ends of the segments ${formatNumber(v('alpha') / 2, 2)}° off square to the chord.`;
  if (choices.joint === 'half-lap')
    return [
      `Laps ${show(v('lap'))} long, half of ${show(v('T'))} deep: each segment lies over what follows it; try the depth on spare stock until the faces are flush, within ${show(0.1)}.`,
      ends,
    ];
  const wide = show(v('t') + 2 * v('gap'));
  if (choices.joint === 'mitre-and-spline')
    return [
      `Slot ${wide} wide in the middle, ${show(v('d'))} deep, right across the joint, square to it; face side to the fence. Grain of the spline across the joint; size the end grain first.`,
      ends,
    ];
  return [
    `Slot ${wide} wide in the middle, ${show(v('d'))} deep, ${show(v('tenon_W') + 1)} along the joint, square to it; face side to the fence.`,
    ends,
  ];
}

const screwSpacing = 150; // mm round the ring (joinery C1)

function fixings({ book, choices }: SurroundLayout): readonly Fixing[] {
  const v = book.value;
  const round = 2 * (v('A') + v('B'));
  const length = Math.ceil((v('T') + 18) / 5) * 5;
  return [
    {
      item: `Screw 4 × ${length}, countersunk, stainless A4`,
      quantity: Math.ceil(round / screwSpacing),
      use: 'ring, plugged',
      source: 'joinery B16, C1',
    },
    { item: 'Bedding compound, cartridge', quantity: 1, use: 'under the ring', source: 'joinery B16' },
    ...(choices.form === 'segments' || choices.lining === 'solid'
      ? [{ item: 'Epoxy glue, small pack', quantity: 1, use: 'ring and bent corners', source: 'joinery B16' }]
      : []),
  ];
}

type Named = { readonly parts: readonly Part[] };

function ringSteps({ choices, book }: SurroundLayout, ring: Named): readonly StepDraft[] {
  if (choices.form === 'one-piece') {
    const text =
      'Rout the ring from the sheet with a template, the inside first; keep the inside for other parts.';
    return [inWorkshop('rout', 60, text, ring)];
  }
  const v = book.value;
  const lapped = choices.joint === 'half-lap';
  const widths = lapped
    ? Array.from({ length: choices.segments }, (_, i) => v(`seg_W_${i + 1}`))
    : [v('seg_W')];
  const saw = `Saw the segments from boards ${show(Math.ceil(Math.max(...widths)))} wide, grain along the chord, true to a template; all ends with one setting of ${formatNumber(v('alpha') / 2, 2)}°.`;
  const ready = {
    'loose-tenon': 'Slot all ends for the loose tenons, face side to the fence.',
    'mitre-and-spline': 'Slot all ends right across for the splines, face side to the fence.',
    'half-lap': 'Cut the laps, half the thickness deep; try every joint with the faces down on a flat board.',
  }[choices.joint];
  const glue = 'Glue each corner first, then the straights, flat over the full-size drawing.';
  return [
    inWorkshop('saw', 60, saw, ring),
    inWorkshop('slots', 60, ready, ring),
    inWorkshop('glue-ring', 90, glue, ring),
  ];
}

function steps(layout: SurroundLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const { choices, book } = layout;
  const ring = { parts: parts.filter(({ name }) => !/lining/i.test(name)) };
  const plies = { parts: parts.filter(({ name }) => name.startsWith('Ply')) };
  const lined = choices.lining === 'solid';
  const bend = lined
    ? `Bend and glue ${book.value('plies')} plies of ${show(book.value('ply_T'))} round a mould for each corner; leave them on it a day.`
    : '';
  return chainSteps([
    aboard('template', 30, 'Take a paper of the aperture with all four corners; check radii and diagonals.', {
      take: ['paper', 'radius gauge', 'pencil'],
    }),
    ...ringSteps(layout, ring),
    ...(lined ? [inWorkshop('bend', 120, bend, plies)] : []),
    inWorkshop(
      'edges',
      45,
      `Round the edges that hands touch by ${show(3)} or more; finish all but the bedded face.`,
      ring,
    ),
    aboard('dry', 60, `Dry fit; scribe the ${lined ? 'lining and ' : ''}ring to the camber.`, {
      parts,
      take: ['compass', 'block plane', 'bag'],
    }),
    aboard('bed', 60, 'Bed the ring and screw it, screws plugged; take the excess off when it is firm.', {
      parts,
      take: ['bedding compound', 'screws', 'plugs'],
    }),
  ]);
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const ring = materials.find(({ kind }) => kind === 'solid') ?? materials[0];
  return {
    kind: 'hatch-surround',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: {
      ...(!shape && { width: 520, height: 520 }),
      depths: [40],
      materials: { ring: ring?.id ?? '' },
    },
  };
}

export const hatchSurroundKind: KindOfPiece<'hatch-surround'> = {
  words: {
    name: 'Hatch surround',
    purpose: 'A ring round a deck aperture, and the lining of its depth',
    help: [
      'A ring covers the edge of the aperture and stands back from it by a reveal; boards and bent corners line the depth.',
      'From straights and corner segments it takes little timber: two segments in a corner at least, their grain along the chord, loose tenons in every joint, or splines right across, or half-laps with three segments or more. In one piece from a sheet it is quick and wastes most of the blank.',
      'Measure the depth at eight places and the radius at every corner: few hatches are true. The lining is the deepest of them and 2 more, and is scribed to the camber.',
      'Fit it dry, scribe, then bed it in compound; screws are plugged.',
    ],
  },
  parameters: hatchSurroundParameters,
  shape: { kinds: ['opening'], required: false },
  seen: { across: ['ring_W', 'A', 'w'], up: ['ring_H', 'B', 'w'] },
  build,
  make,
};
