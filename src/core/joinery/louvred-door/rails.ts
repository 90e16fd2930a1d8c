import type { LouvredLayout } from './sizes.ts';
import type { RailInDoor } from '../hung-door/corners.ts';
import type { LockSite } from '../hung-door/lock.ts';
import type { Range } from '../parts.ts';

export type RailName = 'top' | 'bottom' | 'mid';

/** The widths of the rails by their names in the working. */
export const railWidths = { top: 'wt', bottom: 'wb', mid: 'wm' } as const;

export type LaidRail = RailInDoor & { readonly name: RailName };

/** Top and bottom rail, and the mid rails from below. */
export function layRails({ book: { value: v }, choices }: LouvredLayout): readonly LaidRail[] {
  const lay = (name: RailName, top: number): LaidRail => ({
    name,
    size: { length: v('rail_L'), width: v(railWidths[name]), thickness: v('T') },
    left: v('ws') - v('l'),
    top,
  });
  return [
    lay('top', v('Hd')),
    lay('bottom', v('wb')),
    ...Array.from({ length: choices.midRails }, (_, i) =>
      lay('mid', v('wb') + (i + 1) * (v('clear') + v('wm'))),
    ),
  ];
}

/** Where a lock can go: the stile up to the housings of the slats, rails in the way with their tenons. */
export function lockSite(layout: LouvredLayout): LockSite {
  const v = layout.book.value;
  return {
    stile: v('ws') - v('hd'),
    obstacles: layRails(layout).map(({ size, top }) => ({
      what: 'the joint of a rail',
      up: [top - size.width, top],
      from: v('ws') - v('reach'),
    })),
  };
}

/** The tenon across a rail, from its upper edge. */
export function tenonAcross({ book: { value: v } }: LouvredLayout, name: RailName): Range {
  const width = v(railWidths[name]);
  const [outer, inner] = [v(`outer_${name}`), v('inner')];
  return name === 'bottom' ? [inner, width - outer] : [outer, width - inner];
}
