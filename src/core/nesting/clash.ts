import { makePairMaps } from './pair-maps.ts';
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

/** A pair asked so often is worth a map, while there are not too many maps; with more poses than this none is kept. */
const oftenAsked = 500;
const mostPoses = 1500;

export function makeClash(shapes: Shapes): Clash {
  const { box, count } = shapes;
  const touches = makeTouches(shapes);
  const meetsEarly = makeMeets(shapes);
  const press = makePress(shapes);
  const { open, read } = makePairMaps(shapes, press);
  // how often each pair was asked; from then on, above that, its map
  const maps = new Int32Array(count <= mostPoses ? count * count : 0);
  const measure: Clash['measure'] = (a, b, dx, dy) => {
    // one map serves both ways round
    return a > b ? measureOrdered(b, a, -dx, -dy) : measureOrdered(a, b, dx, dy);
  };
  const measureOrdered: Clash['measure'] = (a, b, dx, dy) => {
    const pair = a * count + b;
    if (maps.length > 0) {
      const map = maps[pair]! - oftenAsked;
      if (map > 0) return read(map - 1, pair, dx, dy);
      maps[pair] = map < 0 ? map + oftenAsked + 1 : oftenAsked + 1 + open(a, b);
    }
    const a4 = 4 * a;
    const b4 = 4 * b;
    if (box[b4]! + dx >= box[a4 + 2]! || box[b4 + 2]! + dx <= box[a4]!) return 0;
    if (box[b4 + 1]! + dy >= box[a4 + 3]! || box[b4 + 3]! + dy <= box[a4 + 1]!) return 0;
    if (!meetsEarly(a, b, dx, dy) && !touches(a, b, dx, dy)) return 0;
    return press.measure(a, b, dx, dy);
  };
  return { cap: press.cap, measure };
}
