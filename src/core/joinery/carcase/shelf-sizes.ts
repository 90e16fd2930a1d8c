import { boxOfOutline, type Outline, type PathPoint } from '#core/geometry';
import { clearOfObstacle, leastDepth, levelBack } from '../hull/back-edge.ts';
import { depthOf, heightRange, stationAt } from '../hull/hull.ts';
import { putStiffness } from '../stiffness.ts';
import type { WorkingBook } from '../working.ts';
import type { CarcaseChoices } from './choices.ts';
import { facesOf, reachOf, rule, sideName, sides, type Side } from './sides.ts';

/** The plan of a shelf from its left end at x = 0, y being its depth behind the front (joinery B7). */
export function sizeShelf(
  book: WorkingBook,
  choices: CarcaseChoices,
  [underside, i]: readonly [number, number],
): Outline {
  book.putChoice('shelves', `y_${i}`, underside, `shelf ${i}, underside`, 'you');
  for (const side of sides) sizeShelfEnd(book, choices, [side, i]);
  const back = shelfBack(book, choices, i);
  const length = book.value('shelf_L');
  const outline: Outline = [{ x: 0, y: 0 }, { x: length, y: 0 }, ...walkBack(back)];
  const straight = back.length === 2 && back.every(({ bulge }) => bulge === undefined);
  if (straight && back[0]?.y === book.value(`depth_l_${i}`))
    book.work(`shelf_D_${i}`, `max(depth_l_${i}, depth_r_${i})`, `shelf ${i}, depth`, rule);
  else
    book.put(
      `shelf_D_${i}`,
      boxOfOutline(outline).maxY,
      `shelf ${i}, deepest`,
      `${rule}, ${choices.hull.source}`,
    );
  const turn = `atand((depth_r_${i} - depth_l_${i})/shelf_L)`;
  book.work(`back_angle_${i}`, turn, `shelf ${i}, back edge against the front`, rule, 'degrees');
  book.work(
    `gap_top_${i}`,
    `Ts*abs(slope_l_${i})`,
    `shelf ${i}, more gap at its other face when cut square`,
    rule,
  );
  return outline;
}

/** A path walked from its end to its start. */
function walkBack(path: readonly PathPoint[]): readonly PathPoint[] {
  return path.toReversed().map(({ x, y }, i) => {
    const bulge = path[path.length - 2 - i]?.bulge;
    return bulge === undefined ? { x, y } : { x, y, bulge: -bulge };
  });
}

type Heights = readonly [number, number];

/** Depth of a shelf at one of its ends, by the slope of the hull there (joinery B7). */
function sizeShelfEnd(book: WorkingBook, choices: CarcaseChoices, [side, i]: readonly [Side, number]): void {
  const { hull, shelfBack: back } = choices;
  const [at] = facesOf(choices, side);
  const [y, t] = [book.value(`y_${i}`), book.value('Ts')];
  const [low, high] = heightRange(hull);
  const lo = Math.min(y, Math.max(low, y - hull.pitch));
  const hi = Math.max(y, Math.min(high, y + hull.pitch));
  const station = stationAt(hull, at, [lo - 10, hi + 10]);
  const n = `${side}_${i}`;
  const where = `shelf ${i}, ${sideName[side]}`;
  book.put(`hull_${n}`, depthOf(station, y), `${where}: hull at its underside`, hull.source);
  book.put(`lo_${n}`, depthOf(station, lo), `${where}: hull below it`, hull.source);
  book.put(`hi_${n}`, depthOf(station, hi), `${where}: hull above it`, hull.source);
  book.put(`span_${n}`, Math.max(1, hi - lo), `${where}: height between the two`, hull.source);
  book.work(`slope_${n}`, `(hi_${n} - lo_${n})/span_${n}`, `${where}: slope of the hull`, rule, 'ratio');
  book.work(`beta_${n}`, `atand(slope_${n})`, `${where}: hull from upright`, rule, 'degrees');
  book.work(`d_${n}`, `hull_${n} - c/cosd(beta_${n}) - Tfr`, `${where}: clear depth at its underside`, rule);
  const faces: readonly Heights[] =
    back === 'bevelled'
      ? [
          [y, y],
          [y + t, y + t],
        ]
      : [[y, y + t]];
  const free = Math.max(...faces.map((level) => leastDepth(reachOf(choices), at, level)));
  book.put(`free_${n}`, free, `${where}: clear over its thickness and of what stands there`, hull.source);
  const rounded = back === 'bevelled' ? `down(free_${n}, 0.5)` : `down(min(d_${n}, free_${n}), 0.5)`;
  book.work(`depth_${n}`, rounded, `${where}: depth`, rule);
  if (!choices.cleats) return;
  book.put(
    `under_${n}`,
    leastDepth(reachOf(choices), at, [y - choices.cleat, y]),
    `${where}: clear depth beside its cleat`,
    hull.source,
  );
  book.work(
    `cleat_${n}`,
    `depth_${n} - 20 - max(10, depth_${n} - under_${n})`,
    `${where}: cleat, length`,
    rule,
  );
}

/** The back edge of a shelf from left to right, from its left end; straight when nothing bends it. */
function shelfBack(book: WorkingBook, choices: CarcaseChoices, i: number): readonly PathPoint[] {
  const { hull, start, width } = choices;
  const [y, t, length] = [book.value(`y_${i}`), book.value('Ts'), book.value('shelf_L')];
  const ends = [
    { x: 0, y: book.value(`depth_l_${i}`) },
    { x: length, y: book.value(`depth_r_${i}`) },
  ];
  const deepest = Math.max(...ends.map((end) => end.y)) + choices.frontThickness + clearOfObstacle;
  const inWay = hull.obstacles.some(
    ({ box, from, to }) =>
      box.minY < y + t + clearOfObstacle &&
      box.maxY > y - clearOfObstacle &&
      to > start &&
      from < start + width &&
      box.minX < deepest,
  );
  if (hull.stations.length < 3 && !inWay) return ends;
  const from = start + (width - length) / 2;
  const back = levelBack(reachOf(choices), [from, from + length], [y, y + t]);
  return back.map((point) => ({ ...point, x: point.x - from }));
}

/** How far the shallowest shelf sags under its load in time (joinery B8). */
export function sizeSag(book: WorkingBook, choices: CarcaseChoices): void {
  const { given, stock } = choices;
  book.putChoice('load', 'load', choices.load, 'load on each shelf', given.has('load') ? 'you' : rule, 'kg');
  putStiffness(book, 'E', stock.shelf, { of: 'the shelves' });
  const depths = choices.shelves.map((_, i) => `shelf_D_${i + 1}`);
  book.work('shelf_least', `min(${depths.join(', ')}, ${depths[0] ?? ''})`, 'shallowest shelf', rule);
  const sag = '1.5*5*(load*9.81/Wi)*Wi**4/(384*E*(shelf_least*Ts**3/12))';
  book.work('sag', sag, 'sag of a loaded shelf in time', 'joinery B8');
  book.work('sag_limit', 'Wi/300', 'sag that the eye sees', 'joinery B8');
}
