import type { Problem } from '#core/problems';

import type { Place, Task, Visit, VisitPlan } from './types.ts';

/** States kept at a depth; beyond it the plan stays valid but is no longer proven. Boat jobs stay far below. */
const widest = 4000;

/** A way so far: the places in order, and all that is done at its end. */
interface Way {
  readonly places: readonly Place[];
  readonly done: ReadonlySet<string>;
}

/**
 * The open tasks in the fewest stays, each stay doing all that can be done there (joinery F11). Doing more at a place never
 * hurts, so a search over sequences of places finds the fewest; tasks that wait for one another are left out with a `stop`.
 */
export function planVisits(tasks: readonly Task[]): VisitPlan {
  const open = tasks.filter((task) => task.done !== true);
  const waits = findWaits(tasks, open);
  const reachable = closeOver(open, waits, new Set(), () => true);
  const undone = open.filter((task) => !reachable.has(task.id)).map((task) => task.id);
  const { places, proven } = searchPlaces(open, waits, reachable.size);
  return {
    visits: describeVisits(tasks, waits, places),
    proven,
    undone,
    findings: [...findStrangers(tasks), ...findCircle(tasks, undone)],
  };
}

/** What each open task still waits for: open tasks only, since done and unknown ones hold nothing up. */
function findWaits(tasks: readonly Task[], open: readonly Task[]): ReadonlyMap<string, readonly string[]> {
  const ids = new Set(open.map((task) => task.id));
  return new Map(tasks.map((task) => [task.id, task.after.filter((id) => ids.has(id))]));
}

/** Everything done once all tasks that `may` be done and are free have been done, in passes over the list. */
function closeOver(
  open: readonly Task[],
  waits: ReadonlyMap<string, readonly string[]>,
  before: ReadonlySet<string>,
  may: (task: Task) => boolean,
): ReadonlySet<string> {
  const done = new Set(before);
  let size = -1;
  while (size !== done.size) {
    size = done.size;
    for (const task of open)
      if (!done.has(task.id) && may(task) && (waits.get(task.id) ?? []).every((id) => done.has(id)))
        done.add(task.id);
  }
  return done;
}

function searchPlaces(
  open: readonly Task[],
  waits: ReadonlyMap<string, readonly string[]>,
  goal: number,
): { readonly places: readonly Place[]; readonly proven: boolean } {
  const all = [...new Set(open.map((task) => task.place))];
  let level: readonly Way[] = [{ places: [], done: new Set() }];
  let proven = true;
  for (;;) {
    const finished = level.find((way) => way.done.size === goal);
    if (finished) return { places: finished.places, proven };
    const next = keepBest(level.flatMap((way) => goOn(way, all, open, waits)));
    proven &&= next.length <= widest;
    level = next.slice(0, widest);
  }
}

/** The ways that lead on from one, each to a place where something can be done. */
function goOn(
  way: Way,
  all: readonly Place[],
  open: readonly Task[],
  waits: ReadonlyMap<string, readonly string[]>,
): readonly Way[] {
  return all
    .filter((place) => place !== way.places.at(-1))
    .map((place) => ({
      places: [...way.places, place],
      done: closeOver(open, waits, way.done, (task) => task.place === place),
    }))
    .filter((next) => next.done.size > way.done.size);
}

/** The ways that no other way of the same length outdoes: one that has done all of it, and more or as much. */
function keepBest(ways: readonly Way[]): readonly Way[] {
  const sorted = ways
    .map((way, index) => ({ way, index }))
    .sort((a, b) => b.way.done.size - a.way.done.size || a.index - b.index)
    .map(({ way }) => way);
  const kept: Way[] = [];
  for (const way of sorted) {
    const outdone = kept.some((better) => [...way.done].every((id) => better.done.has(id)));
    if (!outdone) kept.push(way);
    if (kept.length > widest) break;
  }
  return kept;
}

function describeVisits(
  all: readonly Task[],
  waits: ReadonlyMap<string, readonly string[]>,
  places: readonly Place[],
): readonly Visit[] {
  const open = all.filter((task) => task.done !== true);
  const where = new Map<string, Place>();
  for (const task of all)
    if (task.done === true) for (const thing of [...task.needs, ...task.makes]) where.set(thing, task.place);
  let done: ReadonlySet<string> = new Set();
  return places.map((place): Visit => {
    const now = closeOver(open, waits, done, (task) => task.place === place);
    const ids = [...now].slice(done.size);
    done = now;
    const tasks = ids.flatMap((id) => open.filter((task) => task.id === id));
    return {
      place,
      tasks: ids,
      minutes: tasks.reduce((sum, task) => sum + task.minutes, 0),
      take: carry(tasks, place, where),
    };
  });
}

/** What has to come along: things needed here that lie elsewhere; `where` follows them from visit to visit. */
function carry(tasks: readonly Task[], place: Place, where: Map<string, Place>): readonly string[] {
  const take: string[] = [];
  for (const task of tasks) {
    for (const thing of task.needs) {
      if (where.get(thing) !== place) take.push(thing);
      where.set(thing, place);
    }
    for (const thing of task.makes) where.set(thing, place);
  }
  return take;
}

function findStrangers(tasks: readonly Task[]): readonly Problem[] {
  const ids = new Set(tasks.map((task) => task.id));
  return tasks.flatMap((task) =>
    task.after
      .filter((id) => !ids.has(id))
      .map((id): Problem => ({
        severity: 'note',
        code: 'task-unknown',
        about: task.id,
        message: `"${task.text}" waits for the task "${id}", which is not on the list; it is taken as done.`,
      })),
  );
}

function findCircle(tasks: readonly Task[], undone: readonly string[]): readonly Problem[] {
  if (undone.length === 0) return [];
  const names = undone.map((id) => `"${tasks.find((task) => task.id === id)?.text ?? id}"`);
  return [
    {
      severity: 'stop',
      code: 'tasks-in-a-circle',
      about: undone[0],
      message: `${names.length} ${names.length === 1 ? 'task waits' : 'tasks wait'} for one another and cannot be begun: ${names.join(', ')}.`,
      remedy: 'Take one of them out of the circle: let it wait for less.',
      source: 'joinery F11',
    },
  ];
}
