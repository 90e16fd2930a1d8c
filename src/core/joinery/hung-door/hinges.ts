import { makeRecess } from '../parts.ts';
import type { Machining } from '../types.ts';
import type { WorkingBook } from '../working.ts';

/** Heights of the middles of the hinges above the lower edge of the door, from the top. */
export function hingeHeights(book: WorkingBook): readonly number[] {
  return ['hinge_top', 'hinge_mid', 'hinge_low'].filter((name) => book.has(name)).map(book.value);
}

/** Beds for the hinge leaves in the face edge of a part, their middles along it; open to the face with the knuckles. */
export function cutHingeBeds({ value: v }: WorkingBook, middles: readonly number[]): readonly Machining[] {
  const half = v('hinge_L') / 2;
  return middles.map((middle) =>
    makeRecess(
      'housing',
      'face-edge',
      { x: [middle - half, middle + half], y: [0, v('hinge_in')], z: [0, v('hinge_leaf')] },
      'hinge leaf; width and depth from the hinge itself',
    ),
  );
}
