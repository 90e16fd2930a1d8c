import type { Point3 } from '#core/geometry';
import { makePart, makeRecess, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part } from '../types.ts';
import type { DividersLayout } from './sizes.ts';
import { gridStart, hasWalls, wallDrafts } from './walls.ts';

/** Numbers of the parts of dividers in their addresses. */
export const dividerNumbers = { back: 1, across: 2, stripAcross: 3, stripBack: 4 } as const;

const up: Point3 = { x: 0, y: 1, z: 0 };
const right: Point3 = { x: 1, y: 0, z: 0 };
const backwards: Point3 = { x: 0, y: 0, z: -1 };

/** True when strips are asked for and find room beside the base of a bin. */
export function hasStrips({ choices, book }: DividersLayout): boolean {
  return choices.strips && book.has('strip_room') && book.value('strip_room') >= book.value('strip');
}

/** The parts of dividers. Frame of the piece: origin at the lower front left of the locker, x right, y up, z to the front. */
export function dividerParts(piece: Piece, layout: DividersLayout): readonly Part[] {
  const { atX, atZ } = layout;
  return [
    ...(atX.length > 0 ? [backDraft(layout)] : []),
    ...(atZ.length > 0 ? [acrossDraft(layout)] : []),
    ...(hasStrips(layout) ? stripDrafts(layout) : []),
    ...wallDrafts(layout),
  ].map((draft) => makePart(piece, draft));
}

/** Where dividers begin: clear of the locker, or in their housings in the walls. */
function endAt(layout: DividersLayout): number {
  const v = layout.book.value;
  return hasWalls(layout) ? gridStart(layout) - v('let') : v('fit') / 2;
}

/** Dividers front to back: slots from above where others cross. */
function backDraft(layout: DividersLayout): PartDraft {
  const { book, choices, atX, atZ } = layout;
  const v = book.value;
  return {
    number: dividerNumbers.back,
    name: 'Divider, front to back',
    material: choices.stock.dividers,
    finished: { length: v('L_back'), width: v('h'), thickness: v('t') },
    working: { length: 'L_back', width: 'h', thickness: 't' },
    machining: atZ.map((at) => slot(layout, at, [v('h') - v('slot_h'), v('h')])),
    faceSide: 'face side to the left, face edge down, start to the front',
    placements: atX.map((at) =>
      placeAt({ x: gridStart(layout) + at, y: 0, z: -endAt(layout) }, backwards, up),
    ),
    notes: atZ.length > 0 ? ['Slots open upwards.'] : [],
  };
}

/** Dividers across: slots from below. */
function acrossDraft(layout: DividersLayout): PartDraft {
  const { book, choices, atX, atZ } = layout;
  const v = book.value;
  return {
    number: dividerNumbers.across,
    name: 'Divider, across',
    material: choices.stock.dividers,
    finished: { length: v('L_across'), width: v('h'), thickness: v('t') },
    working: { length: 'L_across', width: 'h', thickness: 't' },
    machining: atX.map((at) => slot(layout, at, [0, v('slot_h')])),
    faceSide: 'face side to the back, face edge down',
    placements: atZ.map((at) =>
      placeAt({ x: endAt(layout), y: 0, z: -(gridStart(layout) + at + v('t')) }, right, up),
    ),
    notes: atX.length > 0 ? ['Slots open downwards.'] : [],
  };
}

function slot(layout: DividersLayout, at: number, y: readonly [number, number]) {
  const v = layout.book.value;
  const middle = gridStart(layout) + at + v('t') / 2 - endAt(layout);
  const half = v('slot_w') / 2;
  const from = y[0] > 0 ? 'far-edge' : 'face-edge';
  return makeRecess('slot', from, { x: [middle - half, middle + half], y, z: [0, v('t')] });
}

const clear = 1; // mm between the base of a bin and its strips, each side

function stripDrafts(layout: DividersLayout): readonly PartDraft[] {
  const { book, choices, columns, rows } = layout;
  const v = book.value;
  const s = v('strip');
  const middles = (count: number, axis: 'x' | 'z') =>
    Array.from(
      { length: count },
      (_, i) => gridStart(layout) + i * (v(`cell_${axis}`) + v('t')) + v(`cell_${axis}`) / 2,
    );
  const cells = middles(columns, 'x').flatMap((x) => middles(rows, 'z').map((z) => ({ x, z: -z })));
  const [halfX, halfZ] = [v('base_x') / 2, v('base_z') / 2];
  const along = cells.flatMap(({ x, z }) =>
    [z + halfZ + clear, z - halfZ - clear - s].map((at) => placeAt({ x: x - halfX, y: 0, z: at }, right, up)),
  );
  const deep = cells.flatMap(({ x, z }) =>
    [x - halfX - clear - s, x + halfX + clear].map((at) =>
      placeAt({ x: at, y: 0, z: z + v('strip_z') / 2 }, backwards, up),
    ),
  );
  const draft = (number: number, name: string, length: string, placements: typeof along): PartDraft => ({
    number,
    name,
    material: choices.stock.strips,
    finished: { length: v(length), width: s, thickness: s },
    working: { length, width: 'strip', thickness: 'strip' },
    faceSide: 'any',
    placements,
    notes: [],
  });
  return [
    draft(dividerNumbers.stripAcross, 'Strip, front and back of a bin', 'base_x', along),
    draft(dividerNumbers.stripBack, 'Strip, left and right of a bin', 'strip_z', deep),
  ];
}
