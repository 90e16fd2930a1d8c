import type { Point } from '#core/geometry';

/** A cubic curve by its ends and handles. */
export type Cubic = readonly [Point, Point, Point, Point];

/** Points of a cubic after its start, so many that chords stray at most `tolerance` from it. */
export function flattenCubic([a, b, c, d]: Cubic, tolerance: number): readonly Point[] {
  const second = (p: Point, q: Point, r: Point): number =>
    Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y);
  const bend = Math.max(second(a, b, c), second(b, c, d));
  // a chord strays by at most an eighth of the second derivative, which is six times the second difference
  const count = Math.min(1000, Math.max(1, Math.ceil(Math.sqrt((6 * bend) / (8 * tolerance)))));
  return Array.from({ length: count }, (_, k) => {
    const t = (k + 1) / count;
    const s = 1 - t;
    const weigh = (key: 'x' | 'y'): number =>
      s ** 3 * a[key] + 3 * s * s * t * b[key] + 3 * s * t * t * c[key] + t ** 3 * d[key];
    return { x: weigh('x'), y: weigh('y') };
  });
}
