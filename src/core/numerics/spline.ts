/** A cubic in each interval between its knots: a + b d + c d² + e d³ with d counted from the knot before. */
export interface Spline {
  readonly knots: readonly number[];
  /** One for each interval: value, slope, half the bend, a sixth of its change at the knot. */
  readonly pieces: readonly (readonly [a: number, b: number, c: number, e: number])[];
}

/** `natural`: no bend at the ends, as a free batten. `curved`: the first two and the last two intervals share one cubic. */
export type SplineEnds = 'natural' | 'curved';

/**
 * The cubic spline through points with rising x; fewer than two, or x that do not rise, are our mistake. With three points
 * and curved ends it is their parabola. De Boor 1978, A Practical Guide to Splines, chapter IV (from memory).
 */
export function fitSpline(
  knots: readonly number[],
  values: readonly number[],
  ends: SplineEnds = 'natural',
): Spline {
  const steps = knots.slice(1).map((x, i) => x - (knots[i] ?? NaN));
  if (steps.length === 0 || values.length !== knots.length || !steps.every((step) => step > 0))
    throw new Error('a spline needs two points at least, with rising x');
  const bends = solveBends(steps, values, ends);
  const pieces = steps.map((step, i) => {
    const [y, next] = [values[i] ?? 0, values[i + 1] ?? 0];
    const [m, n] = [bends[i] ?? 0, bends[i + 1] ?? 0];
    const slope = (next - y) / step - (step * (2 * m + n)) / 6;
    return [y, slope, m / 2, (n - m) / (6 * step)] as const;
  });
  return { knots, pieces };
}

/** Second derivatives at the knots. */
function solveBends(
  steps: readonly number[],
  values: readonly number[],
  ends: SplineEnds,
): readonly number[] {
  const at = (list: readonly number[], i: number) => list[i] ?? 0;
  const slopes = steps.map((step, i) => (at(values, i + 1) - at(values, i)) / step);
  const inner = steps.slice(1).map((_, k) => 6 * (at(slopes, k + 1) - at(slopes, k)));
  if (inner.length === 0) return [0, 0];
  if (ends === 'curved' && inner.length === 1) {
    const bend = at(inner, 0) / (3 * (at(steps, 0) + at(steps, 1)));
    return [bend, bend, bend];
  }
  const rows = inner.map((right, k) => ({
    left: at(steps, k),
    middle: 2 * (at(steps, k) + at(steps, k + 1)),
    next: at(steps, k + 1),
    right,
  }));
  if (ends === 'natural') return [0, ...solveTridiagonal(rows), 0];
  return extendBends(steps, solveTridiagonal(rows.map((row, k) => curveEnd(row, steps, k))));
}

/** The row at an end, where the bend continues that of its two neighbours in a straight line. */
function curveEnd(row: Row, steps: readonly number[], k: number): Row {
  const at = (i: number) => steps[i] ?? 0;
  if (k === 0) {
    const [end, near] = [at(0), at(1)];
    return { ...row, middle: row.middle + end * (1 + end / near), next: row.next - (end * end) / near };
  }
  if (k < steps.length - 2) return row;
  const [end, near] = [at(k + 1), at(k)];
  return { ...row, middle: row.middle + end * (1 + end / near), left: row.left - (end * end) / near };
}

function extendBends(steps: readonly number[], inner: readonly number[]): readonly number[] {
  const extend = (near: number, far: number, ratio: number) => near + (near - far) * ratio;
  const at = (list: readonly number[], i: number) => list.at(i) ?? 0;
  const first = extend(at(inner, 0), at(inner, 1), at(steps, 0) / at(steps, 1));
  const last = extend(at(inner, -1), at(inner, -2), at(steps, -1) / at(steps, -2));
  return [first, ...inner, last];
}

interface Row {
  readonly left: number;
  readonly middle: number;
  readonly next: number;
  readonly right: number;
}

/** Elimination without exchange of rows: the middle of every row outweighs its sides. */
function solveTridiagonal(rows: readonly Row[]): readonly number[] {
  const reduced: { next: number; right: number }[] = [];
  for (const { left, middle, next, right } of rows) {
    const before = reduced[reduced.length - 1] ?? { next: 0, right: 0 };
    const pivot = middle - left * before.next;
    reduced.push({ next: next / pivot, right: (right - left * before.right) / pivot });
  }
  const solution: number[] = [];
  for (const { next, right } of [...reduced].reverse()) solution.unshift(right - next * (solution[0] ?? 0));
  return solution;
}

/** Value, slope and second derivative of a spline; before the first knot and beyond the last it runs on straight. */
export function readSpline(
  { knots, pieces }: Spline,
  x: number,
): { readonly value: number; readonly slope: number; readonly bend: number } {
  const after = knots.findIndex((knot) => knot > x);
  const at = after === 0 ? 0 : (after < 0 ? knots.length : after) - 1;
  const piece = Math.min(at, pieces.length - 1);
  const [a, b, c, e] = pieces[piece] ?? [NaN, NaN, NaN, NaN];
  const start = knots[piece] ?? 0;
  const end = knots[piece + 1] ?? start;
  const d = Math.min(Math.max(x, start), end) - start;
  const slope = b + d * (2 * c + 3 * d * e);
  const inside = a + d * (b + d * (c + d * e));
  const beyond = x - start - d;
  return {
    value: inside + beyond * slope,
    slope,
    bend: beyond === 0 ? 2 * c + 6 * d * e : 0,
  };
}

/** Nodes and weights of Gauss and Legendre for five points on -1 to 1 (Abramowitz and Stegun, table 25.4). */
const gauss = [
  [0, 0.568888888888889],
  [-0.538469310105683, 0.478628670499366],
  [0.538469310105683, 0.478628670499366],
  [-0.906179845938664, 0.236926885056189],
  [0.906179845938664, 0.236926885056189],
] as const;
/** Parts of an interval: with five points each the length is right to a thousandth even where the curve turns sharply. */
const parts = 8;

/** Length along a spline from its first knot to its last, in the unit of both axes. */
export function splineLength({ knots, pieces }: Spline): number {
  return pieces.reduce((sum, [, b, c, e], i) => {
    const part = ((knots[i + 1] ?? 0) - (knots[i] ?? 0)) / parts;
    const along = (d: number) => Math.hypot(1, b + d * (2 * c + 3 * d * e));
    for (let k = 0; k < parts; k += 1)
      for (const [node, weight] of gauss) sum += (weight * part * along((k + 0.5 + node / 2) * part)) / 2;
    return sum;
  }, 0);
}
