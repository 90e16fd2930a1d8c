import { carryCuts } from '../joints/carry.ts';
import { workOutRebate } from '../joints/case-joints.ts';
import { mirrorAll } from '../joints/mirror.ts';
import type { WorkedJoint } from '../joints/worked-joint.ts';
import type { Machining } from '../types.ts';
import type { ShelfLayout } from './sizes.ts';

/** The strip of the fiddle as a plain board that the edge of the shelf stands on: its height is its length. */
const strip = ({ book }: ShelfLayout) => ({
  length: book.value('fiddle_W'),
  width: book.value('fiddle_L'),
  thickness: book.value('tf'),
});

/** The rebate of a fiddle over the front edge (joinery B8, C8); null for a fiddle that has none. */
export function fiddleRebate(layout: ShelfLayout): WorkedJoint | null {
  const { book, choices } = layout;
  if (choices.fiddle !== 'rebate') return null;
  const male = { length: book.value('front_L'), width: book.value('fiddle_L'), thickness: book.value('T') };
  return workOutRebate({ male, other: strip(layout) }, { lip: book.value('tf') - book.value('rebate') });
}

/** What the shelf takes from its fiddle, whose face edge is up. */
export function fiddleCuts(layout: ShelfLayout): readonly Machining[] {
  const { book } = layout;
  const size = {
    length: book.value('fiddle_L'),
    width: book.value('fiddle_W'),
    thickness: book.value('tf'),
  };
  const inside = mirrorAll(fiddleRebate(layout)?.cuts.other ?? [], 'z', strip(layout));
  return carryCuts(inside, { face: 'back', size, to: ({ x, y }) => ({ x: y, y: x }) });
}
