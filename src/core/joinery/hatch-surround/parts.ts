import type { Outline, Point } from '#core/geometry';
import { frontPlane, layFlat, rightwards } from '../flat/lay-flat.ts';
import { step } from '../flat/polygon.ts';
import { roundCorners } from '../flat/round-corners.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part } from '../types.ts';
import { ringPieces, slotAt, type RingPiece } from './ring.ts';
import type { SurroundLayout } from './sizes.ts';

/** Numbers of the parts of a surround in their addresses. */
export const surroundNumbers = {
  ring: 1,
  straightA: 2,
  straightB: 3,
  segment: 4,
  tenon: 5,
  liningA: 6,
  liningB: 7,
  ply: 8,
} as const;

/** The number of a segment, counted from 0 in its corner: those in half-laps are not alike, and have no tenons. */
export function segmentNumber(place: number): number {
  return place < 2 ? surroundNumbers.segment + place : surroundNumbers.ply + place - 1;
}

/**
 * The parts of a hatch surround. Frame of the piece: origin at the lower left of the aperture, z to the viewer, z = 0 where
 * the ring lies against the lining or deck head; the lining goes back from there.
 */
export function surroundParts(piece: Piece, layout: SurroundLayout): readonly Part[] {
  const { choices } = layout;
  const ring = choices.form === 'one-piece' ? [onePiece(layout)] : builtRing(layout);
  const lining = choices.lining === 'solid' ? liningDrafts(layout) : [];
  return [...ring, ...lining].map((draft) => makePart(piece, draft));
}

/** A rectangle round the aperture, this much larger on every side, with these corners. */
function rounded({ book }: SurroundLayout, larger: number, radius: number): Outline {
  const [right, high] = [book.value('A') + larger, book.value('B') + larger];
  const corners = [
    { x: -larger, y: -larger },
    { x: right, y: -larger },
    { x: right, y: high },
    { x: -larger, y: high },
  ];
  return roundCorners(corners, [radius, radius, radius, radius]);
}

function onePiece(layout: SurroundLayout): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const laid = layFlat(rounded(layout, v('rv') + v('w'), v('Ro')), rightwards, frontPlane(v('T')));
  return {
    number: surroundNumbers.ring,
    name: 'Ring',
    material: choices.stock.ring,
    finished: { length: v('ring_W'), width: v('ring_H'), thickness: v('T') },
    working: { length: 'ring_W', width: 'ring_H', thickness: 'T' },
    outline: laid.outline,
    holes: [laid.toPart(rounded(layout, v('rv'), v('Ri')))],
    faceSide: 'face side to the viewer',
    placements: [laid.placement],
    notes: [`${Math.round(v('waste_share') * 100)} % of its blank is waste: lay smaller parts inside it.`],
  };
}

function builtRing(layout: SurroundLayout): readonly PartDraft[] {
  const pieces = ringPieces(layout);
  const of = (kind: RingPiece['kind']) => pieces.filter((piece) => piece.kind === kind);
  const { straightA, straightB, segment } = surroundNumbers;
  return [
    ringDraft(layout, of('straight-A'), {
      number: straightA,
      name: 'Straight, bottom and top',
      length: 'straight_A',
      width: 'w',
    }),
    ringDraft(layout, of('straight-B'), {
      number: straightB,
      name: 'Straight, left and right',
      length: 'straight_B',
      width: 'w',
    }),
    ...(layout.choices.joint === 'half-lap'
      ? lappedSegments(layout, of('segment'))
      : [
          ringDraft(layout, of('segment'), {
            number: segment,
            name: 'Corner segment',
            length: 'seg_L',
            width: 'seg_W',
          }),
          tenonDraft(layout, pieces),
        ]),
  ];
}

/** The segments of a corner one by one, four of each. */
function lappedSegments(layout: SurroundLayout, pieces: readonly RingPiece[]): readonly PartDraft[] {
  return Array.from({ length: layout.choices.segments }, (_, place) =>
    ringDraft(
      layout,
      pieces.filter((piece) => piece.place === place),
      {
        number: segmentNumber(place),
        name: `Corner segment ${place + 1}`,
        length: `seg_L_${place + 1}`,
        width: `seg_W_${place + 1}`,
      },
    ),
  );
}

function ringDraft(
  layout: SurroundLayout,
  pieces: readonly RingPiece[],
  named: { readonly number: number; readonly name: string; readonly length: string; readonly width: string },
): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const laid = pieces.map((piece) => layFlat(piece.outline, piece.along, frontPlane(v('T'))));
  const first = laid[0];
  const T = v('T');
  const toPart = (outline: Outline) => first?.toPart(outline) ?? [];
  return {
    number: named.number,
    name: named.name,
    material: choices.stock.ring,
    finished: { length: v(named.length), width: v(named.width), thickness: T },
    working: { length: named.length, width: named.width, thickness: 'T' },
    outline: first?.outline ?? [],
    machining: pieces[0] ? jointCuts(layout, pieces[0], toPart) : [],
    faceSide: 'face side to the viewer',
    placements: laid.map(({ placement }) => placement),
    notes: named.name.startsWith('Corner segment') ? ['Grain along the chord.'] : [],
  };
}

