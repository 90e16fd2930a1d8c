import { solveDamped } from './damped-step.ts';
import { descend } from './descent.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A circle through scattered points. */
export interface CircleFit extends Point {
  readonly radius: number;
  /** Distance of each point from the circle, positive outside. */
  readonly residuals: readonly number[];
}

/** A radius larger than this many times the spread of the points is a straight line to any tape. */
const straight = 1e5;
const limits = { steps: 200, arrived: 1e-14, still: 0 } as const;

/**
 * The circle with the least sum of squared distances; null for fewer than three points or points in a line.
 * Geometric fit of Gander, Golub and Strebel 1994, begun at the algebraic one of Kåsa (both from memory).
 */
export function fitCircle(points: readonly Point[]): CircleFit | null {
  const start = fitAlgebraic(points);
  if (start === null) return null;
  const best = descend(start, (circle, damping) => takeStep(circle, points, damping), limits);
  const { x, y, radius } = best;
  if (!Number.isFinite(x + y + radius) || radius > straight * spreadOf(points)) return null;
  return { x, y, radius, residuals: residualsOf(best, points) };
}

interface Circle extends Point {
  readonly radius: number;
  readonly sum: number;
}

function residualsOf({ x, y, radius }: Omit<Circle, 'sum'>, points: readonly Point[]): readonly number[] {
  return points.map((p) => Math.hypot(p.x - x, p.y - y) - radius);
}

function withSum(circle: Omit<Circle, 'sum'>, points: readonly Point[]): Circle {
  return { ...circle, sum: residualsOf(circle, points).reduce((sum, v) => sum + v * v, 0) };
}

function takeStep(circle: Circle, points: readonly Point[], damping: number): Circle | null {
  const residuals = residualsOf(circle, points);
  const design = points.map((p) => {
    const reach = Math.hypot(p.x - circle.x, p.y - circle.y) || 1;
    return [(circle.x - p.x) / reach, (circle.y - p.y) / reach, -1];
  });
  const step = solveDamped(
    design,
    residuals.map((v) => -v),
    damping,
  );
  if (step === null) return null;
  const [dx = 0, dy = 0, dr = 0] = step;
  return withSum({ x: circle.x + dx, y: circle.y + dy, radius: circle.radius + dr }, points);
}

function spreadOf(points: readonly Point[]): number {
  const centre = meanOf(points);
  return Math.max(...points.map((p) => Math.hypot(p.x - centre.x, p.y - centre.y)));
}

function meanOf(points: readonly Point[]): Point {
  const mean = (of: (p: Point) => number) => points.reduce((sum, p) => sum + of(p), 0) / points.length;
  return { x: mean((p) => p.x), y: mean((p) => p.y) };
}

/** Where a fit begins: x² + y² = 2 a x + 2 b y + c by least squares, from the middle of the points; null as above (Kåsa). */
export function fitAlgebraic(points: readonly Point[]): Circle | null {
  if (points.length < 3) return null;
  const centre = meanOf(points);
  const near = points.map((p) => ({ x: p.x - centre.x, y: p.y - centre.y }));
  const sum = (of: (p: Point) => number) => near.reduce((total, p) => total + of(p), 0);
  const square = (p: Point) => p.x * p.x + p.y * p.y;
  const [xx, xy, yy] = [sum((p) => p.x * p.x), sum((p) => p.x * p.y), sum((p) => p.y * p.y)];
  const [xz, yz] = [sum((p) => p.x * square(p)) / 2, sum((p) => p.y * square(p)) / 2];
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-14 * (xx + yy) ** 2)) return null;
  const [a, b] = [(xz * yy - yz * xy) / determinant, (yz * xx - xz * xy) / determinant];
  const radius = Math.sqrt(a * a + b * b + (xx + yy) / points.length);
  return withSum({ x: centre.x + a, y: centre.y + b, radius }, points);
}
