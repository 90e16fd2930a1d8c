import type { LiningLayout } from './sizes.ts';
import { makePart, placeAt } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part } from '../types.ts';

/** Numbers of the parts of a slatted lining in their addresses. */
export const liningNumbers = { slats: 1, cleats: 2 } as const;

const right = { x: 1, y: 0, z: 0 };
const up = { x: 0, y: 1, z: 0 };
const down = { x: 0, y: -1, z: 0 };

/**
 * The parts of a slatted lining (joinery B4). Frame of the piece: origin at the lower left of the lining, x right, y up,
 * z to the viewer, z = 0 on the seen face of the slats; a lining on a curve is laid out flat.
 */
export function slatLiningParts(piece: Piece, layout: LiningLayout): readonly Part[] {
  const { book, choices } = layout;
  const v = book.value;
  const upright = choices.direction === 'upright';
  const slats = Array.from({ length: v('n') }, (_, i) => v('first') + i * v('step'));
  const cleats = Array.from(
    { length: v('nc') },
    (_, i) => v('cleat_in') + i * v('cleat_pitch') - v('cw') / 2,
  );
  const slat = makePart(piece, {
    number: liningNumbers.slats,
    name: 'Slat',
    oneMore: true,
    material: choices.stock.slats,
    finished: { length: v('run'), width: v('s'), thickness: v('t') },
    working: { length: 'run', width: 's', thickness: 't' },
    placements: slats.map((from) =>
      upright
        ? placeAt({ x: from, y: 0, z: 0 }, up, right)
        : placeAt({ x: 0, y: from + v('s'), z: 0 }, right, down),
    ),
    faceSide: 'face side to the room',
    notes: ['Edges eased; all ripped at one setting.'],
  });
  const cleat = makePart(piece, {
    number: liningNumbers.cleats,
    name: 'Cleat',
    material: choices.stock.cleats,
    finished: { length: v('O'), width: v('cw'), thickness: v('ct') },
    working: { length: 'O', width: 'cw', thickness: 'ct' },
    machining: slats.map((from) => hole(layout, from + v('s') / 2)),
    placements: cleats.map((from) =>
      upright
        ? placeAt({ x: 0, y: from + v('cw'), z: -v('t') }, right, down)
        : placeAt({ x: from, y: 0, z: -v('t') }, up, right),
    ),
    faceSide: 'face side to the slats',
    notes: choices.curved ? ['Bent or sawn to the curve; its length is measured round it.'] : [],
  });
  return [slat, cleat];
}

/** Clearance for the screw into the middle of a slat, from the back of the cleat (joinery C1). */
function hole({ book: { value: v } }: LiningLayout, along: number): Machining {
  return {
    kind: 'hole',
    from: 'back',
    x: along,
    y: v('cw') / 2,
    diameter: 3.8,
    depth: 'through',
    countersink: 7,
    note: 'into the slat',
  };
}