/** What the joints at both its ends take from a piece. */
function jointCuts(
  layout: SurroundLayout,
  piece: RingPiece,
  toPart: (outline: Outline) => Outline,
): readonly Machining[] {
  const { book, choices } = layout;
  const T = book.value('T');
  if (choices.joint === 'half-lap')
    return piece.laps.map(({ from, outline }): Machining => ({
      ...{ kind: 'prism', name: 'lap', from, depth: T / 2, outline: toPart(outline) },
      note: 'half the thickness',
    }));
  const half = book.value('t') / 2 + book.value('gap');
  const what = choices.joint === 'mitre-and-spline' ? 'spline, right across' : 'loose tenon';
  return piece.joints.map((joint): Machining => ({
    ...{ kind: 'prism', name: 'mortise', from: 'face', below: T / 2 - half, depth: T / 2 + half },
    outline: toPart(slotAt(layout, piece, joint)),
    note: `for the ${what}, square to the joint, ${book.value('d')} deep`,
  }));
}

/** A tenon in each joint: at the start of every piece. */
function tenonDraft(layout: SurroundLayout, pieces: readonly RingPiece[]): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const finished = { length: v('tenon_L'), width: v('tenon_W'), thickness: v('t') };
  const face = v('T') - (v('T') - v('t')) / 2;
  const isSpline = choices.joint === 'mitre-and-spline';
  // a spline begins at the inside of the ring, a tenon lies in its middle
  const off = isSpline ? (finished.width - v('w')) / 2 : 0;
  const place = (joint: RingPiece['joints'][number]) => {
    const at = (x: number, y: number): Point =>
      step(step(joint.at, joint.into, (x * finished.length) / 2), joint.out, off + (y * finished.width) / 2);
    return layFlat([at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)], joint.into, frontPlane(face)).placement;
  };
  return {
    number: surroundNumbers.tenon,
    name: isSpline ? 'Spline' : 'Loose tenon',
    material: choices.stock.ring,
    finished,
    working: { length: 'tenon_L', width: 'tenon_W', thickness: 't' },
    faceSide: 'any',
    placements: pieces.flatMap(({ joints }) => (joints[0] ? [place(joints[0])] : [])),
    notes: [
      isSpline ? 'Grain across the joint; flushed to the ring when glued.' : 'Ends rounded to the slot.',
    ],
  };
}

const back = { x: 0, y: 0, z: -1 };

function liningDrafts(layout: SurroundLayout): readonly PartDraft[] {
  const { book, choices } = layout;
  const v = book.value;
  const board = (number: number, name: string, length: 'straight_A' | 'straight_B'): PartDraft => ({
    number,
    name,
    material: choices.stock.lining,
    finished: { length: v(length), width: v('Ld'), thickness: v('tl') },
    working: { length, width: 'Ld', thickness: 'tl' },
    faceSide: 'face side to the inside of the hatch, face edge to the ring',
    placements:
      length === 'straight_A'
        ? [
            placeAt({ x: v('A') - v('r'), y: v('tl'), z: 0 }, { x: -1, y: 0, z: 0 }, back),
            placeAt({ x: v('r'), y: v('B') - v('tl'), z: 0 }, { x: 1, y: 0, z: 0 }, back),
          ]
        : [
            placeAt({ x: v('tl'), y: v('r'), z: 0 }, { x: 0, y: 1, z: 0 }, back),
            placeAt({ x: v('A') - v('tl'), y: v('B') - v('r'), z: 0 }, { x: 0, y: -1, z: 0 }, back),
          ],
    notes: [],
  });
  const flat = { length: v('ply_L'), width: v('Ld'), thickness: v('ply_T') };
  return [
    board(surroundNumbers.liningA, 'Lining, bottom and top', 'straight_A'),
    board(surroundNumbers.liningB, 'Lining, left and right', 'straight_B'),
    {
      number: surroundNumbers.ply,
      name: 'Ply of a bent lining corner',
      material: choices.stock.lining,
      finished: flat,
      rough: { length: Math.ceil(flat.length), width: Math.ceil(flat.width + 8), thickness: flat.thickness },
      working: { length: 'ply_L', width: 'Ld', thickness: 'ply_T' },
      // one spare for each corner (joinery B17)
      quantity: 4 * (v('plies') + 1),
      faceSide: 'any',
      placements: [],
      notes: ['Bent dry round a mould of the corner and glued; trimmed to the arc. One spare a corner.'],
    },
  ];
}
