import type { LaidLip } from './lips.ts';
import type { DoorLayout } from './sizes.ts';
import { makeRecess } from '../parts.ts';
import type { Machining } from '../types.ts';

/** Heights of the middles of the hinges above the lower edge of the door, from the top. */
export function hingeHeights({ book }: DoorLayout): readonly number[] {
  return ['hinge_top', 'hinge_mid', 'hinge_low'].filter((name) => book.has(name)).map(book.value);
}

/** Hinges whose leaf does not lie on the hinge lipping as a whole, by their heights. */
export function hingesOffLipping(layout: DoorLayout): readonly number[] {
  const { book, choices } = layout;
  const room = choices.blocks ? book.value('block') : 0;
  const half = book.value('hinge_L') / 2;
  return hingeHeights(layout).filter(
    (height) => height - half < room || height + half > book.value('Hd') - room,
  );
}

/** Beds for the hinge leaves in the hinge lipping, open to the face with the knuckles. */
export function layHinges(layout: DoorLayout, lip: LaidLip): readonly Machining[] {
  const { book } = layout;
  const v = book.value;
  const off = hingesOffLipping(layout);
  return hingeHeights(layout)
    .filter((height) => !off.includes(height))
    .map((height) => {
      const middle = (lip.edge === 'left' ? height : v('Hd') - height) - lip.from;
      const half = v('hinge_L') / 2;
      return makeRecess(
        'housing',
        'face-edge',
        { x: [middle - half, middle + half], y: [0, v('hinge_in')], z: [0, v('hinge_leaf')] },
        'hinge leaf; width and depth from the hinge itself',
      );
    });
}
