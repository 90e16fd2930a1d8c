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
  const free = freeFromDatum(shape);
  const half = shape.covariance.map(free); // free in its columns; the covariance is its own transpose
  return shape.order.map((_, j) => free(half.map((row) => row[j] ?? 0)));
}

/** Takes shifts and the turn of the whole out of errors of the coordinates, in the order of the shape. */
export function freeFromDatum(shape: ErrorTable): (errors: readonly number[]) => readonly number[] {
  const names = Object.keys(shape.points);
  const mean = (key: 'x' | 'y') =>
    names.reduce((sum, name) => sum + (shape.points[name]?.[key] ?? 0), 0) / names.length;
  const [cx, cy] = [mean('x'), mean('y')];
  const isX = shape.order.map((entry) => entry.endsWith('.x'));
  const turn = shape.order.map((entry, k) => {
    const point = shape.points[entry.slice(0, -2)] ?? { x: 0, y: 0 };
    return isX[k] === true ? cy - point.y : point.x - cx;
  });
  const size = turn.reduce((sum, value) => sum + value * value, 0) || 1;
  return (errors) => {
    const shift = [true, false].map(
      (axis) => errors.reduce((sum, e, k) => (isX[k] === axis ? sum + e : sum), 0) / names.length,
    );
    const turned = errors.reduce((sum, e, k) => sum + e * (turn[k] ?? 0), 0) / size;
    return errors.map((e, k) => e - (shift[isX[k] === true ? 0 : 1] ?? 0) - turned * (turn[k] ?? 0));
  };
}
