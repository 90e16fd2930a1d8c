import { letterOf, sequenceCuts, type Layout } from '#core/cutting';
import type { LayoutCut } from '#core/drawing';

import { cutBlank } from './blank-cuts.ts';
import { expandPlaced, type ExpandedPart, type SawnGroup } from './expand-layout.ts';
import { describeThings } from './words.ts';

/** A pass of the saw that parts a strip or mother blank, with what it does in words and where the fence stands, mm. */
export interface PartingCut extends Omit<LayoutCut, 'order'> {
  readonly words: string;
  readonly fence: number;
}

/**
 * The passes that part the strips and mother blanks of a layout, blank by blank, each from its low edge; none for shapes that
 * share a blank, which are parted along their outlines. Labels run on over the layout: `a`, `b`, … `z`, `aa`.
 */
export function listPartingCuts(group: SawnGroup, layout: Layout): readonly PartingCut[] {
  const kerf = group.job.kerf ?? 0;
  const { places } = sequenceCuts(layout, kerf);
  const width = group.section.width ?? 0;
  const cuts = layout.placed.flatMap((placed, index) => {
    const parts = expandPlaced(group, placed, places[index]);
    if (parts.length < 2 || parts.some(({ outline }) => outline)) return [];
    const blank = { x: placed.x, y: placed.y ?? 0, length: placed.length, width: placed.width ?? width };
    const lines = cutBlank(parts, blank, kerf);
    return [
      ...partAlong(
        lines.filter((line) => line.y1 === line.y2),
        'y',
        { parts, from: blank.y, kerf },
      ),
      ...partAlong(
        lines.filter((line) => line.y1 !== line.y2),
        'x',
        { parts, from: blank.x, kerf },
      ),
    ];
  });
  return cuts.map((cut, index) => ({ ...cut, label: letterOf(index).toLowerCase() }));
}

/** The blank to be parted, with its low edge along the axis. */
interface Parting {
  readonly parts: readonly ExpandedPart[];
  readonly from: number;
  readonly kerf: number;
}

/** A part and the piece it comes out of may differ by as much as two passes that are one, mm. */
const slack = 0.2;

function partAlong(
  lines: ReturnType<typeof cutBlank>,
  axis: 'x' | 'y',
  { parts, from, kerf }: Parting,
): readonly PartingCut[] {
  const whole = nameParts(parts);
  let low = from;
  return lines.map((line, index): PartingCut => {
    const near = (axis === 'x' ? line.x1 : line.y1) - kerf / 2;
    const freed = parts.filter((part) => {
      const size = axis === 'x' ? part.length : part.width;
      return part[axis] >= low - slack && part[axis] + size <= near + slack;
    });
    const fence = Math.round((near - low) * 1000) / 1000;
    low = near + kerf;
    return { ...line, words: sayCut({ axis, freed, whole: index === 0 ? whole : null }), fence };
  });
}

/** Parts named in one line at most; of more the first, and how many there are. */
const mostNamed = 6;

function nameParts(parts: readonly ExpandedPart[]): string {
  const names = parts.map(({ part }) => part);
  const different = [...new Set(names)];
  if (different.length === 1 && names.length > 1) return `${names.length} × ${different.join('')}`;
  const words = describeThings(different);
  return words.split(', ').length > mostNamed ? `${different[0]} and ${names.length - 1} more` : words;
}

/** `whole` names the parts of the blank where it is taken in hand. */
function sayCut({
  axis,
  freed,
  whole,
}: {
  readonly axis: 'x' | 'y';
  readonly freed: readonly ExpandedPart[];
  readonly whole: string | null;
}): string {
  const verb = axis === 'x' ? 'cut' : 'rip';
  const blank = whole === null ? 'the rest' : `the blank of ${whole}`;
  if (freed.length === 0) return whole === null ? `${verb} the waste off the rest` : `trim ${blank}`;
  return `${verb} ${nameParts(freed)} off ${blank}`;
}
