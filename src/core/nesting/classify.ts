import type { Shapes } from './shapes.ts';
import { makeTouches } from './touches.ts';

/** What is known of all offsets within a cell; below `worthwhile` it counts how often the cell was asked for. */
export const cellKind = { worthwhile: 3, free: 9, clash: 10, mixed: 11, divided: 12 } as const;

/** What holds for a pair of poses (a * count + b) at all offsets no further than a distance from one. */
export function makeClassify(
  shapes: Shapes,
): (pair: number, dx: number, dy: number, distance: number) => number {
  const { count } = shapes;
  const touches = makeTouches(shapes);
  return (pair, dx, dy, distance) => {
    const offset = { a: Math.floor(pair / count), b: pair % count, dx, dy };
    if (pressesBeyond(shapes, offset, distance)) return cellKind.clash;
    if (touches(offset.a, offset.b, dx, dy))
      return crossesBeyond(shapes, offset, distance) ? cellKind.clash : cellKind.mixed;
    return sidesWithin(shapes, offset, distance) ? cellKind.mixed : cellKind.free;
  };
}

interface Offset {
  readonly a: number;
  readonly b: number;
  readonly dx: number;
  readonly dy: number;
}

/** Whether two circles press into each other deeper than a distance: they do so wherever within it the poses are moved. */
function pressesBeyond({ poles, poleStart }: Shapes, { a, b, dx, dy }: Offset, distance: number): boolean {
  const lastA = 3 * poleStart[a + 1]!;
  const lastB = 3 * poleStart[b + 1]!;
  for (let i = 3 * poleStart[a]!; i < lastA; i += 3) {
    const x = poles[i]! - dx;
    const y = poles[i + 1]! - dy;
    const r = poles[i + 2]! - distance;
    for (let j = 3 * poleStart[b]!; j < lastB; j += 3) {
      const ux = x - poles[j]!;
      const uy = y - poles[j + 1]!;
      const s = r + poles[j + 2]!;
      if (s > 0 && ux * ux + uy * uy < s * s) return true;
    }
  }
  return false;
}

/** Whether two sides cross so that they still do wherever within a distance the poses are moved. */
function crossesBeyond({ edges, edgeStart }: Shapes, { a, b, dx, dy }: Offset, distance: number): boolean {
  for (let e = 4 * edgeStart[a]!; e < 4 * edgeStart[a + 1]!; e += 4) {
    const ax = edges[e]! - dx;
    const ay = edges[e + 1]! - dy;
    const ux = edges[e + 2]! - dx - ax;
    const uy = edges[e + 3]! - dy - ay;
    const least = distance * Math.sqrt(ux * ux + uy * uy);
    for (let f = 4 * edgeStart[b]!; f < 4 * edgeStart[b + 1]!; f += 4) {
      const px = edges[f]! - ax;
      const py = edges[f + 1]! - ay;
      const vx = edges[f + 2]! - edges[f]!;
      const vy = edges[f + 3]! - edges[f + 1]!;
      const sideP = ux * py - uy * px;
      const sideQ = sideP + ux * vy - uy * vx;
      if (!(sideP > least && sideQ < -least) && !(sideP < -least && sideQ > least)) continue;
      const reach = distance * Math.sqrt(vx * vx + vy * vy);
      const sideA = vy * px - vx * py;
      const sideB = sideA + vx * uy - vy * ux;
      if ((sideA > reach && sideB < -reach) || (sideA < -reach && sideB > reach)) return true;
    }
  }
  return false;
}

/** Whether some sides of two poses that do not touch are no further apart than a distance. */
function sidesWithin({ box, edges, edgeStart }: Shapes, { a, b, dx, dy }: Offset, distance: number): boolean {
  const square = distance * distance;
  const left = box[4 * b]! + dx - distance;
  const low = box[4 * b + 1]! + dy - distance;
  const right = box[4 * b + 2]! + dx + distance;
  const high = box[4 * b + 3]! + dy + distance;
  const near: number[] = [];
  for (let f = 4 * edgeStart[b]!; f < 4 * edgeStart[b + 1]!; f += 4) {
    const isAside =
      Math.max(edges[f]!, edges[f + 2]!) + dx < box[4 * a]! - distance ||
      Math.min(edges[f]!, edges[f + 2]!) + dx > box[4 * a + 2]! + distance ||
      Math.max(edges[f + 1]!, edges[f + 3]!) + dy < box[4 * a + 1]! - distance ||
      Math.min(edges[f + 1]!, edges[f + 3]!) + dy > box[4 * a + 3]! + distance;
    if (!isAside) near.push(f);
  }
  for (let e = 4 * edgeStart[a]!; e < 4 * edgeStart[a + 1]!; e += 4) {
    if (Math.max(edges[e]!, edges[e + 2]!) < left || Math.min(edges[e]!, edges[e + 2]!) > right) continue;
    if (Math.max(edges[e + 1]!, edges[e + 3]!) < low || Math.min(edges[e + 1]!, edges[e + 3]!) > high)
      continue;
    for (const f of near) if (sideDistance(edges, e, f, { dx, dy }) <= square) return true;
  }
  return false;
}

/** Square of the distance of two sides that do not cross: it is found at an end of one of them. */
function sideDistance(
  edges: Float64Array,
  e: number,
  f: number,
  { dx, dy }: { readonly dx: number; readonly dy: number },
): number {
  return Math.min(
    endDistance(edges, e, edges[f]! + dx, edges[f + 1]! + dy),
    endDistance(edges, e, edges[f + 2]! + dx, edges[f + 3]! + dy),
    endDistance(edges, f, edges[e]! - dx, edges[e + 1]! - dy),
    endDistance(edges, f, edges[e + 2]! - dx, edges[e + 3]! - dy),
  );
}

/** Square of the distance of a point from a side. */
function endDistance(edges: Float64Array, e: number, x: number, y: number): number {
  const ux = edges[e + 2]! - edges[e]!;
  const uy = edges[e + 3]! - edges[e + 1]!;
  const px = x - edges[e]!;
  const py = y - edges[e + 1]!;
  const share = (px * ux + py * uy) / (ux * ux + uy * uy || 1);
  const t = share < 0 ? 0 : share > 1 ? 1 : share;
  const vx = px - t * ux;
  const vy = py - t * uy;
  return vx * vx + vy * vy;
}
