import { makeClassify, cellKind } from './classify.ts';
import { makePress } from './press.ts';
import type { Press } from './press.ts';
import type { Shapes } from './shapes.ts';
import { makeMeets, makeTouches } from './touches.ts';

/**
 * How badly two poses overlap when the second lies at (dx, dy) from the first; 0 when they are apart. The measure grows
 * with how deep the circles inside them press into each other and with the size of their hulls (Gardeyn, Vanden Berghe,
 * Wauters 2025). Poses that touch count as overlapping, unless only their boxes touch.
 */
export type Clash = Press;

/**
 * What is known of a pair of poses for every offset at which their boxes meet, by the cells of a grid: whether they clash
 * in a whole cell, nowhere in it, or must be asked; and the measure at its corners.
 */
interface PairMap {
  readonly left: number;
  readonly low: number;
  readonly perX: number;
  readonly perY: number;
  readonly kind: Uint8Array;
  readonly loss: Float32Array;
}

/** Cells along each side of a map. */
const cells = 32;
/** A pair asked so often is worth a map, while there are not too many maps; with more poses than this none is kept. */
const oftenAsked = 500;
const mostMaps = 20_000;
const mostPoses = 1500;

/** A corner of a map that was never asked for. */
const unknown = -1;

export function makeClash(shapes: Shapes): Clash {
  const { box, count } = shapes;
  const touches = makeTouches(shapes);
  const meetsEarly = makeMeets(shapes);
  const press = makePress(shapes);
  const readMap = makeReader(shapes, press);
  const asked = new Uint16Array(count <= mostPoses ? count * count : 0);
  const maps: (PairMap | null)[] = new Array<PairMap | null>(asked.length).fill(null);
  let made = 0;
  const measure: Clash['measure'] = (a, b, dx, dy) => {
    // one map serves both ways round
    return a > b ? measureOrdered(b, a, -dx, -dy) : measureOrdered(a, b, dx, dy);
  };
  const measureOrdered: Clash['measure'] = (a, b, dx, dy) => {
    const a4 = 4 * a;
    const b4 = 4 * b;
    if (box[b4]! + dx >= box[a4 + 2]! || box[b4 + 2]! + dx <= box[a4]!) return 0;
    if (box[b4 + 1]! + dy >= box[a4 + 3]! || box[b4 + 3]! + dy <= box[a4 + 1]!) return 0;
    const pair = a * count + b;
    if (asked.length > 0) {
      const map = maps[pair];
      if (map) return readMap(map, pair, dx, dy);
      if (asked[pair]! < oftenAsked) asked[pair] = asked[pair]! + 1;
      else if (made < mostMaps) {
        made++;
        maps[pair] = openMap(shapes, a, b);
      }
    }
    if (!meetsEarly(a, b, dx, dy) && !touches(a, b, dx, dy)) return 0;
    return press.measure(a, b, dx, dy);
  };
  return { cap: press.cap, measure };
}

function openMap({ box }: Shapes, a: number, b: number): PairMap {
  const left = box[4 * a]! - box[4 * b + 2]!;
  const low = box[4 * a + 1]! - box[4 * b + 3]!;
  const stepX = (box[4 * a + 2]! - box[4 * b]! - left) / cells;
  const stepY = (box[4 * a + 3]! - box[4 * b + 1]! - low) / cells;
  const loss = new Float32Array((cells + 1) * (cells + 1)).fill(unknown);
  return { left, low, perX: 1 / stepX, perY: 1 / stepY, kind: new Uint8Array(cells * cells), loss };
}

/** Reads a map at an offset; a cell is looked into when it is first asked for. */
function makeReader(
  shapes: Shapes,
  press: Press,
): (map: PairMap, pair: number, dx: number, dy: number) => number {
  const { count } = shapes;
  const touches = makeTouches(shapes);
  const classify = makeClassify(shapes);
  const fillCorners = makeFiller(shapes, press);
  const look = (map: PairMap, pair: number, column: number, row: number): number => {
    const width = 1 / map.perX;
    const height = 1 / map.perY;
    const x = map.left + (column + 0.5) * width;
    const y = map.low + (row + 0.5) * height;
    return classify(pair, x, y, 0.5001 * Math.hypot(width, height));
  };
  return (map, pair, dx, dy) => {
    const { kind, loss } = map;
    const u = (dx - map.left) * map.perX;
    const v = (dy - map.low) * map.perY;
    const column = u < cells ? u | 0 : cells - 1;
    const row = v < cells ? v | 0 : cells - 1;
    const cell = row * cells + column;
    let found = kind[cell]!;
    if (found < cellKind.worthwhile) kind[cell] = ++found;
    if (found === cellKind.worthwhile) {
      found = look(map, pair, column, row);
      kind[cell] = found;
    }
    if (found === cellKind.free) return 0;
    if (found !== cellKind.clash) {
      const a = (pair / count) | 0;
      if (!touches(a, pair - a * count, dx, dy)) return 0;
    }
    const at = row * (cells + 1) + column;
    fillCorners(map, pair, at);
    const s = u - column;
    const t = v - row;
    const below = loss[at]! * (1 - s) + loss[at + 1]! * s;
    const above = loss[at + cells + 1]! * (1 - s) + loss[at + cells + 2]! * s;
    return below * (1 - t) + above * t;
  };
}

/** Measures at the four corners of a cell what was not measured there yet; the cell is named by its lower left corner. */
function makeFiller({ count }: Shapes, press: Press): (map: PairMap, pair: number, at: number) => void {
  const fill = (map: PairMap, pair: number, at: number): void => {
    const row = Math.floor(at / (cells + 1));
    const x = map.left + (at % (cells + 1)) / map.perX;
    const cap = press.cap[0]!;
    press.cap[0] = Infinity;
    map.loss[at] = press.measure(Math.floor(pair / count), pair % count, x, map.low + row / map.perY);
    press.cap[0] = cap;
  };
  return (map, pair, at) => {
    const { loss } = map;
    const above = at + cells + 1;
    if (loss[at]! < 0) fill(map, pair, at);
    if (loss[at + 1]! < 0) fill(map, pair, at + 1);
    if (loss[above]! < 0) fill(map, pair, above);
    if (loss[above + 1]! < 0) fill(map, pair, above + 1);
  };
}
