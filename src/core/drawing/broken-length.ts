/** A way along a part in which long stretches without features are shortened, as with a break line on a drawing. */
export interface BrokenLength {
  /** mm of the part to mm of paper. */
  readonly place: (x: number) => number;
  readonly scale: number;
  /** Places on paper where the part is broken. */
  readonly breaks: readonly number[];
}

const breakWidth = 8; // mm of paper left for a stretch taken out
const besideFeature = 14; // mm of paper kept whole beside each feature

/** Lengths on paper with nothing taken out. */
export function wholeLength(scale: number): BrokenLength {
  return { place: (x) => x * scale, scale, breaks: [] };
}

/**
 * The part at a scale with as many stretches taken out as are needed to come within `room` mm of paper; null when even
 * that is too long. `stations` are the places along the part that must be shown.
 */
export function breakLength(stations: readonly number[], scale: number, room: number): BrokenLength | null {
  const sorted = [...new Set(stations)].sort((a, b) => a - b);
  const total = ((sorted.at(-1) ?? 0) - (sorted[0] ?? 0)) * scale;
  if (total <= room) return wholeLength(scale);
  const gaps = sorted
    .slice(1)
    .map((to, i) => ({ from: sorted[i] ?? to, to }))
    .map(({ from, to }) => ({ from: from + besideFeature / scale, to: to - besideFeature / scale }))
    .filter(({ from, to }) => (to - from) * scale > breakWidth);
  const shortened = total - gaps.reduce((sum, g) => sum + (g.to - g.from) * scale - breakWidth, 0);
  if (gaps.length === 0 || shortened > room) return null;
  const place = (x: number) =>
    x * scale -
    gaps.reduce(
      (sum, g) =>
        sum +
        Math.min(1, Math.max(0, (x - g.from) / (g.to - g.from))) * ((g.to - g.from) * scale - breakWidth),
      0,
    );
  return { place, scale, breaks: gaps.map((g) => place((g.from + g.to) / 2)) };
}
