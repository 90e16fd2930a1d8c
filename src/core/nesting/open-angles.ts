import type { Nest } from './nest.ts';
import type { Shapes } from './shapes.ts';

/** Angles that differ by less count as equal, radians; places by this share of the sheet. */
export const nearAngle = 1e-6;
const nearShare = 1e-9;

/** A place on a sheet round which less than half a turn is free: from one direction counter-clockwise, radians. */
export interface OpenAngle {
  readonly x: number;
  readonly y: number;
  readonly from: number;
  /** How far it goes. */
  readonly turn: number;
}

/** Corners of every pose: where, the direction of the side that begins there, and how far it is to the side that ends there. */
export interface Turns {
  readonly from: Float64Array;
  readonly turn: Float64Array;
}

/** The corners of outlines as they are turned, in the order of `shapes.corners`. */
export function measureTurns({ corners, cornerStart, count }: Shapes): Turns {
  const all = cornerStart[count]!;
  const from = new Float64Array(all);
  const turn = new Float64Array(all);
  for (let p = 0; p < count; p++) {
    const first = cornerStart[p]!;
    const end = cornerStart[p + 1]!;
    for (let k = first; k < end; k++) {
      const next = k + 1 < end ? k + 1 : first;
      const before = k > first ? k - 1 : end - 1;
      from[k] = directionOf(corners, k, next);
      turn[k] = wrap(directionOf(corners, k, before) - from[k]!);
    }
  }
  return { from, turn };
}

function directionOf(corners: Float64Array, a: number, b: number): number {
  return Math.atan2(corners[2 * b + 1]! - corners[2 * a + 1]!, corners[2 * b]! - corners[2 * a]!);
}

/** The same angle from 0 up to a whole turn; a hair below 0 counts as 0. */
export function wrap(angle: number): number {
  const turns = angle / (2 * Math.PI);
  const rest = (turns - Math.floor(turns)) * 2 * Math.PI;
  return rest > 2 * Math.PI - nearAngle ? 0 : rest;
}

/** The open angles at the corners of a sheet and of the parts on it, where only a corner of a part can fill them. */
export function listOpenAngles(nest: Nest, sheet: number, turns: Turns): readonly OpenAngle[] {
  const open: OpenAngle[] = [];
  for (const [x, y] of meetingsOn(nest, sheet).values()) {
    for (const gap of gapsBetween(coveredRound(nest, sheet, turns, { x, y }))) open.push({ x, y, ...gap });
  }
  return open;
}

/** The name of a place, the same for places that rounding sets apart. */
export function nameSpot(x: number, y: number): string {
  return `${Math.round(x * 1e5)} ${Math.round(y * 1e5)}`;
}

/** The corners of a sheet and of all parts on it, each place once, by its name. */
export function meetingsOn(nest: Nest, sheet: number): ReadonlyMap<string, readonly [number, number]> {
  return new Map(cornersOn(nest, sheet).map((corner) => [nameSpot(...corner), corner]));
}

function cornersOn(nest: Nest, sheet: number): (readonly [number, number])[] {
  const { corners, cornerStart } = nest.shapes;
  const length = nest.sheetLength[sheet]!;
  const width = nest.sheetWidth[sheet]!;
  const found: (readonly [number, number])[] = [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ];
  for (let m = 0; m < nest.memberCount[sheet]!; m++) {
    const i = nest.members[sheet]![m]!;
    for (let k = cornerStart[nest.pose[i]!]!; k < cornerStart[nest.pose[i]! + 1]!; k++)
      found.push([nest.x[i]! + corners[2 * k]!, nest.y[i]! + corners[2 * k + 1]!]);
  }
  return found;
}

interface Covered {
  readonly from: number;
  readonly turn: number;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What the parts and the outside of the sheet cover round a place. */
function coveredRound(nest: Nest, sheet: number, turns: Turns, { x, y }: Spot): Covered[] {
  const length = nest.sheetLength[sheet]!;
  const width = nest.sheetWidth[sheet]!;
  const near = nearShare * Math.max(length, width);
  const half = Math.PI;
  const covered: Covered[] = [];
  if (x <= near) covered.push({ from: half / 2, turn: half });
  if (x >= length - near) covered.push({ from: 1.5 * half, turn: half });
  if (y <= near) covered.push({ from: half, turn: half });
  if (y >= width - near) covered.push({ from: 0, turn: half });
  for (let m = 0; m < nest.memberCount[sheet]!; m++) {
    const i = nest.members[sheet]![m]!;
    const j = 4 * i;
    if (x < nest.lies[j]! - near || y < nest.lies[j + 1]! - near) continue;
    if (x > nest.lies[j + 2]! + near || y > nest.lies[j + 3]! + near) continue;
    const found = coveredBy(nest, i, turns, { x, y, near });
    if (found) covered.push(found);
  }
  return covered;
}

/** What a part covers round a corner of its own or a place on a side of it. */
function coveredBy(
  nest: Nest,
  i: number,
  turns: Turns,
  spot: Spot & { readonly near: number },
): Covered | null {
  const { corners, cornerStart } = nest.shapes;
  const x = spot.x - nest.x[i]!;
  const y = spot.y - nest.y[i]!;
  const first = cornerStart[nest.pose[i]!]!;
  const end = cornerStart[nest.pose[i]! + 1]!;
  let onSide = -1;
  for (let k = first; k < end; k++) {
    const px = x - corners[2 * k]!;
    const py = y - corners[2 * k + 1]!;
    if (Math.abs(px) <= spot.near && Math.abs(py) <= spot.near)
      return { from: turns.from[k]!, turn: turns.turn[k]! };
    const next = k + 1 < end ? k + 1 : first;
    const ux = corners[2 * next]! - corners[2 * k]!;
    const uy = corners[2 * next + 1]! - corners[2 * k + 1]!;
    const square = ux * ux + uy * uy;
    const along = px * ux + py * uy;
    const aside = Math.abs(px * uy - py * ux);
    if (along > 0 && along < square && aside <= spot.near * Math.sqrt(square)) onSide = k;
  }
  return onSide < 0 ? null : { from: turns.from[onSide]!, turn: Math.PI };
}

/** The free angles of less than half a turn between covered ones. */
function gapsBetween(covered: readonly Covered[]): Covered[] {
  const sorted = covered
    .map(({ from, turn }) => ({ from: wrap(from), turn }))
    .sort((a, b) => a.from - b.from);
  const gaps: Covered[] = [];
  const [first] = sorted;
  if (!first) return gaps;
  let end = first.from;
  // twice round: what begins before the first may reach over it
  for (const { from, turn } of sorted) end = Math.max(end, from + turn);
  end -= 2 * Math.PI;
  for (const { from, turn } of sorted) {
    const free = from - end;
    if (free > nearAngle && free < Math.PI - nearAngle) gaps.push({ from: end, turn: free });
    end = Math.max(end, from + turn);
  }
  return gaps;
}
