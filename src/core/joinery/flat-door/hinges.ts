import type { LaidLip } from './lips.ts';
import type { DoorLayout } from './sizes.ts';
import { cutHingeBeds, hingeHeights } from '../hung-door/hinges.ts';
import type { Machining } from '../types.ts';

/** Hinges whose leaf does not lie on the hinge lipping as a whole, by their heights. */
export function hingesOffLipping(layout: DoorLayout): readonly number[] {
  const { book, choices } = layout;
  const room = choices.blocks ? book.value('block') : 0;
  const half = book.value('hinge_L') / 2;
  return hingeHeights(layout.book).filter(
    (height) => height - half < room || height + half > book.value('Hd') - room,
  );
}

/** Beds for the hinge leaves in the hinge lipping, open to the face with the knuckles. */
export function layHinges(layout: DoorLayout, lip: LaidLip): readonly Machining[] {
  const { book } = layout;
  const off = hingesOffLipping(layout);
  const middles = hingeHeights(book)
    .filter((height) => !off.includes(height))
    .map((height) => (lip.edge === 'left' ? height : book.value('Hd') - height) - lip.from);
  return cutHingeBeds(book, middles);
}
