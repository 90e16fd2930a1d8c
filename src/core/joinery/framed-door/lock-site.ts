import { layRails } from './members.ts';
import { isPlugged, type FramedLayout } from './sizes.ts';
import type { LockSite } from '../hung-door/lock.ts';

/** Where a lock can go: the stile up to its groove, rails in the way with their tenons. */
export function lockSite(layout: FramedLayout): LockSite {
  const { book, choices } = layout;
  const v = book.value;
  const loose = isPlugged(choices.joint);
  return {
    stile: v('ws') - v('gd'),
    obstacles: layRails(layout).map(({ size, top, left }) => ({
      what: 'the joint of a rail',
      up: [top - size.width, top],
      from: loose ? v('ws') - v('reach') : left,
    })),
  };
}
