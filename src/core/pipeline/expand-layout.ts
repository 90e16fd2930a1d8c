import { sequenceCuts, type Layout, type PartPlace, type PlacedPart } from '#core/cutting';
import type { Outline } from '#core/geometry';
import type { PartId } from '#core/joinery';

import type { Blank, CuttingGroup } from './types.ts';
import { ordinal } from './words.ts';

/** What must be known of a group to take its layouts apart. */
export type SawnGroup = Pick<CuttingGroup, 'job' | 'form' | 'section' | 'blanks'>;

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
  /** The outline where it lies, of one that shares a blank head to tail. */
  readonly outline?: Outline;
  /** Its size in the stock, length along the grain first; of a bar the length only. */
  readonly size: readonly number[];
  /** Where it lies in words, as `strip B, 3rd`; empty where no cuts are laid down. */
  readonly place: string;
}

/** The parts of a layout one by one, those of strips and mother blanks at their own places. */
export function expandLayout(group: SawnGroup, layout: Layout): readonly ExpandedPart[] {
  const { places } = sequenceCuts(layout, group.job.kerf ?? 0);
  return layout.placed.flatMap((placed, index) => expandPlaced(group, placed, places[index]));
}

/** The parts of one rectangle of a layout; `place` says where the rectangle comes out. */
export function expandPlaced(
  group: SawnGroup,
  placed: PlacedPart,
  place: PartPlace | undefined,
): readonly ExpandedPart[] {
  const blank = group.blanks.find((each) => each.id === placed.id);
  if (!blank) throw new Error(`no blank for ${placed.id}`);
  return blank.parts.map((item, index) => ({
    ...expandPart(group, blank, placed, item),
    place: wordPlace(place, blank.parts.length > 1 ? inBlank(item, index) : null),
  }));
}

/** Which of the parts of a blank, as `no. 2`. */
function inBlank({ outline }: Blank['parts'][number], index: number): string {
  return `${outline ? 'head to tail ' : ''}no. ${index + 1}`;
}

/** `strip B, 3rd`, and in a blank of several parts which of them. */
function wordPlace(place: PartPlace | undefined, which: string | null): string {
  if (!place || place.position === 0) return '';
  const whole =
    place.strip === null ? ordinal(place.position) : `strip ${place.strip}, ${ordinal(place.position)}`;
  return which === null ? whole : `${whole}, ${which}`;
}

function expandPart(
  group: SawnGroup,
  blank: Blank,
  placed: PlacedPart,
  item: Blank['parts'][number],
): Omit<ExpandedPart, 'place'> {
  const box = group.form === 'batten' ? onBar(group, placed, item) : onSheet(placed, item);
  return {
    part: item.part,
    blank: blank.id,
    ...(blank.set !== undefined && { set: blank.set }),
    ...box,
    ...(item.outline && { outline: outlineOnSheet(placed, item.outline) }),
    turned: placed.turned,
    size: group.form === 'batten' ? [box.length] : [item.length, item.width],
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

function outlineOnSheet(placed: PlacedPart, outline: Outline): Outline {
  const [x, y] = [placed.x, placed.y ?? 0];
  return outline.map((point) =>
    placed.turned
      ? { ...point, x: x + placed.length - point.y, y: y + point.x }
      : { ...point, x: x + point.x, y: y + point.y },
  );
}

function onBar(group: SawnGroup, placed: PlacedPart, item: Blank['parts'][number]): Place {
  return { x: placed.x + item.x, y: 0, length: item.length, width: group.section.width ?? 0 };
}
