import { boxOfRing } from './rings.ts';
import type { Figure, Ring } from './rings.ts';

/** A circle inside a part. */
export interface Pole {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly half: number;
  readonly depth: number;
  readonly most: number;
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
  let filled = 0;
  while (!enough.some(({ circles, covered }) => poles.length >= circles && filled >= covered * area)) {
    const pole = findNext(figure, poles, fine);
    if (poles.length > 0 && pole.r < fine) break;
    poles.push(pole);
    filled += Math.PI * pole.r * pole.r;
  }
  return poles;
}

function findNext(figure: Figure, taken: readonly Pole[], fine: number): Pole {
  const [minX, minY, maxX, maxY] = boxOfRing(figure.outer);
  const half = Math.max(Math.min(maxX - minX, maxY - minY) / 2, Math.max(maxX - minX, maxY - minY) / 40);
  const open: Cell[] = [];
  const cellAt = (x: number, y: number, size: number): Cell => {
    const depth = depthAt(figure, taken, x, y);
    return { x, y, half: size, depth, most: depth + size * Math.SQRT2 };
  };
  for (let x = minX; x < maxX; x += 2 * half)
    for (let y = minY; y < maxY; y += 2 * half) open.push(cellAt(x + half, y + half, half));
  let best = open.reduce((a, b) => (b.depth > a.depth ? b : a));
  open.sort((a, b) => a.most - b.most);
  for (let looked = 0; open.length > 0 && looked < 4000; looked++) {
    const cell = open.pop() as Cell;
    if (cell.most - best.depth <= fine) continue;
    for (const [sx, sy] of quarters) {
      const part = cellAt(cell.x + (sx * cell.half) / 2, cell.y + (sy * cell.half) / 2, cell.half / 2);
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

/** Distance to the nearest edge or circle, negative outside the part or inside a circle. */
function depthAt(figure: Figure, taken: readonly Pole[], x: number, y: number): number {
  let inside = isInRing(figure.outer, x, y);
  let distance = distanceToRing(figure.outer, x, y);
  for (const hole of figure.holes) {
    if (isInRing(hole, x, y)) inside = false;
    distance = Math.min(distance, distanceToRing(hole, x, y));
  }
  if (!inside) return -distance;
  for (const pole of taken) distance = Math.min(distance, Math.hypot(x - pole.x, y - pole.y) - pole.r);
  return distance;
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
