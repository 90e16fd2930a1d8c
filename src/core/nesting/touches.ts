import type { Shapes } from './shapes.ts';

type Test = (a: number, b: number, dx: number, dy: number) => boolean;

/** Whether two poses, the second at (dx, dy) from the first, touch or overlap by their edges or one within the other. */
export function makeTouches(shapes: Shapes): Test {
  const { box, edges, edgeStart } = shapes;
  const most = 4 * Math.max(1, ...Array.from(edgeStart.subarray(1), (end, i) => end - edgeStart[i]!));
  const near = new Float64Array(most);
  const holds = makeHolds(shapes);
  return (a, b, dx, dy) => {
    const a4 = 4 * a;
    const b4 = 4 * b;
    // the window in which both boxes lie, in the frame of the first
    const left = Math.max(box[a4]!, box[b4]! + dx);
    const low = Math.max(box[a4 + 1]!, box[b4 + 1]! + dy);
    const right = Math.min(box[a4 + 2]!, box[b4 + 2]! + dx);
    const high = Math.min(box[a4 + 3]!, box[b4 + 3]! + dy);
    let found = 0;
    const lastB = 4 * edgeStart[b + 1]!;
    for (let e = 4 * edgeStart[b]!; e < lastB; e += 4) {
      const x0 = edges[e]! + dx;
      const x1 = edges[e + 2]! + dx;
      if ((x0 < left && x1 < left) || (x0 > right && x1 > right)) continue;
      const y0 = edges[e + 1]! + dy;
      const y1 = edges[e + 3]! + dy;
      if ((y0 < low && y1 < low) || (y0 > high && y1 > high)) continue;
      near[found] = x0;
      near[found + 1] = y0;
      near[found + 2] = x1;
      near[found + 3] = y1;
      found += 4;
    }
    const lastA = 4 * edgeStart[a + 1]!;
    for (let e = 4 * edgeStart[a]!; e < lastA; e += 4) {
      const x0 = edges[e]!;
      const x1 = edges[e + 2]!;
      if ((x0 < left && x1 < left) || (x0 > right && x1 > right)) continue;
      const y0 = edges[e + 1]!;
      const y1 = edges[e + 3]!;
      if ((y0 < low && y1 < low) || (y0 > high && y1 > high)) continue;
      if (crossesAny(edges, e, near, found)) return true;
    }
    return holds(a, b, dx, dy) || holds(b, a, -dx, -dy);
  };
}

/** Whether one edge touches or crosses any of a list. */
function crossesAny(edges: Float64Array, e: number, others: Float64Array, count: number): boolean {
  const ax = edges[e]!;
  const ay = edges[e + 1]!;
  const ux = edges[e + 2]! - ax;
  const uy = edges[e + 3]! - ay;
  for (let k = 0; k < count; k += 4) {
    const px = others[k]! - ax;
    const py = others[k + 1]! - ay;
    const qx = others[k + 2]! - ax;
    const qy = others[k + 3]! - ay;
    const sideP = ux * py - uy * px;
    const sideQ = ux * qy - uy * qx;
    if ((sideP > 0 && sideQ > 0) || (sideP < 0 && sideQ < 0)) continue;
    const vx = qx - px;
    const vy = qy - py;
    const sideA = vy * px - vx * py;
    const sideB = sideA + vx * uy - vy * ux;
    if ((sideA > 0 && sideB > 0) || (sideA < 0 && sideB < 0)) continue;
    if (sideP !== 0 || sideQ !== 0) return true;
    // both on one line: they meet when their stretches along it do
    const p = px * ux + py * uy;
    const q = qx * ux + qy * uy;
    if (Math.max(p, q) >= 0 && Math.min(p, q) <= ux * ux + uy * uy) return true;
  }
  return false;
}

/** Whether the first corner of the second pose lies in the first one, its holes left out. */
function makeHolds({ box, edges, edgeStart }: Shapes): Test {
  return (a, b, dx, dy) => {
    const a4 = 4 * a;
    const first = 4 * edgeStart[b]!;
    const x = edges[first]! + dx;
    const y = edges[first + 1]! + dy;
    if (x < box[a4]! || x > box[a4 + 2]! || y < box[a4 + 1]! || y > box[a4 + 3]!) return false;
    let inside = false;
    const last = 4 * edgeStart[a + 1]!;
    for (let e = 4 * edgeStart[a]!; e < last; e += 4) {
      const y0 = edges[e + 1]!;
      const y1 = edges[e + 3]!;
      if (y0 > y === y1 > y) continue;
      const x0 = edges[e]!;
      if (x < x0 + ((y - y0) * (edges[e + 2]! - x0)) / (y1 - y0)) inside = !inside;
    }
    return inside;
  };
}

/** So many of the largest circles are asked before the edges are. */
const early = 4;

/** Whether two of the largest circles meet: then nothing more need be asked. */
export function makeMeets({ poles, poleStart }: Shapes): Test {
  return (a, b, dx, dy) => {
    const firstA = 3 * poleStart[a]!;
    const firstB = 3 * poleStart[b]!;
    const lastA = Math.min(3 * poleStart[a + 1]!, firstA + 3 * early);
    const lastB = Math.min(3 * poleStart[b + 1]!, firstB + 3 * early);
    for (let i = firstA; i < lastA; i += 3) {
      const x = poles[i]! - dx;
      const y = poles[i + 1]! - dy;
      const r = poles[i + 2]!;
      for (let j = firstB; j < lastB; j += 3) {
        const ux = x - poles[j]!;
        const uy = y - poles[j + 1]!;
        const s = r + poles[j + 2]!;
        if (ux * ux + uy * uy < s * s) return true;
      }
    }
    return false;
  };
}
