import type { Point } from '#core/geometry';
import type { ISplineEntity } from 'dxf-parser';

/** Chords between two knots, at most. */
const mostChords = 64;

/**
 * Points along a spline of a drawing, so many that chords stray about `tolerance` from it. Without control points those that it
 * was fitted through.
 */
export function flattenSpline(spline: ISplineEntity, tolerance: number): readonly Point[] {
  const { controlPoints = [], knotValues = [], degreeOfSplineCurve: degree } = spline;
  const control = controlPoints.map(({ x, y }) => ({ x, y }));
  if (control.length <= degree || knotValues.length < control.length + degree + 1)
    return (spline.fitPoints ?? control).map(({ x, y }) => ({ x, y }));
  const at = (t: number): Point => deBoor(control, knotValues, degree, t);
  const points: Point[] = [at(knotValues[degree] ?? 0)];
  for (let k = degree; k < control.length; k += 1) {
    const [from, to] = [knotValues[k] ?? 0, knotValues[k + 1] ?? 0];
    if (to <= from) continue;
    const count = chordsOf(control.slice(k - degree, k + 1), tolerance);
    for (let j = 1; j <= count; j += 1) points.push(at(from + ((to - from) * j) / count));
  }
  return points;
}

/** Enough chords for the bends of the control points that shape a piece. */
function chordsOf(control: readonly Point[], tolerance: number): number {
  const bends = control.slice(2).map((p, at) => {
    const [a, b] = [control[at] ?? p, control[at + 1] ?? p];
    return Math.hypot(a.x - 2 * b.x + p.x, a.y - 2 * b.y + p.y);
  });
  const bend = Math.max(0, ...bends);
  return Math.min(mostChords, Math.max(1, Math.ceil(Math.sqrt((6 * bend) / (8 * tolerance)))));
}

/** The point of a spline at a parameter. Source: de Boor 1972, from memory. */
function deBoor(control: readonly Point[], knots: readonly number[], degree: number, t: number): Point {
  let span = degree;
  while (span < control.length - 1 && t >= (knots[span + 1] ?? Infinity)) span += 1;
  let row = control.slice(span - degree, span + 1);
  for (let r = 1; r <= degree; r += 1) {
    row = row.slice(1).map((p, j): Point => {
      const i = j + span - degree + r;
      const [low, high] = [knots[i] ?? 0, knots[i + degree - r + 1] ?? 0];
      const share = high > low ? (t - low) / (high - low) : 0;
      const before = row[j] ?? p;
      return { x: before.x + (p.x - before.x) * share, y: before.y + (p.y - before.y) * share };
    });
  }
  return row[0] ?? { x: 0, y: 0 };
}
