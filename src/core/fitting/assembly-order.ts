import { boxOfPoints3, crossProduct, type Placement, type Point3 } from '#core/geometry';
import type { Part } from '#core/joinery';
import { bodiesOf, unit, type Body } from './solids.ts';
import { isBlocked } from './sweep.ts';

/** A move of an assembly: these parts go on to those already together, coming along `from`. */
export interface AssemblyMove {
  readonly parts: readonly string[];
  /** The direction they come from, length one, in the frame of the piece. */
  readonly from: Point3;
}

/** An order in which a piece goes together, or the parts that lock each other. */
export type AssemblyOrder =
  | { readonly found: true; readonly moves: readonly AssemblyMove[] }
  | { readonly found: false; readonly locked: readonly string[] };

/**
 * An order of straight moves that puts the parts together, found by taking them apart (joinery F6): along a direction,
 * what blocks what is a graph, and where it is not one knot a part or a group of them comes off. `among` stays where it is,
 * as the boat round a frame that is put together in place. Joints drawn simpler than they are cut block nothing.
 */
export function findAssemblyOrder(parts: readonly Part[], among: readonly Body[] = []): AssemblyOrder {
  const bodies = bodiesOf(parts);
  if (bodies.length < 2 && among.length === 0) return { found: true, moves: [] };
  const ways = directionsOf(parts);
  const travel = travelOf([...bodies, ...among]);
  return takeApart(
    bodies.map((_, i) => i),
    {
      bodies,
      ways,
      blocks: ways.map((way) => watchBlocking({ bodies, among, way, travel })),
      hasFixed: among.length > 0,
    },
  );
}

interface Work {
  readonly bodies: readonly Body[];
  readonly ways: readonly Point3[];
  readonly blocks: readonly Blocking[];
  readonly hasFixed: boolean;
}

/** What blocks what along one direction, looked at when it is asked for and kept. */
interface Blocking {
  readonly meets: (moving: number, staying: number) => boolean;
  /** Whether it would meet what never moves. */
  readonly meetsFixed: (moving: number) => boolean;
}

function watchBlocking(given: {
  readonly bodies: readonly Body[];
  readonly among: readonly Body[];
  readonly way: Point3;
  readonly travel: number;
}): Blocking {
  const { bodies, among, way, travel } = given;
  const known = new Map<number, boolean>();
  const keep = (key: number, find: () => boolean): boolean => {
    const found = known.get(key) ?? find();
    known.set(key, found);
    return found;
  };
  const blocked = (moving: number, other: Body | undefined) => {
    const body = bodies[moving];
    return body !== undefined && other !== undefined && isBlocked(body, other, { way, travel });
  };
  return {
    meets: (moving, staying) =>
      keep(moving * bodies.length + staying, () => blocked(moving, bodies[staying])),
    meetsFixed: (moving) => keep(-1 - moving, () => among.some((other) => blocked(moving, other))),
  };
}

/** Takes a group apart until single parts are left; the moves come back in the order of putting together. */
function takeApart(group: readonly number[], work: Work): AssemblyOrder {
  if (group.length <= 1 && !work.hasFixed) return { found: true, moves: [] };
  if (group.length === 0) return { found: true, moves: [] };
  const split = findSplit(group, work);
  if (!split) return { found: false, locked: group.map((i) => work.bodies[i]?.id ?? '') };
  const rest = takeApart(split.staying, work);
  if (!rest.found) return rest;
  const loose = takeApart(split.leaving, { ...work, hasFixed: false });
  if (!loose.found) return loose;
  const move = { parts: split.leaving.map((i) => work.bodies[i]?.id ?? ''), from: split.way };
  return { found: true, moves: [...loose.moves, ...rest.moves, move] };
}

interface Split {
  readonly leaving: readonly number[];
  readonly staying: readonly number[];
  readonly way: Point3;
}

/** A group that can leave along some direction, a single part if there is one; the whole may only leave what is fixed round it. */
function findSplit(group: readonly number[], work: Work): Split | null {
  let best: Split | null = null;
  for (const [w, way] of work.ways.entries()) {
    for (const start of group) {
      const split = leavingWith(start, group, { block: work.blocks[w] as Blocking, way, work });
      if (split && split.leaving.length < (best?.leaving.length ?? Infinity)) best = split;
      if (best?.leaving.length === 1) return best;
    }
  }
  return best;
}

/** What must leave together with one part along a direction: all it would push before it. */
function leavingWith(
  start: number,
  group: readonly number[],
  { block, way, work }: { readonly block: Blocking; readonly way: Point3; readonly work: Work },
): Split | null {
  const leaving = new Set([start]);
  const open = [start];
  for (let i = open.pop(); i !== undefined; i = open.pop()) {
    const moving = i;
    if (work.hasFixed && block.meetsFixed(moving)) return null;
    const pushed = group.filter((j) => !leaving.has(j) && block.meets(moving, j));
    pushed.forEach((j) => leaving.add(j));
    open.push(...pushed);
  }
  if (leaving.size === group.length && !work.hasFixed) return null;
  return { leaving: [...leaving], staying: group.filter((i) => !leaving.has(i)), way };
}

const mostWays = 60;

/** Directions worth trying: the axes of all parts both ways, and those halfway between two of them (mitres). */
function directionsOf(parts: readonly Part[]): readonly Point3[] {
  const axes = distinct(parts.flatMap((part) => part.placements.flatMap(axesOf)));
  const both = distinct(axes.flatMap((axis) => [axis, opposite(axis)]));
  const between = both.flatMap((one) => both.map((other) => unit(plus(one, other))));
  const halfway = between.filter((way): way is Point3 => way !== null);
  return distinct([...both, ...halfway]).slice(0, mostWays);
}

function axesOf({ xAxis, yAxis }: Placement): readonly Point3[] {
  return [xAxis, yAxis, crossProduct(xAxis, yAxis)];
}

function distinct(ways: readonly Point3[]): readonly Point3[] {
  const seen = new Map<string, Point3>();
  for (const way of ways) {
    const key = [way.x, way.y, way.z].map((c) => Math.round(c * 1e4) + 0).join(' ');
    if (!seen.has(key)) seen.set(key, way);
  }
  return [...seen.values()];
}

const opposite = ({ x, y, z }: Point3): Point3 => ({ x: -x, y: -y, z: -z });
const plus = (a: Point3, b: Point3): Point3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });

/** Far enough to be clear of everything. */
function travelOf(bodies: readonly Body[]): number {
  const { min, max } = boxOfPoints3(bodies.flatMap(({ solids }) => solids.flatMap(({ corners }) => corners)));
  return 2 * Math.hypot(max.x - min.x, max.y - min.y, max.z - min.z);
}
