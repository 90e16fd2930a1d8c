import { makeClassify, cellKind } from './classify.ts';
import type { Press } from './press.ts';
import type { Shapes } from './shapes.ts';
import { makeTouches } from './touches.ts';

/**
 * What is known of pairs of poses for every offset at which their boxes meet, by the cells of a grid: whether they clash in
 * a whole cell, nowhere in it, or must be asked; and the measure at its corners. A cell that holds both is divided once more.
 * All maps lie one after the other.
 */
interface PairMaps {
  /** Left, low, cells per mm across and along, of each map. */
  frames: Float64Array;
  /** A kind; or, from `cellKind.divided` on, the block of smaller cells. */
  kinds: Int32Array;
  losses: Float32Array;
  /** Kinds of the smaller cells, block by block. */
  smaller: Uint8Array;
  count: number;
  blocks: number;
}

/** Cells along each side of a map, and smaller cells along each side of one. */
const cells = 32;
const parts = 8;
const area = cells * cells;
const corners = (cells + 1) * (cells + 1);
const mostMaps = 20_000;
const mostBlocks = 300_000;

/** A corner of a map that was never asked for. */
const unknown = -1;

export interface MapReader {
  /** Begins a map of two poses; its number, or -1 when there are too many. */
  readonly open: (a: number, b: number) => number;
  /** What a map has for an offset of its pair (a * count + b); a cell is looked into when it was asked for often enough. */
  readonly read: (map: number, pair: number, dx: number, dy: number) => number;
}

export function makePairMaps(shapes: Shapes, press: Press): MapReader {
  const maps: PairMaps = {
    ...{ frames: new Float64Array(0), kinds: new Int32Array(0), losses: new Float32Array(0) },
    ...{ smaller: new Uint8Array(0), count: 0, blocks: 0 },
  };
  return { open: (a, b) => openMap(maps, shapes, a, b), read: makeReader(maps, shapes, press) };
}

function openMap(maps: PairMaps, { box }: Shapes, a: number, b: number): number {
  if (maps.count === mostMaps) return -1;
  if (maps.kinds.length === area * maps.count) {
    const room = Math.max(16, Math.ceil(maps.count * 1.6));
    maps.frames = longer(maps.frames, new Float64Array(4 * room));
    maps.kinds = longer(maps.kinds, new Int32Array(area * room));
    maps.losses = longer(maps.losses, new Float32Array(corners * room));
  }
  const left = box[4 * a]! - box[4 * b + 2]!;
  const low = box[4 * a + 1]! - box[4 * b + 3]!;
  const across = box[4 * a + 2]! - box[4 * b]! - left;
  const along = box[4 * a + 3]! - box[4 * b + 1]! - low;
  maps.frames.set([left, low, cells / across, cells / along], 4 * maps.count);
  maps.losses.fill(unknown, corners * maps.count, corners * (maps.count + 1));
  return maps.count++;
}

function longer<List extends Float64Array | Float32Array | Int32Array | Uint8Array>(
  from: List,
  to: List,
): List {
  to.set(from);
  return to;
}

/** The number of a new block of smaller cells; -1 when there are too many. */
function openBlock(maps: PairMaps): number {
  if (maps.blocks === mostBlocks) return -1;
  const size = parts * parts;
  if (maps.smaller.length === size * maps.blocks) {
    const room = Math.max(256, Math.ceil(maps.blocks * 1.6));
    maps.smaller = longer(maps.smaller, new Uint8Array(size * room));
  }
  return maps.blocks++;
}

