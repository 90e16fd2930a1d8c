import { boxOfRing } from './rings.ts';
import type { Figure, Ring } from './rings.ts';

/** A circle inside a part. */
export interface Pole {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** A square of a part's box. It is kept from one circle to the next, as measuring to the sides is what costs time. */
interface Cell {
  readonly x: number;
  readonly y: number;
  readonly half: number;
  /** Distance of its middle to the nearest side or circle, negative outside the part or inside a circle. */
  depth: number;
  most: number;
  /** How many of the circles the depth takes in. */
  circles: number;
  /** Its quarters, once asked for. */
  parts: readonly Cell[] | null;
}

/** Enough circles: so many where they cover this share of the part. */
const enough = [
  { circles: 8, covered: 0.9 },
  { circles: 16, covered: 0.8 },
  { circles: 24, covered: 0 },
] as const;
/** A centre is sought to this share of the part's diagonal. */
const precision = 0.01;

/**
 * Circles that fill a part from the largest down, none over another: poles of inaccessibility (Garcia-Castellanos and
 * Lombardo 2007), found by halving squares. At least one.
 */
export function findPoles(figure: Figure, area: number): readonly Pole[] {
  const [minX, minY, maxX, maxY] = boxOfRing(figure.outer);
  const fine = precision * Math.hypot(maxX - minX, maxY - minY);
  const poles: Pole[] = [];
  const squares = coverBox(figure);
  let filled = 0;
  while (!enough.some(({ circles, covered }) => poles.length >= circles && filled >= covered * area)) {
    const pole = findNext(figure, squares, poles, fine);
    if (poles.length > 0 && pole.r < fine) break;
    poles.push(pole);
    filled += Math.PI * pole.r * pole.r;
  }
  return poles;
}

/** Squares over the box of a part. */
function coverBox(figure: Figure): readonly Cell[] {
  const [minX, minY, maxX, maxY] = boxOfRing(figure.outer);
  const half = Math.max(Math.min(maxX - minX, maxY - minY) / 2, Math.max(maxX - minX, maxY - minY) / 40);
  const squares: Cell[] = [];
  for (let x = minX; x < maxX; x += 2 * half)
    for (let y = minY; y < maxY; y += 2 * half) squares.push(makeCell(figure, x + half, y + half, half));
  return squares;
}

function makeCell(figure: Figure, x: number, y: number, half: number): Cell {
  const depth = depthAt(figure, x, y);
  return { x, y, half, depth, most: depth + half * Math.SQRT2, circles: 0, parts: null };
}

/** Takes in the circles that came since a square was last looked at. */
function takeIn(cell: Cell, taken: readonly Pole[]): Cell {
  for (; cell.circles < taken.length; cell.circles++) {
    const { x, y, r } = taken[cell.circles] as Pole;
    cell.depth = Math.min(cell.depth, Math.hypot(cell.x - x, cell.y - y) - r);
  }
  cell.most = cell.depth + cell.half * Math.SQRT2;
  return cell;
}

function quartersOf(figure: Figure, cell: Cell): readonly Cell[] {
  const { x, y, half } = cell;
  cell.parts ??= quarters.map(([sx, sy]) =>
    makeCell(figure, x + (sx * half) / 2, y + (sy * half) / 2, half / 2),
  );
  return cell.parts;
}

function findNext(figure: Figure, squares: readonly Cell[], taken: readonly Pole[], fine: number): Pole {
  const open = squares.map((cell) => takeIn(cell, taken));
  let best = open.reduce((a, b) => (b.depth > a.depth ? b : a));
  open.sort((a, b) => a.most - b.most);
  for (let looked = 0; open.length > 0 && looked < 4000; looked++) {
    const cell = open.pop() as Cell;
    if (cell.most - best.depth <= fine) continue;
    for (const part of quartersOf(figure, cell)) {
      takeIn(part, taken);
      if (part.depth > best.depth) best = part;
      insertCell(open, part);
    }
  }
  return { x: best.x, y: best.y, r: Math.max(best.depth, fine / 100) };
}

const quarters = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

function insertCell(open: Cell[], cell: Cell): void {
  let low = 0;
  let high = open.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((open[middle] as Cell).most < cell.most) low = middle + 1;
    else high = middle;
  }
  open.splice(low, 0, cell);
}

/** Distance to the nearest side, negative outside the part. */
function depthAt(figure: Figure, x: number, y: number): number {
  let inside = isInRing(figure.outer, x, y);
  let distance = distanceToRing(figure.outer, x, y);
  for (const hole of figure.holes) {
    if (isInRing(hole, x, y)) inside = false;
    distance = Math.min(distance, distanceToRing(hole, x, y));
  }
  return inside ? distance : -distance;
}

export function isInRing(ring: Ring, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const yi = ring[i + 1] as number;
    const yj = ring[j + 1] as number;
    if (yi > y === yj > y) continue;
    const xi = ring[i] as number;
    const xj = ring[j] as number;
    if (x < xi + ((y - yi) * (xj - xi)) / (yj - yi)) inside = !inside;
  }
  return inside;
}

function distanceToRing(ring: Ring, x: number, y: number): number {
  let least = Infinity;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const ax = ring[j] as number;
    const ay = ring[j + 1] as number;
    const ux = (ring[i] as number) - ax;
    const uy = (ring[i + 1] as number) - ay;
    const along = ((x - ax) * ux + (y - ay) * uy) / (ux * ux + uy * uy || 1);
    const t = along < 0 ? 0 : along > 1 ? 1 : along;
    const dx = x - ax - t * ux;
    const dy = y - ay - t * uy;
    const square = dx * dx + dy * dy;
    if (square < least) least = square;
  }
  return Math.sqrt(least);
}
