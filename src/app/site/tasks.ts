import type { ReadingPlace } from '#core/drawing';
import {
  makeOpeningReading,
  openingChecklist,
  openingKeyOf,
  pointWords,
  readingWords,
  type AdjustedReading,
  type Method,
  type Reading,
  type Suspect,
} from '#core/measuring';
import type { ShapeOutcome } from '#core/pipeline';
import { unreachable } from '#core/problems';
import { outlineTasks } from './outline-tasks.ts';
import { sectionTasks } from './section-tasks.ts';
import { wallTasks } from './wall-tasks.ts';

/** Where a value belongs that is entered. */
export type TaskGoal =
  | { readonly kind: 'reading'; readonly id: string; readonly place: ReadingPlace; readonly method?: Method }
  | { readonly kind: 'ordinate'; readonly curve: string; readonly at: number }
  | { readonly kind: 'depth'; readonly section: string; readonly height: number }
  /** `wall` null: a further one at the right end. */
  | { readonly kind: 'wall'; readonly wall: string | null }
  | { readonly kind: 'corner'; readonly wall: string };

/** One thing to measure on site, taken or not. */
export interface SiteTask {
  /** Its address within the shape, as a reading's id. */
  readonly id: string;
  readonly words: string;
  /** Where the tape goes. */
  readonly where: string;
  readonly unit: 'mm' | 'degrees';
  /** A sign is part of the value. */
  readonly isSigned: boolean;
  /** What was entered: the first look and the ones after it. */
  readonly values: readonly number[];
  /** To sketch it; null where the drawing of the shape says it. */
  readonly place: ReadingPlace | null;
  readonly goal: TaskGoal;
  readonly reading: Reading | null;
  readonly adjusted: AdjustedReading | null;
  readonly suspect: Suspect | null;
  /** It stands off the line of its neighbours. */
  readonly isOff: boolean;
}

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

interface Wanted {
  readonly id: string;
  readonly place: ReadingPlace;
  readonly reading: Reading | null;
  readonly words: string;
  readonly where: string;
  readonly method?: Method;
}

/** A reading that is wanted at a place, taken or not. */
export function placeTask({ adjustment }: ShapeOutcome, wanted: Wanted): SiteTask {
  const { place, reading, words, where, method } = wanted;
  const id = reading?.id ?? wanted.id;
  return {
    ...{ id, words, where, place, reading },
    unit: place.kind === 'angle' ? 'degrees' : 'mm',
    isSigned: signedKinds.includes(place.kind),
    values: reading ? [reading.value, ...(reading.repeats ?? [])] : [],
    goal: { kind: 'reading', id, place, ...(method && { method }) },
    adjusted: adjustment.readings.find((each) => each.id === reading?.id) ?? null,
    suspect: adjustment.suspects.find((each) => each.id === reading?.id) ?? null,
    isOff: false,
  };
}

const signedKinds: readonly Reading['kind'][] = ['plumb', 'level', 'offset', 'bow', 'ordinate'];

function readingTask(outcome: ShapeOutcome, reading: Reading): SiteTask {
  const words = readingWords(reading).slice(0, -reading.id.length).trim();
  return placeTask(outcome, { id: reading.id, place: reading, reading, words, where: placeWords(reading) });
}

/** Where the tape, the plumb line or the gauge goes, in words. */
export function placeWords(place: ReadingPlace): string {
  const name = pointWords;
  switch (place.kind) {
    case 'distance':
      return `From the ${name(place.from)} to the ${name(place.to)}.`;
    case 'width':
      return `Across, from the edge ${place.left.join('–')} to the edge ${place.right.join('–')}.`;
    case 'plumb':
      return `How far the ${name(place.to)} stands right of the ${name(place.from)}, by the plumb line; left is minus.`;
    case 'level':
      return `How far the ${name(place.to)} stands above the ${name(place.from)}, by the level; below is minus.`;
    case 'offset':
      return `How far the ${name(place.point)} lies to the left of the line ${place.from}–${place.to}; to the right is minus.`;
    case 'angle':
      return `At the ${name(place.at)}, turned counter-clockwise from ${place.from} to ${place.to}.`;
    case 'bow':
      return `At mid length of ${place.from}–${place.to}, against a straightedge; outwards is plus.`;
    case 'ordinate':
      return `Square to the batten ${place.from}–${place.to}, at ${place.station} mm; to the left is plus.`;
    case 'tick':
      return `As the stick brought it to the board ${place.board}, ${place.station} mm along its edge: the height above the edge.`;
    case 'twist':
      return `The gap of the strings ${place.first.join('–')} and ${place.second.join('–')} where they cross.`;
    case 'thickness':
      return `At the place "${place.place}", with the caliper.`;
    default:
      return unreachable(place);
  }
}

/** The task under the hand: the chosen one, else the first without a value, else one to confirm; null when all are there. */
export function nextTask(tasks: readonly SiteTask[], chosen: string | null): SiteTask | null {
  return (
    tasks.find((task) => task.id === chosen) ??
    tasks.find((task) => task.values.length === 0) ??
    tasks.find(isAside) ??
    null
  );
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
