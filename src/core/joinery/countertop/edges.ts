import type { Outline, Point } from '#core/geometry';
import { angleAt, insetSides, leftOf, step, wayTo } from '../flat/polygon.ts';
import { roundCorners, tangentLength } from '../flat/round-corners.ts';
import type { WorkingBook } from '../working.ts';
import type { TopChoices } from './top-choices.ts';

/** A piece of the solid edge: straight along a side, or round a corner; its name in the working, outline and run. */
export interface EdgeStrip {
  readonly name: string;
  readonly title: string;
  readonly kind: 'side' | 'corner';
  readonly outline: Outline;
  readonly along: Point;
}

interface Plan {
  readonly choices: TopChoices;
  readonly points: readonly Point[];
  readonly side: readonly number[];
  readonly radii: readonly number[];
}

/**
 * The solid edges of the open sides: a strip between the corners, mitred where these are sharp, and a block shaped to the
 * arc where they are rounded; and the core within them. A rounded corner needs both its sides edged, or neither.
 */
export function planEdges(
  book: WorkingBook,
  plan: Plan,
): { readonly core: Outline; readonly strips: readonly EdgeStrip[]; readonly awkward: readonly number[] } {
  const { choices, points, side, radii } = plan;
  const count = points.length;
  const width = choices.lipping;
  const edged = side.map((i) => width > 0 && choices.openSides.has(i));
  const awkward = points.flatMap((_, i) => {
    const [before, here] = [edged[(i + count - 1) % count], edged[i]];
    const radius = radii[i] ?? 0;
    return radius > 0 && (before || here) && (before !== here || radius < width) ? [i] : [];
  });
  const curved = side.some((one, i) => edged[i] && side.filter((other) => other === one).length > 1);
  const inner = insetSides(
    points,
    edged.map((yes) => (yes ? width : 0)),
  );
  if (!inner || awkward.length > 0 || curved) return { core: [], strips: [], awkward };
  const core = roundCorners(
    inner,
    radii.map((radius, i) => (edged[i] ? Math.max(0, radius - width) : radius)),
  );
  const strips = points.flatMap((_, i) =>
    edged[i] ? [...cornerBlock(plan, i, inner), sideStrip(plan, i, inner)] : [],
  );
  strips.forEach((strip) => sizeStrip(book, strip));
  return { core, strips, awkward };
}

/** How far from a corner the straight strips end, mm; 0 at a sharp one. */
function reachAt({ points, radii }: Plan, i: number): number {
  const radius = radii[i] ?? 0;
  return radius > 0 ? Math.abs(tangentLength(radius, angleAt(points, i))) : 0;
}

function sideStrip(plan: Plan, i: number, inner: readonly Point[]): EdgeStrip {
  const { points, side, choices } = plan;
  const next = (i + 1) % points.length;
  const [from, to] = [points[i] ?? origin, points[next] ?? origin];
  const along = wayTo(from, to);
  const into = leftOf(along);
  const end = (
    corner: Point,
    sharp: Point | undefined,
    reach: number,
    way: 1 | -1,
  ): readonly [Point, Point] => {
    if (reach === 0) return [corner, sharp ?? corner];
    const outer = step(corner, along, way * reach);
    return [outer, step(outer, into, choices.lipping)];
  };
  const [a, d] = end(from, inner[i], reachAt(plan, i), 1);
  const [b, c] = end(to, inner[next], reachAt(plan, next), -1);
  return {
    name: `edge_${(side[i] ?? 0) + 1}`,
    title: `Solid edge, side ${(side[i] ?? 0) + 1}`,
    kind: 'side',
    outline: [a, b, c, d],
    along,
  };
}

const origin: Point = { x: 0, y: 0 };

/** The part of a ring at the rounded corner where a side begins. */
function cornerBlock(plan: Plan, i: number, inner: readonly Point[]): readonly EdgeStrip[] {
  const { points, radii, choices } = plan;
  const radius = radii[i] ?? 0;
  if (radius <= 0) return [];
  const count = points.length;
  const here = points[i] ?? origin;
  const back = wayTo(here, points[(i + count - 1) % count] ?? here);
  const on = wayTo(here, points[(i + 1) % count] ?? here);
  const reach = reachAt(plan, i);
  const bulge = Math.tan(((180 - angleAt(points, i)) * Math.PI) / 720);
  const [start, end] = [step(here, back, reach), step(here, on, reach)];
  const innerStart = step(start, leftOf({ x: -back.x, y: -back.y }), choices.lipping);
  const innerEnd = step(end, leftOf(on), choices.lipping);
  const sharp = radius - choices.lipping < 1e-9;
  const inside: Outline = sharp ? [inner[i] ?? innerEnd] : [{ ...innerEnd, bulge: -bulge }, innerStart];
  const chord = wayTo(start, end);
  return [
    {
      name: `corner_${i + 1}`,
      title: `Solid edge, corner ${i + 1}`,
      kind: 'corner',
      outline: [{ ...start, bulge }, end, ...inside],
      along: chord,
    },
  ];
}

/** Length and width of a strip as it lies along its own run. */
function sizeStrip(book: WorkingBook, { name, title, outline, along, kind }: EdgeStrip): void {
  const aside = leftOf(along);
  const bulge = outline[0]?.bulge ?? 0;
  const on = outline.map((p) => p.x * along.x + p.y * along.y);
  const off = outline.map((p) => p.x * aside.x + p.y * aside.y);
  const chord = Math.max(...on) - Math.min(...on);
  const first = outline[0] ?? origin;
  const second = outline[1] ?? origin;
  const sagitta = (Math.abs(bulge) * Math.hypot(second.x - first.x, second.y - first.y)) / 2;
  const low = kind === 'corner' ? Math.min(...off.slice(0, 2)) - sagitta : Math.min(...off);
  book.put(`${name}_L`, chord, `${title}, length`, 'outline');
  book.put(`${name}_W`, Math.max(...off) - low, `${title}, width`, 'outline');
}

/** A fiddle on top along an open or any straight side, stopped short of the corners; null where the side is curved. */
export interface FiddleRun {
  readonly name: string;
  readonly side: number;
  readonly start: Point;
  readonly along: Point;
}

/** The fiddles of a top, their lengths put into the book. */
export function planFiddles(book: WorkingBook, plan: Plan): readonly FiddleRun[] {
  const { choices, points, side } = plan;
  return points.flatMap((from, i): readonly FiddleRun[] => {
    const here = side[i] ?? 0;
    const isCurved = side.filter((other) => other === here).length > 1;
    if (!choices.fiddleSides.has(here) || isCurved) return [];
    const next = (i + 1) % points.length;
    const to = points[next] ?? from;
    const along = wayTo(from, to);
    const free = Math.hypot(to.x - from.x, to.y - from.y) - reachAt(plan, i) - reachAt(plan, next);
    const name = `fiddle_${here + 1}`;
    book.put(`run_${here + 1}`, free, `side ${here + 1} between its arcs`, 'outline');
    book.work(`${name}_L`, `run_${here + 1} - 2*open`, `fiddle of side ${here + 1}, length`, 'joinery B9');
    return [{ name, side: here, start: step(from, along, reachAt(plan, i) + choices.cornerOpen), along }];
  });
}
