import type { LayoutCut } from '#core/drawing';

import type { ExpandedPart } from './expand-layout.ts';

/** Two lines nearer than this are one pass of the saw, mm. */
const samePass = 0.2;

/** A rectangle as placed. */
interface Area {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * The saw lines that part a strip or mother blank into its parts: before and behind each, one where two neighbours are a kerf
 * apart, none along the edge of the blank. Labels are `a`, `b`, … within each blank.
 */
export function cutBlank(
  parts: readonly ExpandedPart[],
  blank: Area,
  kerf: number,
): readonly Omit<LayoutCut, 'order'>[] {
  const across = linesBetween(
    parts.flatMap((part) => [part.x - kerf / 2, part.x + part.length + kerf / 2]),
    blank.x,
    blank.x + blank.length,
  ).map((x) => ({ x1: x, y1: blank.y, x2: x, y2: blank.y + blank.width }));
  const along = linesBetween(
    parts.flatMap((part) => [part.y - kerf / 2, part.y + part.width + kerf / 2]),
    blank.y,
    blank.y + blank.width,
  ).map((y) => ({ x1: blank.x, y1: y, x2: blank.x + blank.length, y2: y }));
  return [...along, ...across].map((line, index) => ({
    label: String.fromCharCode(97 + (index % 26)),
    ...line,
  }));
}

/** The lines strictly inside, in order, those of one pass only once. */
function linesBetween(lines: readonly number[], low: number, high: number): readonly number[] {
  const inside = lines.filter((line) => line > low && line < high).sort((a, b) => a - b);
  return inside.filter((line, index) => index === 0 || line - (inside[index - 1] ?? 0) > samePass);
}
