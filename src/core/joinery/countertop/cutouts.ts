import { flattenOutline, isInside, rectangleOutline, type Outline, type Point } from '#core/geometry';
import { roundCorners } from '../flat/round-corners.ts';
import { putParameters } from '../parameter-book.ts';
import type { WorkingBook } from '../working.ts';
import { countertopParameters } from './parameters.ts';
import type { TopChoices } from './top-choices.ts';

/** An opening for an appliance, its four doublers, and the wood left to the edge. mm. */
export interface Cutout {
  readonly number: number;
  readonly min: Point;
  readonly max: Point;
  readonly outline: Outline;
  readonly bridge: number;
  readonly overlap: number;
  /** Doublers in front, behind, left and right of it. */
  readonly doublers: readonly {
    readonly name: string;
    readonly title: string;
    readonly at: Point;
    readonly size: Point;
  }[];
}

const rule = 'joinery B9';

/** Works out the openings of a top: body and clearance, flange, bridges and doublers (joinery B9). */
export function putCutouts(book: WorkingBook, choices: TopChoices, core: Outline): readonly Cutout[] {
  const count = Math.floor(choices.cutouts.length / 6);
  if (count === 0) return [];
  const from = { infos: countertopParameters, values: choices, given: choices.given };
  putParameters(book, from, {
    cutoutClearance: 'ca',
    cutoutRadius: 'rc',
    doubler: 'db',
    bodyDepth: 'body_H',
  });
  const edge = flattenOutline(core, 0.5);
  return Array.from({ length: count }, (_, i) => putCutout(book, choices, { i, core, edge }));
}

function putCutout(
  book: WorkingBook,
  choices: TopChoices,
  { i, core, edge }: { readonly i: number; readonly core: Outline; readonly edge: readonly Point[] },
): Cutout {
  const n = i + 1;
  const names = ['mid_x', 'mid_y', 'body_w', 'body_d', 'flange_w', 'flange_d'];
  const labels = [
    'middle, from the left',
    'middle, from the front',
    'body, width',
    'body, depth',
    'flange, width',
    'flange, depth',
  ];
  names.forEach((name, k) =>
    book.putChoice(
      'cutouts',
      `${name}_${n}`,
      choices.cutouts[6 * i + k] ?? 0,
      `cut-out ${n}: ${labels[k]}`,
      'you',
    ),
  );
  const w = book.work(`cut_w_${n}`, `body_w_${n} + 2*ca`, `cut-out ${n}, width`, rule);
  const d = book.work(`cut_d_${n}`, `body_d_${n} + 2*ca`, `cut-out ${n}, depth`, rule);
  book.work(
    `front_bridge_${n}`,
    `mid_y_${n} - cut_d_${n}/2`,
    `cut-out ${n}: to the front edge of the top`,
    rule,
  );
  const [x, y] = [book.value(`mid_x_${n}`), book.value(`mid_y_${n}`)];
  const overlap = `min(flange_w_${n} - body_w_${n}, flange_d_${n} - body_d_${n})/2 - ca`;
  book.work(`overlap_${n}`, overlap, `cut-out ${n}: flange on the wood`, rule);
  const min = { x: x - w / 2, y: y - d / 2 };
  const max = { x: x + w / 2, y: y + d / 2 };
  const bridge = leastBridge(min, max, { core, edge });
  book.put(`bridge_${n}`, bridge, `cut-out ${n}: wood left to the edge of the core`, 'outline');
  const plain = rectangleOutline(w, d, min);
  const radius = Math.min(choices.cutoutRadius, w / 2 - 1, d / 2 - 1);
  const outline = radius > 0 ? roundCorners(plain, [radius, radius, radius, radius]) : plain;
  const doublers = bridge > 0 && choices.doubler > 0 ? putDoublers(book, n, { min, max }) : [];
  return { number: n, min, max, outline, bridge, overlap: book.value(`overlap_${n}`), doublers };
}

function putDoublers(
  book: WorkingBook,
  n: number,
  { min, max }: Pick<Cutout, 'min' | 'max'>,
): Cutout['doublers'] {
  const width = book.work(`double_W_${n}`, `min(db, bridge_${n})`, `doublers of cut-out ${n}, width`, rule);
  book.work(`double_x_L_${n}`, `cut_w_${n}`, `doublers before and behind cut-out ${n}, length`, rule);
  book.work(`double_y_L_${n}`, `cut_d_${n}`, `doublers beside cut-out ${n}, length`, rule);
  const across = { x: max.x - min.x, y: width };
  const deep = { x: width, y: max.y - min.y };
  const [x, y] = [`double_x_L_${n}`, `double_y_L_${n}`];
  return [
    { name: x, title: 'in front', at: { x: min.x, y: min.y - width }, size: across },
    { name: x, title: 'behind', at: { x: min.x, y: max.y }, size: across },
    { name: y, title: 'left', at: { x: min.x - width, y: min.y }, size: deep },
    { name: y, title: 'right', at: { x: max.x, y: min.y }, size: deep },
  ];
}

/** Least wood between an opening and the edge; at or below 0 when it does not lie within it. */
function leastBridge(
  min: Point,
  max: Point,
  { core, edge }: { readonly core: Outline; readonly edge: readonly Point[] },
): number {
  const corners = [min, { x: max.x, y: min.y }, max, { x: min.x, y: max.y }];
  const inside = corners.every((corner) => isInside(corner, core));
  const toBox = (p: Point) =>
    Math.hypot(Math.max(min.x - p.x, 0, p.x - max.x), Math.max(min.y - p.y, 0, p.y - max.y));
  const sides = edge.map((from, i) => ({ from, to: edge[(i + 1) % edge.length] ?? from }));
  const fromEdge = Math.min(...edge.map(toBox));
  const fromCorners = Math.min(
    ...corners.map((corner) => Math.min(...sides.map((one) => toSide(corner, one)))),
  );
  const least = Math.min(fromEdge, fromCorners);
  return inside && fromEdge > 0 ? least : -least;
}

function toSide(p: Point, { from, to }: { readonly from: Point; readonly to: Point }): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const size = dx * dx + dy * dy;
  const share = size === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - from.x) * dx + (p.y - from.y) * dy) / size));
  return Math.hypot(p.x - from.x - share * dx, p.y - from.y - share * dy);
}
