import { boxOfPoints3, type Box3, type Point3 } from '#core/geometry';
import type { Part } from '#core/joinery';
import { bodiesOf, unit, type Body } from './solids.ts';
import { isBlocked } from './sweep.ts';

/** A move of an assembly: these parts go on to those already together, coming along `from`. */
export interface AssemblyMove {
  readonly parts: readonly string[];
  /** The direction they come from, length one, in the frame of the piece. */
  readonly from: Point3;
}

/** An order in which a piece goes together, or the parts that lock each other; `found` null: too much to look through. */
export type AssemblyOrder =
  | { readonly found: true; readonly moves: readonly AssemblyMove[] }
  | { readonly found: false; readonly locked: readonly string[] }
  | { readonly found: null };

/**
 * An order of straight moves that puts the parts together, found by taking them apart (joinery F6): along a direction,
 * what blocks what is a graph, and where it is not one knot a part or a group of them comes off. `among` stays where it is,
 * as the boat round a frame that is put together in place. Joints drawn simpler than they are cut block nothing.
 */
export function findAssemblyOrder(parts: readonly Part[], among: readonly Body[] = []): AssemblyOrder {
  const bodies = bodiesOf(parts);
  if (bodies.length < 2 && among.length === 0) return { found: true, moves: [] };
  const ownWays = bodies.map((body) => directionsFor(body, [...bodies, ...among]));
  const ways = distinct(ownWays.flat());
  const travel = travelOf([...bodies, ...among]);
  const looks = { left: mostLooks };
  return takeApart(
    bodies.map((_, i) => i),
    {
      bodies,
      ways,
      tries: ways.map((way) =>
        bodies.flatMap((_, i) => (ownWays[i]?.some((own) => isSameWay(own, way)) ? [i] : [])),
      ),
      blocks: ways.map((way) => watchBlocking({ bodies, among, way, travel, looks })),
      hasFixed: among.length > 0,
      looks,
    },
  );
}

interface Work {
  readonly bodies: readonly Body[];
  readonly ways: readonly Point3[];
  /** For each direction the bodies worth moving along it. */
  readonly tries: readonly (readonly number[])[];
  readonly blocks: readonly Blocking[];
  readonly hasFixed: boolean;
  /** How many more pairs may be looked at. */
  readonly looks: { left: number };
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
  readonly looks: { left: number };
}): Blocking {
  const { bodies, among, way, travel, looks } = given;
  const known = new Map<number, boolean>();
  const keep = (key: number, find: () => boolean): boolean => {
    const found = known.get(key) ?? find();
    known.set(key, found);
    return found;
  };
  const blocked = (moving: number, other: Body | undefined) => {
    const body = bodies[moving];
    if (body === undefined || other === undefined) return false;
    // when too much has been looked at, everything counts as blocked and the search ends
    return looks.left <= 0 || isBlocked(body, other, { way, travel }, looks);
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
  if (work.looks.left <= 0) return { found: null };
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
  const isIn = work.bodies.map((_, i) => group.includes(i));
  for (const [w, way] of work.ways.entries()) {
    for (const start of work.tries[w] ?? []) {
      if (!isIn[start]) continue;
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

/** Pairs of convex solids looked at before giving up: about half a second. */
const mostLooks = 150_000;

/** Bodies nearer than this touch, mm: joints have less play. */
const near = 1;

/** Directions worth trying for a body: its own axes and those of what touches it, both ways, and halfway between (mitres). */
function directionsFor(body: Body, all: readonly Body[]): readonly Point3[] {
  const touching = all.filter((other) => isNear(body.box, other.box));
  const axes = distinct(touching.flatMap((other) => other.axes));
  const both = distinct(axes.flatMap((axis) => [axis, opposite(axis)]));
  const own = distinct(body.axes.flatMap((axis) => [axis, opposite(axis)]));
  const between = own.flatMap((one) => own.flatMap((other) => unit(plus(one, other)) ?? []));
  return distinct([...both, ...between]);
}

function isNear(one: Box3, other: Box3): boolean {
  return (['x', 'y', 'z'] as const).every(
    (axis) => one.min[axis] - near < other.max[axis] && other.min[axis] - near < one.max[axis],
  );
}

function isSameWay(one: Point3, other: Point3): boolean {
  return Math.hypot(one.x - other.x, one.y - other.y, one.z - other.z) < 1e-3;
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
