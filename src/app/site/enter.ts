import { confirmReading, type Method, type Reading } from '#core/measuring';
import { unreachable, fail, succeed, type Result } from '#core/problems';
import type { Command, HullSection, MeasuredCurve, MeasuredShape, Wall } from '#core/project';
import { parseLength, type LengthSystem } from '#core/units';
import { freshId } from '../ids.ts';
import { omit } from '../omit.ts';
import type { SiteTask, TaskGoal } from './task.ts';

/** What is said of how a reading was taken. */
export interface Manner {
  readonly method: Method | '';
  readonly toFace: string;
  /** How well it is known, plus or minus with a chance of 95 %, mm or degrees; null goes back to what its method gives, left out nothing is changed. */
  readonly known?: number | null;
}

/** What was typed, mm or degrees. Fails with a sentence. */
export function readTyped(text: string, task: Pick<SiteTask, 'unit'>, system: LengthSystem): Result<number> {
  if (task.unit === 'mm') return parseLength(text, system);
  const plain = text.trim().replace(',', '.').replace('°', '');
  const degrees = Number(plain);
  if (plain !== '' && Number.isFinite(degrees)) return succeed(degrees);
  return fail({
    severity: 'stop',
    code: 'angle-not-understood',
    message: `"${text.trim()}" is not an angle.`,
    remedy: 'Type degrees, as 90 or 91.5.',
  });
}

/** The command that keeps a value just read: a first look, a second one, or the place of a former one. Null when its place is gone. */
export function enterValue(
  shape: MeasuredShape,
  task: SiteTask,
  value: number,
  manner: Manner,
): Command | null {
  const { goal, reading } = task;
  if (goal.kind !== 'reading') return putValue(shape, goal, value);
  if (reading?.toConfirm !== undefined)
    return {
      kind: 'change-reading',
      shape: shape.id,
      id: reading.id,
      reading: confirmReading(reading, value),
    };
  if (reading) return { kind: 'add-repeat', shape: shape.id, id: reading.id, value };
  return { kind: 'add-reading', shape: shape.id, reading: makeReading(shape, goal, value, manner) };
}

/** The command that puts a value in the place of the one there. */
export function correctValue(
  shape: MeasuredShape,
  task: SiteTask,
  value: number,
  manner: Manner,
): Command | null {
  const { goal, reading } = task;
  if (goal.kind !== 'reading') return putValue(shape, goal, value);
  if (!reading) return null;
  return {
    kind: 'change-reading',
    shape: shape.id,
    id: reading.id,
    reading: changeReading(reading, value, manner),
  };
}

/** The command that takes back what was read there. */
export function strikeValue(shape: MeasuredShape, { goal, reading }: SiteTask): Command | null {
  switch (goal.kind) {
    case 'reading':
      return reading && { kind: 'remove-reading', shape: shape.id, id: reading.id };
    case 'wall':
      return goal.wall === null
        ? null
        : { kind: 'remove-item', shape: shape.id, list: 'walls', id: goal.wall };
    case 'corner':
      return changeWall(shape, goal.wall, (wall) => omit(wall, 'corner'));
    case 'ordinate':
      return changeCurve(shape, goal.curve, (curve) => curve.ordinates.filter(({ at }) => at !== goal.at));
    case 'depth':
      return changeSection(shape, goal.section, ({ ordinates }) =>
        ordinates.filter(({ height }) => height !== goal.height),
      );
    default:
      return unreachable(goal);
  }
}

function putValue(
  shape: MeasuredShape,
  goal: Exclude<TaskGoal, { kind: 'reading' }>,
  value: number,
): Command | null {
  switch (goal.kind) {
    case 'wall':
      return goal.wall === null
        ? addWall(shape, value)
        : changeWall(shape, goal.wall, (wall) => ({ ...wall, length: value }));
    case 'corner':
      return changeWall(shape, goal.wall, (wall) => ({
        ...wall,
        corner: { ...wall.corner, degrees: value },
      }));
    case 'ordinate':
      return changeCurve(shape, goal.curve, ({ ordinates }) =>
        [...ordinates.filter(({ at }) => at !== goal.at), { at: goal.at, value }].sort((a, b) => a.at - b.at),
      );
    case 'depth':
      return changeSection(shape, goal.section, ({ ordinates }) =>
        [
          ...ordinates.filter(({ height }) => height !== goal.height),
          { height: goal.height, depth: value },
        ].sort((a, b) => a.height - b.height),
      );
    default:
      return unreachable(goal);
  }
}

function addWall(shape: MeasuredShape, length: number): Command | null {
  if (shape.kind !== 'walls') return null;
  const taken = shape.walls.map((wall) => wall.id);
  const number = shape.walls.length + 1;
  const item: Wall = { id: freshId(`w${number}`, taken), name: `Wall ${number}`, length };
  return { kind: 'add-item', shape: shape.id, list: 'walls', item };
}

function changeWall(shape: MeasuredShape, id: string, change: (wall: Wall) => Wall): Command | null {
  const wall = shape.kind === 'walls' ? shape.walls.find((each) => each.id === id) : undefined;
  return wall ? { kind: 'change-item', shape: shape.id, id, list: 'walls', item: change(wall) } : null;
}

function changeCurve(
  shape: MeasuredShape,
  id: string,
  change: (curve: MeasuredCurve) => MeasuredCurve['ordinates'],
): Command | null {
  const curve = shape.kind === 'outline' ? shape.curves?.find((each) => each.id === id) : undefined;
  if (!curve) return null;
  return {
    kind: 'change-item',
    shape: shape.id,
    id,
    list: 'curves',
    item: { ...curve, ordinates: change(curve) },
  };
}

function changeSection(
  shape: MeasuredShape,
  id: string,
  change: (section: HullSection) => HullSection['ordinates'],
): Command | null {
  const section = shape.kind === 'sections' ? shape.sections.find((each) => each.id === id) : undefined;
  if (!section) return null;
  return {
    kind: 'change-item',
    shape: shape.id,
    id,
    list: 'sections',
    item: { ...section, ordinates: change(section) },
  };
}

function makeReading(
  shape: MeasuredShape,
  goal: Extract<TaskGoal, { kind: 'reading' }>,
  value: number,
  manner: Manner,
): Reading {
  const taken = shape.readings.map((reading) => reading.id);
  const id = taken.includes(goal.id) ? freshId(goal.id, taken) : goal.id;
  const usual = goal.method && { method: goal.method };
  return { ...goal.place, id, value, ...usual, ...mannerOf(manner) } as Reading;
}

/** The reading with another value or manner. */
export function changeReading(reading: Reading, value: number, manner: Manner): Reading {
  const bare = omit(reading, 'method', 'toFace');
  const kept = manner.known === undefined ? bare : omit(bare, 'sigma');
  return { ...kept, value, ...mannerOf(manner) } as Reading;
}

function mannerOf(manner: Manner): Partial<Pick<Reading, 'method' | 'toFace' | 'sigma'>> {
  return {
    ...(manner.method !== '' && { method: manner.method }),
    ...(manner.toFace.trim() !== '' && { toFace: manner.toFace.trim() }),
    ...(typeof manner.known === 'number' && { sigma: manner.known / 2 }),
  };
}
