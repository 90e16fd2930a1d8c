/** A closed path as x and y in turn, without a closing point. */
export type Ring = Float64Array;

/** Outline and holes of a part. */
export interface Figure {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
}

/** A ring of corners, the closing point and repeated corners left out, counter-clockwise. */
export function makeRing(corners: readonly (readonly [number, number])[]): Ring {
  const kept = corners.filter(([x, y], i) => {
    const before = corners[(i + corners.length - 1) % corners.length];
    return !before || corners.length === 1 || before[0] !== x || before[1] !== y;
  });
  const ring = Float64Array.from(kept.flat());
  return ringArea(ring) < 0 ? reverseRing(ring) : ring;
}

/** Twice-signed halves: positive when counter-clockwise, mm². */
export function ringArea(ring: Ring): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    twice += (ring[j] as number) * (ring[i + 1] as number) - (ring[i] as number) * (ring[j + 1] as number);
  }
  return twice / 2;
}

export function reverseRing(ring: Ring): Ring {
  const reversed = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    reversed[i] = ring[ring.length - 2 - i] as number;
    reversed[i + 1] = ring[ring.length - 1 - i] as number;
  }
  return reversed;
}

export function figureArea(figure: Figure): number {
  return figure.holes.reduce(
    (area, hole) => area - Math.abs(ringArea(hole)),
    Math.abs(ringArea(figure.outer)),
  );
}

/** Sine and cosine of an angle in degrees, exact for quarter turns. */
export function turnOf(degrees: number): { readonly sin: number; readonly cos: number } {
  const quarter = (((degrees % 360) + 360) % 360) / 90;
  if (Number.isInteger(quarter)) {
    return { sin: [0, 1, 0, -1][quarter] as number, cos: [1, 0, -1, 0][quarter] as number };
  }
  const angle = (degrees * Math.PI) / 180;
  return { sin: Math.sin(angle), cos: Math.cos(angle) };
}

/** A ring turned counter-clockwise about the origin. */
export function turnRing(ring: Ring, degrees: number): Ring {
  const { sin, cos } = turnOf(degrees);
  const turned = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i] as number;
    const y = ring[i + 1] as number;
    turned[i] = x * cos - y * sin;
    turned[i + 1] = x * sin + y * cos;
  }
  return turned;
}

/** minX, minY, maxX, maxY of a ring. */
export function boxOfRing(ring: Ring): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i] as number;
    const y = ring[i + 1] as number;
    if (x < box[0]) box[0] = x;
    if (y < box[1]) box[1] = y;
    if (x > box[2]) box[2] = x;
    if (y > box[3]) box[3] = y;
  }
  return box;
}

/** Convex hull, counter-clockwise (Andrew's monotone chain, 1979, from memory). */
export function hullOfRing(ring: Ring): Ring {
  const points: [number, number][] = [];
  for (let i = 0; i < ring.length; i += 2) points.push([ring[i] as number, ring[i + 1] as number]);
  points.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const lower = chain(points);
  const upper = chain(points.reverse());
  return Float64Array.from([...lower.slice(0, -1), ...upper.slice(0, -1)].flat());
}

function chain(points: readonly [number, number][]): [number, number][] {
  const kept: [number, number][] = [];
  for (const point of points) {
    while (kept.length >= 2 && !turnsLeft(kept.at(-2), kept.at(-1), point)) kept.pop();
    kept.push(point);
  }
  return kept;
}

function turnsLeft(
  a: readonly [number, number] | undefined,
  b: readonly [number, number] | undefined,
  c: readonly [number, number],
): boolean {
  if (!a || !b) return true;
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
}
