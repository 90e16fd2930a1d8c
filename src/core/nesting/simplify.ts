import { ringArea } from './rings.ts';
import type { Ring } from './rings.ts';

/** Corners may go while there are more than these and what is added stays below that share of the area. */
const fewCorners = { count: 16, mostAdded: 0.001 } as const;
const manyCorners = { count: 64, mostAdded: 0.005 } as const;

interface Change {
  /** Corner left out; with `by`, it and the next one give way to one corner. */
  readonly at: number;
  readonly by: readonly [number, number] | null;
  readonly added: number;
}

/**
 * A ring of fewer corners round the same material, which lies to its left: dents are filled, blunt corners sharpened,
 * never anything cut away. A hole goes clockwise.
 */
export function simplifyRing(ring: Ring, area: number): Ring {
  let corners: (readonly [number, number])[] = [];
  for (let i = 0; i < ring.length; i += 2) corners.push([ring[i]!, ring[i + 1]!]);
  let added = 0;
  while (corners.length > fewCorners.count) {
    const { mostAdded } = corners.length > manyCorners.count ? manyCorners : fewCorners;
    const change = cheapest(corners, mostAdded * area - added);
    if (!change) break;
    added += change.added;
    corners = apply(corners, change);
  }
  const simple = Float64Array.from(corners.flat());
  // what the arithmetic may have spoilt is not taken
  return ringArea(simple) * ringArea(ring) > 0 ? simple : ring;
}

function apply(corners: readonly (readonly [number, number])[], { at, by }: Change) {
  const next = (at + 1) % corners.length;
  if (!by) return corners.filter((_, i) => i !== at);
  return corners.map((corner, i) => (i === at ? by : corner)).filter((_, i) => i !== next);
}

function cheapest(corners: readonly (readonly [number, number])[], most: number): Change | null {
  const changes = corners
    .map((_, at) => fillDent(corners, at) ?? sharpen(corners, at))
    .filter((change): change is Change => change !== null && change.added <= most)
    .sort((a, b) => a.added - b.added);
  return changes.find((change) => staysSimple(corners, change)) ?? null;
}

const at = (corners: readonly (readonly [number, number])[], i: number) =>
  corners[(i + corners.length) % corners.length]!;

/** Twice the signed area of a triangle, positive when it turns left. */
function turn(
  a: readonly [number, number],
  b: readonly [number, number],
  c: readonly [number, number],
): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function fillDent(corners: readonly (readonly [number, number])[], i: number): Change | null {
  const dent = turn(at(corners, i - 1), at(corners, i), at(corners, i + 1));
  return dent <= 0 ? { at: i, by: null, added: -dent / 2 } : null;
}

/** The corner where the sides before and after an edge meet beyond it. */
function sharpen(corners: readonly (readonly [number, number])[], i: number): Change | null {
  const [a, b, c, d] = [i - 1, i, i + 1, i + 2].map((k) => at(corners, k)) as [
    readonly [number, number],
    readonly [number, number],
    readonly [number, number],
    readonly [number, number],
  ];
  if (turn(a, b, c) <= 0 || turn(b, c, d) <= 0) return null;
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [c[0] - d[0], c[1] - d[1]];
  const cross = ux * vy - uy * vx;
  if (cross <= 1e-9 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return null;
  const t = ((c[0] - b[0]) * vy - (c[1] - b[1]) * vx) / cross;
  if (!(t > 0)) return null;
  const by = [b[0] + t * ux, b[1] + t * uy] as const;
  return { at: i, by, added: Math.abs(turn(b, by, c)) / 2 };
}

/** Whether the new sides meet no other side. */
function staysSimple(corners: readonly (readonly [number, number])[], { at: i, by }: Change): boolean {
  const n = corners.length;
  const path = by ? [at(corners, i - 1), by, at(corners, i + 2)] : [at(corners, i - 1), at(corners, i + 1)];
  const touching = by ? 5 : 4;
  // sides that share no corner with the new ones
  for (let k = 0; k < n - touching; k++) {
    const p = at(corners, i + (by ? 3 : 2) + k);
    const q = at(corners, i + (by ? 4 : 3) + k);
    for (let s = 0; s + 1 < path.length; s++) if (sidesMeet(path[s]!, path[s + 1]!, p, q)) return false;
  }
  return true;
}

function sidesMeet(
  a: readonly [number, number],
  b: readonly [number, number],
  p: readonly [number, number],
  q: readonly [number, number],
): boolean {
  return turn(a, b, p) * turn(a, b, q) <= 0 && turn(p, q, a) * turn(p, q, b) <= 0;
}
