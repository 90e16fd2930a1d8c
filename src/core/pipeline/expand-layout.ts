import type { Layout, PlacedPart } from '#core/cutting';
import type { PartId } from '#core/joinery';

import type { Blank, CuttingGroup } from './types.ts';
import { showSize } from './words.ts';

/** A part where it comes out of a piece of stock. */
export interface ExpandedPart {
  readonly part: PartId;
  /** The rectangle of the cutting job it comes out of, and the matched set it belongs to. */
  readonly blank: string;
  readonly set?: string;
  readonly x: number;
  readonly y: number;
  /** Extents along x and y as placed; in one dimension `width` is that of the bar. */
  readonly length: number;
  readonly width: number;
  readonly turned: boolean;
  /** Its size in the stock, as `700 × 300`. */
  readonly size: string;
  /** Where it lies in words, as `strip B, 3rd`; empty where no cuts are laid down. */
  readonly place: string;
}

/** The parts of a layout one by one, those of strips and mother blanks at their own places. */
export function expandLayout(group: CuttingGroup, layout: Layout): readonly ExpandedPart[] {
  return layout.placed.flatMap((placed) => {
    const blank = group.blanks.find((each) => each.id === placed.id);
    if (!blank) throw new Error(`no blank for ${placed.id}`);
    return blank.parts.map((item) => expandPart(group, blank, placed, item));
  });
}

function expandPart(
  group: CuttingGroup,
  blank: Blank,
  placed: PlacedPart,
  item: Blank['parts'][number],
): ExpandedPart {
  const box = group.form === 'batten' ? onBar(group, placed, item) : onSheet(placed, item);
  return {
    part: item.part,
    blank: blank.id,
    ...(blank.set !== undefined && { set: blank.set }),
    ...box,
    turned: placed.turned,
    size: group.form === 'batten' ? showSize(box.length) : showSize(item.length, item.width),
    place: '',
  };
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** A turned blank is turned a quarter to the left, so that its parts keep their order and face. */
function onSheet(placed: PlacedPart, item: Blank['parts'][number]): Place {
  const [x, y] = [placed.x, placed.y ?? 0];
  if (!placed.turned) return { x: x + item.x, y: y + item.y, length: item.length, width: item.width };
  return {
    x: x + placed.length - item.y - item.width,
    y: y + item.x,
    length: item.width,
    width: item.length,
  };
}

function onBar(group: CuttingGroup, placed: PlacedPart, item: Blank['parts'][number]): Place {
  return { x: placed.x + item.x, y: 0, length: item.length, width: group.section.width ?? 0 };
}
