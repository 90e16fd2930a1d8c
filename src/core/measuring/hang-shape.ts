import type { Point, Shape } from '#core/geometry';

/** A row of a matrix by its few entries: column and factor. */
type SparseRow = readonly (readonly [column: number, factor: number])[];

/**
 * The same shape with its coordinates counted from `origin`, the x axis running to `along`; the covariance is carried over, so
 * that both are then as exact as a datum is. Throws when the shape lacks one of the two.
 */
export function hangShape(shape: Shape, origin: string, along: string): Shape {
  const [from, to] = [shape.points[origin], shape.points[along]];
  if (!from || !to) throw new Error(`the shape has no points ${origin} and ${along}`);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return shape;
  const unit = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const move = (p: Point): Point => {
    const [dx, dy] = [p.x - from.x, p.y - from.y];
    return { x: dx * unit.x + dy * unit.y, y: dy * unit.x - dx * unit.y };
  };
  const points = Object.fromEntries(Object.entries(shape.points).map(([name, p]) => [name, move(p)]));
  points[origin] = { x: 0, y: 0 };
  points[along] = { x: length, y: 0 };
  const rows = shape.order.map((entry) => rowOf(shape, { entry, origin, along, unit, length, points }));
  return {
    ...shape,
    points,
    edges: shape.edges.map((edge) => (edge.curve ? { ...edge, curve: edge.curve.map(move) } : edge)),
    covariance: carryOver(rows, shape.covariance),
    tilt: shape.tilt - Math.atan2(unit.y, unit.x),
  };
}

interface Hanging {
  readonly entry: string;
  readonly origin: string;
  readonly along: string;
  readonly unit: Point;
  readonly length: number;
  /** As hung. */
  readonly points: Readonly<Record<string, Point>>;
}

/** How a coordinate as hung changes with the coordinates as they were: its own point, the origin, and the turn of the axis. */
function rowOf(shape: Shape, { entry, origin, along, unit, length, points }: Hanging): SparseRow {
  const name = entry.slice(0, -2);
  const axis = entry.endsWith('.x') ? 'x' : 'y';
  const direction = axis === 'x' ? unit : { x: -unit.y, y: unit.x };
  const hung = points[name] ?? { x: 0, y: 0 };
  // turning the axis by dt moves a point as hung by (y, -x) dt
  const lever = (axis === 'x' ? hung.y : -hung.x) / length;
  const across = { x: -unit.y * lever, y: unit.x * lever };
  const column = (point: string, key: 'x' | 'y') => shape.order.indexOf(`${point}.${key}`);
  const factors = new Map<number, number>();
  const add = (point: string, weights: Point, sign: 1 | -1): void => {
    for (const key of ['x', 'y'] as const) {
      const at = column(point, key);
      if (at >= 0) factors.set(at, (factors.get(at) ?? 0) + sign * weights[key]);
    }
  };
  add(name, direction, 1);
  add(origin, direction, -1);
  add(along, across, 1);
  add(origin, across, -1);
  return [...factors];
}

function carryOver(rows: readonly SparseRow[], covariance: Shape['covariance']): Shape['covariance'] {
  const half = rows.map((row) =>
    covariance.map((_, j) => row.reduce((sum, [k, factor]) => sum + factor * (covariance[k]?.[j] ?? 0), 0)),
  );
  return half.map((values) =>
    rows.map((row) => row.reduce((sum, [k, factor]) => sum + factor * (values[k] ?? 0), 0)),
  );
}

/** The mirror image of a shape in its x axis; upright is mirrored with it. */
export function mirrorShape(shape: Shape): Shape {
  const flip = ({ x, y }: Point): Point => ({ x, y: 0 - y });
  const sign = (entry: string): number => (entry.endsWith('.y') ? -1 : 1);
  return {
    ...shape,
    points: Object.fromEntries(Object.entries(shape.points).map(([name, p]) => [name, flip(p)])),
    edges: shape.edges.map((edge) => (edge.curve ? { ...edge, curve: edge.curve.map(flip) } : edge)),
    covariance: shape.covariance.map((row, i) =>
      row.map((value, j) => sign(shape.order[i] ?? '') * sign(shape.order[j] ?? '') * value),
    ),
    tilt: Math.PI - shape.tilt,
  };
}
