import { fail, succeed, unreachable, type Result } from '#core/problems';
import type { Reading } from '#core/measuring';

import type { ReadingCommand, ShapeCommand } from './commands.ts';
import { addItem, changeItem, removeItem } from './lists.ts';
import type { MeasuredOutline, MeasuredShape, ShapeChange } from './shape-types.ts';
import type { Project } from './types.ts';

/** The project after a change of its measured shapes; a shape that a piece is fitted to is not removed. */
export function applyShapeCommand(project: Project, command: ShapeCommand): Result<Project> {
  const { shapes } = project;
  switch (command.kind) {
    case 'add-shape':
      return withShapes(project, addItem(shapes, command.shape, 'shape', command.at));
    case 'change-shape':
      return withShapes(
        project,
        changeItem(shapes, command.id, 'shape', (shape) => changeShape(shape, command.change)),
      );
    case 'remove-shape':
      return removeShape(project, command.id);
    default:
      return unreachable(command);
  }
}

/** What only some kinds have, and which. */
const ownKeys = { corners: 'outline', traced: 'outline', closed: 'walls' } as const;

function changeShape(shape: MeasuredShape, change: ShapeChange): Result<MeasuredShape> {
  const foreign = (['corners', 'traced', 'closed'] as const).find(
    (key) => change[key] !== undefined && ownKeys[key] !== shape.kind,
  );
  if (foreign)
    return fail({
      severity: 'stop',
      code: 'not-of-this-kind',
      about: shape.id,
      message: `"${shape.name}" is of the kind ${shape.kind}, which has no ${foreign}.`,
      remedy: `Only the kind ${ownKeys[foreign]} has it.`,
    });
  const { traced, ...rest } = change;
  const kept = { ...shape, ...rest } as MeasuredShape;
  if (traced === undefined || kept.kind !== 'outline') return succeed(kept);
  return succeed(traced === null ? omitTraced(kept) : { ...kept, traced });
}

function omitTraced(outline: MeasuredOutline): MeasuredOutline {
  const entries = Object.entries(outline).filter(([key]) => key !== 'traced');
  return Object.fromEntries(entries) as unknown as MeasuredOutline;
}

/** The project after a change of the readings of one shape. */
export function applyReadingCommand(project: Project, command: ReadingCommand): Result<Project> {
  return withShapes(
    project,
    changeItem(project.shapes, command.shape, 'shape', (shape) => changeReadings(shape, command)),
  );
}

function changeReadings(shape: MeasuredShape, command: ReadingCommand): Result<MeasuredShape> {
  const { readings } = shape;
  switch (command.kind) {
    case 'add-reading':
      return withReadings(shape, addItem(readings, command.reading, 'reading', command.at));
    case 'change-reading':
      return withReadings(
        shape,
        changeItem(readings, command.id, 'reading', () => succeed(command.reading)),
      );
    case 'remove-reading':
      return withReadings(shape, removeItem(readings, command.id, 'reading'));
    case 'add-repeat':
      return withReadings(
        shape,
        changeItem(readings, command.id, 'reading', (reading) => succeed(withRepeat(reading, command.value))),
      );
    case 'remove-repeat':
      return withReadings(
        shape,
        changeItem(readings, command.id, 'reading', (reading) => withoutRepeat(reading, command.index)),
      );
    default:
      return unreachable(command);
  }
}

function withRepeat(reading: Reading, value: number): Reading {
  return { ...reading, repeats: [...(reading.repeats ?? []), value] };
}

function withoutRepeat(reading: Reading, index: number): Result<Reading> {
  const count = reading.repeats?.length ?? 0;
  if (!Number.isInteger(index) || index < 0 || index >= count)
    return fail({
      severity: 'stop',
      code: 'not-found',
      about: reading.id,
      message: `Reading "${reading.id}" has ${count} repeats; there is no number ${index + 1}.`,
      remedy: 'It may have been removed meanwhile.',
    });
  return succeed({ ...reading, repeats: (reading.repeats ?? []).toSpliced(index, 1) });
}

function removeShape(project: Project, id: string): Result<Project> {
  const users = project.pieces
    .filter((piece) => piece.shape === id)
    .map((piece) => `${piece.letter} ${piece.name}`);
  if (users.length > 0)
    return fail({
      severity: 'stop',
      code: 'shape-in-use',
      about: id,
      message: `Shape "${id}" is what ${users.join(', ')} ${users.length > 1 ? 'are' : 'is'} fitted to.`,
      remedy: 'Fit these to another shape or remove them first.',
    });
  return withShapes(project, removeItem(project.shapes, id, 'shape'));
}

function withShapes(project: Project, shapes: Result<readonly MeasuredShape[]>): Result<Project> {
  return shapes.ok ? succeed({ ...project, shapes: shapes.value }) : shapes;
}

function withReadings(shape: MeasuredShape, readings: Result<readonly Reading[]>): Result<MeasuredShape> {
  return readings.ok ? succeed({ ...shape, readings: readings.value }) : readings;
}
