import type { Point, Shape, ShapeEdge } from '#core/geometry';

/** Two sigma of a measured point in a direction, mm, in the shape's own datum; 0 for what the datum holds. Joinery A4. */
export function pointUncertainty(shape: Shape, point: string, direction: Point): number {
  return twoSigma(shape.order, shape.covariance, weigh([[point, 1]], unit(direction)));
}

/** Two sigma of the way from one point to another in a direction, mm. */
export function spanUncertainty(
  shape: Shape,
  ends: readonly [from: string, to: string],
  direction: Point,
): number {
  const weights = weigh(
    [
      [ends[1], 1],
      [ends[0], -1],
    ],
    unit(direction),
  );
  return twoSigma(shape.order, shape.covariance, weights);
}

/**
 * Two sigma square to an edge at its worse end, mm, against the shape as a whole rather than its datum (inner constraints):
 * the sill is then as uncertain as it is, not exact because the axis runs along it.
 */
export function edgeUncertainty(shape: Shape, edge: ShapeEdge): number {
  return uncertaintyAcross(shape, edge, freeCovariance(shape));
}

/** `edgeUncertainty` of every edge of a shape, in their order. */
export function edgeUncertainties(shape: Shape): readonly number[] {
  const free = freeCovariance(shape);
  return shape.edges.map((edge) => uncertaintyAcross(shape, edge, free));
}

function uncertaintyAcross(shape: Shape, edge: ShapeEdge, free: Shape['covariance']): number {
  const [from, to] = [shape.points[edge.from], shape.points[edge.to]];
  if (!from || !to) throw new Error(`no such edge: ${edge.name}`);
  const across = unit({ x: from.y - to.y, y: to.x - from.x });
  return Math.max(
    ...[edge.from, edge.to].map((end) => twoSigma(shape.order, free, weigh([[end, 1]], across))),
  );
}

function unit({ x, y }: Point): Point {
  const length = Math.hypot(x, y);
  return length > 0 ? { x: x / length, y: y / length } : { x: 1, y: 0 };
}

type Weights = ReadonlyMap<string, number>;

function weigh(points: readonly (readonly [string, number])[], direction: Point): Weights {
  return new Map(
    points.flatMap(([name, factor]) => [
      [`${name}.x`, factor * direction.x] as const,
      [`${name}.y`, factor * direction.y] as const,
    ]),
  );
}

function twoSigma(order: readonly string[], covariance: Shape['covariance'], weights: Weights): number {
  const row = order.flatMap((name, at) => {
    const weight = weights.get(name);
    return weight === undefined ? [] : [[at, weight] as const];
  });
  const variance = row.reduce(
    (sum, [i, a]) => sum + row.reduce((inner, [j, b]) => inner + a * b * (covariance[i]?.[j] ?? 0), 0),
    0,
  );
  return 2 * Math.sqrt(Math.max(0, variance));
}

/** The part of a shape that its uncertainty is worked out from. */
export type ErrorTable = Pick<Shape, 'points' | 'order' | 'covariance'>;

/** Covariance freed from the datum: shifts and the turn of the whole are taken out of every error. */
export function freeCovariance(shape: ErrorTable): readonly (readonly number[])[] {
  const project = projection(shape);
  const half = multiply(project, shape.covariance);
  return multiply(half, project); // the projection is its own transpose
}

function projection(shape: ErrorTable): readonly (readonly number[])[] {
  const names = Object.keys(shape.points);
  const mean = (key: 'x' | 'y') =>
    names.reduce((sum, name) => sum + (shape.points[name]?.[key] ?? 0), 0) / names.length;
  const [cx, cy] = [mean('x'), mean('y')];
  const turn = shape.order.map((entry) => {
    const point = shape.points[entry.slice(0, -2)] ?? { x: 0, y: 0 };
    return entry.endsWith('.x') ? cy - point.y : point.x - cx;
  });
  const size = turn.reduce((sum, value) => sum + value * value, 0) || 1;
  return shape.order.map((a, i) =>
    shape.order.map((b, j) => {
      const shift = a.slice(-1) === b.slice(-1) ? 1 / names.length : 0;
      return (i === j ? 1 : 0) - shift - ((turn[i] ?? 0) * (turn[j] ?? 0)) / size;
    }),
  );
}

function multiply(
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
): readonly (readonly number[])[] {
  return a.map((row) =>
    (b[0] ?? []).map((_, j) => row.reduce((sum, value, k) => sum + value * (b[k]?.[j] ?? 0), 0)),
  );
}
