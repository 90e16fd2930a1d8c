import type { Problem } from '#core/problems';
import { isInRing } from './poles.ts';
import { makeRing, ringArea } from './rings.ts';
import type { Ring } from './rings.ts';
import type { Corner, NestPart } from './types.ts';

const largestPlace = 1e7;
const mostCorners = 5000;
/** Below this area, mm², and this share of its box, an outline encloses nothing. */
const leastShare = 1e-9;

/** What is wrong with a part's outline and holes, one sentence each. */
export function checkFigure(part: NestPart, about: string): readonly Problem[] {
  const rings = [part.outline, ...(part.holes ?? [])];
  const faults = rings.flatMap((corners, i) => checkRing(corners, part.id, pathOf(about, i)));
  if (faults.length > 0) return faults;
  const [outer, ...holes] = rings.map(makeRing) as [Ring, ...Ring[]];
  return holes.flatMap((hole, i) => {
    const others = holes.slice(0, i);
    const isLoose = !isInRing(outer, hole[0]!, hole[1]!) || ringsMeet(outer, hole);
    const overlaps = others.some(
      (other) =>
        ringsMeet(other, hole) || isInRing(other, hole[0]!, hole[1]!) || isInRing(hole, other[0]!, other[1]!),
    );
    if (!isLoose && !overlaps) return [];
    return [
      fault(
        pathOf(about, i + 1),
        `Hole ${i + 1} of part "${part.id}" ${isLoose ? 'does not lie inside the outline' : 'meets another hole'}.`,
        'Check its corners; a cut-out at an edge belongs to the outline.',
      ),
    ];
  });
}

function pathOf(about: string, ring: number): string {
  return ring === 0 ? `${about}.outline` : `${about}.holes[${ring - 1}]`;
}

function fault(about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code: 'job-wrong', about, message, remedy };
}

function checkRing(corners: readonly Corner[], id: string, about: string): readonly Problem[] {
  const bad = corners.findIndex(([x, y]) => !(Math.abs(x) <= largestPlace && Math.abs(y) <= largestPlace));
  if (bad >= 0)
    return [
      fault(
        `${about}[${bad}]`,
        `Corner ${bad + 1} of part "${id}" is at (${corners[bad]?.join(', ')}); both must be numbers of mm up to ${largestPlace}.`,
        'Enter it in mm.',
      ),
    ];
  if (corners.length > mostCorners)
    return [
      fault(
        about,
        `Part "${id}" has ${corners.length} corners in one outline; at most ${mostCorners} can be handled.`,
        'Draw its curves with longer chords.',
      ),
    ];
  const ring = makeRing(corners);
  if (ring.length < 6 || Math.abs(ringArea(ring)) <= leastShare * boxArea(ring))
    return [
      fault(
        about,
        `The outline of part "${id}" encloses nothing: ${ring.length / 2} different corners, area ${Math.abs(ringArea(ring))} mm².`,
        'An outline needs three corners that do not lie on one line.',
      ),
    ];
  return checkCrossing(ring, id, about);
}

function boxArea(ring: Ring): number {
  const xs = ring.filter((_, i) => i % 2 === 0);
  const ys = ring.filter((_, i) => i % 2 === 1);
  const extent = (values: Float64Array) =>
    values.reduce((a, b) => Math.max(a, b), -Infinity) - values.reduce((a, b) => Math.min(a, b), Infinity);
  return extent(xs) * extent(ys) + 1e-12;
}

function checkCrossing(ring: Ring, id: string, about: string): readonly Problem[] {
  const n = ring.length / 2;
  if (!crossesItself(ring)) return [];
  // which sides is asked only of a ring at fault
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (!sidesClash(ring, i, j)) continue;
      return [
        fault(
          about,
          `The outline of part "${id}" crosses or touches itself at its sides ${i + 1} and ${j + 1}.`,
          'Put its corners in order round the part, without crossing.',
        ),
      ];
    }
  }
  return [];
}

/** Whether any two sides of a ring clash. Sides are gone through from left to right, so that only those above each other are compared. */
function crossesItself(ring: Ring): boolean {
  const n = ring.length / 2;
  const from = new Float64Array(n);
  const to = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const [x0, x1] = [ring[2 * i]!, ring[(2 * i + 2) % ring.length]!];
    from[i] = Math.min(x0, x1);
    to[i] = Math.max(x0, x1);
  }
  const order = Array.from(from, (_, i) => i).sort((a, b) => from[a]! - from[b]!);
  return order.some((i, k) => {
    for (let later = k + 1; later < n && from[order[later]!]! <= to[i]!; later++) {
      const j = order[later]!;
      if (sidesClash(ring, Math.min(i, j), Math.max(i, j))) return true;
    }
    return false;
  });
}

/** Whether two sides of a ring, the first before the second, meet other than at the corner that they share. */
function sidesClash(ring: Ring, i: number, j: number): boolean {
  const areNeighbours = j === i + 1 || (i === 0 && j === ring.length / 2 - 1);
  return areNeighbours ? foldsBack(ring, j === i + 1 ? j : i) : sidesMeet(ring, i, ring, j);
}

/** Whether the two sides at a corner lie on each other. */
function foldsBack(ring: Ring, corner: number): boolean {
  const n = ring.length / 2;
  const at = (k: number): readonly [number, number] => [ring[2 * (k % n)]!, ring[2 * (k % n) + 1]!];
  const [a, b, c] = [at(corner + n - 1), at(corner), at(corner + 1)] as const;
  const cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
  const along = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
  return cross === 0 && along < 0;
}

function ringsMeet(a: Ring, b: Ring): boolean {
  for (let i = 0; i < a.length / 2; i++)
    for (let j = 0; j < b.length / 2; j++) if (sidesMeet(a, i, b, j)) return true;
  return false;
}

/** Whether two stretches of an axis have nothing in common. */
function areAside(a0: number, a1: number, b0: number, b1: number): boolean {
  return Math.max(a0, a1) < Math.min(b0, b1) || Math.min(a0, a1) > Math.max(b0, b1);
}

/** Whether side i of one ring and side j of another have a point in common. */
function sidesMeet(a: Ring, i: number, b: Ring, j: number): boolean {
  const i1 = (2 * i + 2) % a.length;
  const j1 = (2 * j + 2) % b.length;
  if (areAside(a[2 * i]!, a[i1]!, b[2 * j]!, b[j1]!)) return false;
  if (areAside(a[2 * i + 1]!, a[i1 + 1]!, b[2 * j + 1]!, b[j1 + 1]!)) return false;
  const ax = a[2 * i]!;
  const ay = a[2 * i + 1]!;
  const [ux, uy] = [a[i1]! - ax, a[i1 + 1]! - ay];
  const [px, py] = [b[2 * j]! - ax, b[2 * j + 1]! - ay];
  const [qx, qy] = [b[j1]! - ax, b[j1 + 1]! - ay];
  const sideP = ux * py - uy * px;
  const sideQ = ux * qy - uy * qx;
  if (sideP * sideQ > 0) return false;
  const sideA = (qy - py) * px - (qx - px) * py;
  const sideB = sideA + (qx - px) * uy - (qy - py) * ux;
  if (sideA * sideB > 0) return false;
  if (sideP !== 0 || sideQ !== 0) return true;
  const [p, q] = [px * ux + py * uy, qx * ux + qy * uy];
  return Math.max(p, q) >= 0 && Math.min(p, q) <= ux * ux + uy * uy;
}
