import {
  makeOpeningReading,
  openingChecklist,
  openingKeyOf,
  pointWords,
  readingWords,
  type Reading,
} from '#core/measuring';
import type { ShapeOutcome } from '#core/pipeline';
import { unreachable } from '#core/problems';
import type { MeasuredShape } from '#core/project';
import { ordinateTask, outlineTasks } from './outline-tasks.ts';
import { depthTask, sectionTasks } from './section-tasks.ts';
import { placeTask, placeWords, type SiteTask } from './task.ts';
import { wallTasks } from './wall-tasks.ts';

/** All there is to measure of a shape in the order of a visit: what its kind wants, then whatever else was measured. */
export function siteTasks(outcome: ShapeOutcome): readonly SiteTask[] {
  const wanted = wantedTasks(outcome);
  const shown = wanted.flatMap((task) => (task.reading ? [task.reading.id] : []));
  const others = outcome.shape.readings.filter((reading) => !shown.includes(reading.id));
  return [...wanted, ...others.map((reading) => readingTask(outcome, reading))];
}

function wantedTasks(outcome: ShapeOutcome): readonly SiteTask[] {
  const { shape } = outcome;
  switch (shape.kind) {
    case 'opening':
      return openingTasks(outcome);
    case 'outline':
      return outlineTasks(outcome, shape);
    case 'sections':
      return sectionTasks(outcome, shape);
    case 'walls':
      return wallTasks(outcome, shape);
    default:
      return unreachable(shape);
  }
}

function openingTasks(outcome: ShapeOutcome): readonly SiteTask[] {
  const { readings } = outcome.shape;
  const keys = new Map(readings.map((reading) => [reading.id, openingKeyOf(reading)]));
  return openingChecklist.map((entry) => {
    const reading = readings.find((each) => keys.get(each.id) === entry.key) ?? null;
    const place = makeOpeningReading(entry.key, 0);
    const known = { words: entry.words, where: entry.where, method: entry.method };
    return placeTask(outcome, { id: entry.key, place, reading, ...known });
  });
}

/** An ordinate at a station of the user's own, by the id it would have, as `curve@150`; null when that is no such id. */
export function taskAtStation({ shape }: ShapeOutcome, id: string): SiteTask | null {
  const [item, station = ''] = id.split('@');
  const at = Number(station);
  if (station === '' || !Number.isFinite(at)) return null;
  const untaken = { values: [], isOff: false };
  const curve = shape.kind === 'outline' ? shape.curves?.find((each) => each.id === item) : undefined;
  if (curve) return ordinateTask(curve, at, untaken);
  const section = shape.kind === 'sections' ? shape.sections.find((each) => each.id === item) : undefined;
  return section ? depthTask(section, at, untaken) : null;
}

function readingTask(outcome: ShapeOutcome, reading: Reading): SiteTask {
  const words = readingWords(reading).slice(0, -reading.id.length).trim();
  return placeTask(outcome, { id: reading.id, place: reading, reading, words, where: placeWords(reading) });
}

/**
 * The task under the hand: the chosen one, else the first without a value, of the curve or section at work before others,
 * else one to confirm; null when all are there.
 */
export function nextTask(
  tasks: readonly SiteTask[],
  chosen: string | null,
  item: string | null = null,
): SiteTask | null {
  const isOpen = (task: SiteTask): boolean => task.values.length === 0;
  return (
    tasks.find((task) => task.id === chosen) ??
    tasks.find((task) => item !== null && itemOf(task) === item && isOpen(task)) ??
    tasks.find(isOpen) ??
    tasks.find(isAside) ??
    null
  );
}

/** The curve or section that an ordinate belongs to; null of anything else. */
export function itemOf({ goal }: SiteTask): string | null {
  if (goal.kind === 'ordinate') return goal.curve;
  return goal.kind === 'depth' ? goal.section : null;
}

/** The name of the hull section a task belongs to; empty when to none. */
export function sectionName(shape: MeasuredShape, task: SiteTask | null): string {
  if (shape.kind !== 'sections' || task?.goal.kind !== 'depth') return '';
  const { section } = task.goal;
  return shape.sections.find(({ id }) => id === section)?.name ?? '';
}

/** True while the reading is put aside until it has been confirmed on site. */
export function isAside({ reading }: SiteTask): boolean {
  return reading?.toConfirm !== undefined;
}

/** The next reading that only one look was taken at; null when each has two. */
export function nextRepeat(tasks: readonly SiteTask[], chosen: string | null): SiteTask | null {
  const isOnce = (task: SiteTask) => task.reading !== null && task.values.length === 1;
  const suspect = tasks.find((task) => task.suspect !== null && isOnce(task));
  return tasks.find((task) => task.id === chosen) ?? suspect ?? tasks.find(isOnce) ?? null;
}

/** The task after the one named, round the list; null when there is none. */
export function taskBeside(tasks: readonly SiteTask[], id: string, step: 1 | -1): SiteTask | null {
  const at = tasks.findIndex((task) => task.id === id);
  return tasks.at((at + step) % tasks.length) ?? null;
}

/** How to take a reading again so that the same mistake is not made twice. Source: joinery A5, the rule below its table. */
export function freshLookWords(task: SiteTask): string {
  const { place } = task;
  if (place?.kind === 'distance')
    return `From the other end: hook on at the ${pointWords(place.to)}, read at the ${pointWords(place.from)}.`;
  if (place?.kind === 'width') return 'From the other side, or with two sticks.';
  if (place?.kind === 'plumb' || place?.kind === 'level') return 'Turn the level end for end.';
  if (place?.kind === 'angle') return 'Turn the gauge over and set it anew.';
  return 'Set up anew, by another hand if there is one.';
}