function makeReader(maps: PairMaps, shapes: Shapes, press: Press): MapReader['read'] {
  const { count } = shapes;
  const touches = makeTouches(shapes);
  const fillCorners = makeFiller(maps, shapes, press);
  const { look, lookCloser } = makeLooks(maps, shapes);
  return (map, pair, dx, dy) => {
    const { frames, kinds, losses } = maps;
    const u = (dx - frames[4 * map]!) * frames[4 * map + 2]!;
    const v = (dy - frames[4 * map + 1]!) * frames[4 * map + 3]!;
    if (!(u > 0 && v > 0 && u < cells && v < cells)) return 0;
    const column = u | 0;
    const row = v | 0;
    const s = u - column;
    const t = v - row;
    const cell = area * map + cells * row + column;
    let found = kinds[cell]!;
    if (found < cellKind.worthwhile) found = look(map, pair, cell);
    if (found >= cellKind.divided) {
      const smaller = parts * (parts * (found - cellKind.divided) + ((t * parts) | 0)) + ((s * parts) | 0);
      found = maps.smaller[smaller]!;
      if (found < cellKind.worthwhile) found = lookCloser(map, pair, cell, smaller);
    }
    if (found === cellKind.free) return 0;
    if (found !== cellKind.clash) {
      const a = (pair / count) | 0;
      if (!touches(a, pair - a * count, dx, dy)) return 0;
    }
    const at = corners * map + row * (cells + 1) + column;
    const above = at + cells + 1;
    if (losses[at]! < 0 || losses[at + 1]! < 0 || losses[above]! < 0 || losses[above + 1]! < 0)
      fillCorners(map, pair, at);
    const below = losses[at]! * (1 - s) + losses[at + 1]! * s;
    return below * (1 - t) + (losses[above]! * (1 - s) + losses[above + 1]! * s) * t;
  };
}

interface Looks {
  /** Counts that a cell was asked for, and looks into it when that is worthwhile; its kind. */
  readonly look: (map: number, pair: number, cell: number) => number;
  readonly lookCloser: (map: number, pair: number, cell: number, smaller: number) => number;
}

function makeLooks(maps: PairMaps, shapes: Shapes): Looks {
  const classify = makeClassify(shapes);
  const look: Looks['look'] = (map, pair, cell) => {
    const found = maps.kinds[cell]! + 1;
    maps.kinds[cell] = found;
    if (found < cellKind.worthwhile) return found;
    const inside = cell - area * map;
    const width = 1 / maps.frames[4 * map + 2]!;
    const height = 1 / maps.frames[4 * map + 3]!;
    const x = maps.frames[4 * map]! + ((inside % cells) + 0.5) * width;
    const y = maps.frames[4 * map + 1]! + (Math.floor(inside / cells) + 0.5) * height;
    const kind = classify(pair, x, y, 0.5001 * Math.hypot(width, height));
    const block = kind === cellKind.mixed ? openBlock(maps) : -1;
    maps.kinds[cell] = block < 0 ? kind : cellKind.divided + block;
    return maps.kinds[cell]!;
  };
  const lookCloser: Looks['lookCloser'] = (map, pair, cell, smaller) => {
    const found = maps.smaller[smaller]! + 1;
    maps.smaller[smaller] = found;
    if (found < cellKind.worthwhile) return found;
    const inside = cell - area * map;
    const part = smaller % (parts * parts);
    const width = 1 / (parts * maps.frames[4 * map + 2]!);
    const height = 1 / (parts * maps.frames[4 * map + 3]!);
    const column = parts * (inside % cells) + (part % parts);
    const row = parts * Math.floor(inside / cells) + Math.floor(part / parts);
    const x = maps.frames[4 * map]! + (column + 0.5) * width;
    const y = maps.frames[4 * map + 1]! + (row + 0.5) * height;
    maps.smaller[smaller] = classify(pair, x, y, 0.5001 * Math.hypot(width, height));
    return maps.smaller[smaller]!;
  };
  return { look, lookCloser };
}

/** Measures at the four corners of a cell what was not measured there yet; the cell is named by its lower left corner. */
function makeFiller(
  maps: PairMaps,
  { count }: Shapes,
  press: Press,
): (map: number, pair: number, at: number) => void {
  const fill = (map: number, pair: number, at: number): void => {
    if (maps.losses[at]! >= 0) return;
    const inside = at - corners * map;
    const x = maps.frames[4 * map]! + (inside % (cells + 1)) / maps.frames[4 * map + 2]!;
    const y = maps.frames[4 * map + 1]! + Math.floor(inside / (cells + 1)) / maps.frames[4 * map + 3]!;
    const cap = press.cap[0]!;
    press.cap[0] = Infinity;
    maps.losses[at] = press.measure(Math.floor(pair / count), pair % count, x, y);
    press.cap[0] = cap;
  };
  return (map, pair, at) => {
    fill(map, pair, at);
    fill(map, pair, at + 1);
    fill(map, pair, at + cells + 1);
    fill(map, pair, at + cells + 2);
  };
}
