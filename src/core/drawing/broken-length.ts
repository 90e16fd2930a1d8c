/** A way along a part in which long stretches without features are shortened, as with a break line on a drawing. */
export interface BrokenLength {
  /** mm of the part to mm of paper. */
  readonly place: (x: number) => number;
  readonly scale: number;
  /** Places on paper where the part is broken. */
  readonly breaks: readonly number[];
}

const breakWidth = 7; // mm of paper left for a stretch taken out
const besideFeature = [14, 7]; // mm of paper kept whole beside each feature, as much as there is room for

/** Lengths on paper with nothing taken out. */
export function wholeLength(scale: number): BrokenLength {
  return { place: (x) => x * scale, scale, breaks: [] };
}

/**
 * The part at a scale with stretches taken out so that it comes within `room` mm of paper; null when even that is too long.
 * `stations` are the places along the part that must be shown.
 */
export function breakLength(stations: readonly number[], scale: number, room: number): BrokenLength | null {
  const sorted = [...new Set(stations)].sort((a, b) => a - b);
  const total = ((sorted.at(-1) ?? 0) - (sorted[0] ?? 0)) * scale;
  if (total <= room) return wholeLength(scale);
  for (const beside of besideFeature) {
    const gaps = gapsBetween(sorted, scale, beside);
    const shortened = total - gaps.reduce((sum, gap) => sum + takenOut(gap, scale), 0);
    if (gaps.length > 0 && shortened <= room) return withGaps(gaps, scale);
  }
  return null;
}

interface Gap {
  readonly from: number;
  readonly to: number;
}

function gapsBetween(sorted: readonly number[], scale: number, beside: number): readonly Gap[] {
  return sorted
    .slice(1)
    .map((to, i) => ({ from: (sorted[i] ?? to) + beside / scale, to: to - beside / scale }))
    .filter(({ from, to }) => (to - from) * scale > breakWidth);
}

/** mm of paper that a gap saves. */
function takenOut({ from, to }: Gap, scale: number): number {
  return (to - from) * scale - breakWidth;
}

function withGaps(gaps: readonly Gap[], scale: number): BrokenLength {
  const place = (x: number) =>
    gaps.reduce((at, gap) => {
      const passed = Math.min(1, Math.max(0, (x - gap.from) / (gap.to - gap.from)));
      return at - passed * takenOut(gap, scale);
    }, x * scale);
  return { place, scale, breaks: gaps.map(({ from, to }) => place((from + to) / 2)) };
}
