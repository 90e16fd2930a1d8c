import type { Reading } from '#core/measuring';
import { fail, succeed, unreachable, type Result } from '#core/problems';

import type { ShapeItemCommand } from './commands.ts';
import { addItem, changeItem, removeItem } from './lists.ts';
import type { MeasuredOutline, MeasuredShape, ShapeItem } from './shape-types.ts';
import type { Project } from './types.ts';

type List = ShapeItem['list'];
interface WithId {
  readonly id: string;
}

/** The lists that each kind of shape has beside its readings. */
const listsOf: Readonly<Record<MeasuredShape['kind'], readonly List[]>> = {
  opening: ['photos', 'obstructions'],
  outline: ['photos', 'obstructions', 'curves'],
  sections: ['photos', 'obstructions', 'sections'],
  walls: ['photos', 'walls'],
};

const nouns: Readonly<Record<List, string>> = {
  photos: 'photo',
  obstructions: 'obstruction',
  curves: 'curve',
  sections: 'section',
  walls: 'wall',
};

/** The project after a change of one of the lists of a shape. Fails when a shape of this kind has no such list. */
export function applyShapeItemCommand(project: Project, command: ShapeItemCommand): Result<Project> {
  const shapes = changeItem(project.shapes, command.shape, 'shape', (shape) =>
    command.kind === 'rename-corner'
      ? renameCorner(shape, command.from, command.to)
      : changeList(shape, command),
  );
  return shapes.ok ? succeed({ ...project, shapes: shapes.value }) : shapes;
}

type ListCommand = Exclude<ShapeItemCommand, { kind: 'rename-corner' }>;

function changeList(shape: MeasuredShape, command: ListCommand): Result<MeasuredShape> {
  const { list } = command;
  if (!listsOf[shape.kind].includes(list))
    return fail({
      severity: 'stop',
      code: 'not-of-this-kind',
      about: shape.id,
      message: `"${shape.name}" is of the kind ${shape.kind}, which has no ${list}.`,
      remedy: `It has ${listsOf[shape.kind].join(' and ')}.`,
    });
  const items = (shape as Partial<Record<List, readonly WithId[]>>)[list] ?? [];
  const changed = changeItems(items, command);
  return changed.ok ? succeed({ ...shape, [list]: changed.value } as MeasuredShape) : changed;
}

function changeItems(items: readonly WithId[], command: ListCommand): Result<readonly WithId[]> {
  const noun = nouns[command.list];
  switch (command.kind) {
    case 'add-item':
      return addItem<WithId>(items, command.item, noun, command.at);
    case 'change-item':
      return changeItem<WithId>(items, command.id, noun, () => succeed(command.item));
    case 'remove-item':
      return removeItem(items, command.id, noun);
    default:
      return unreachable(command);
  }
}

function renameCorner(shape: MeasuredShape, from: string, to: string): Result<MeasuredShape> {
  if (shape.kind !== 'outline' || !shape.corners.includes(from))
    return fail({
      severity: 'stop',
      code: 'not-found',
      about: shape.id,
      message: `"${shape.name}" has no corner "${from}" that could be renamed.`,
      remedy:
        shape.kind === 'outline'
          ? `It has ${shape.corners.join(', ')}.`
          : 'Only the corners of an outline have names of their own.',
    });
  const rename = (name: string): string => (name === from ? to : name);
  return succeed<MeasuredOutline>({
    ...shape,
    corners: shape.corners.map(rename),
    readings: shape.readings.map((reading) => renamePoints(reading, rename)),
    ...(shape.curves && {
      curves: shape.curves.map((curve) => ({ ...curve, from: rename(curve.from), to: rename(curve.to) })),
    }),
  });
}

/** Keys of a reading that name a point, or two. */
const pointKeys = ['from', 'to', 'point', 'at', 'left', 'right', 'first', 'second'];

function renamePoints(reading: Reading, rename: (name: string) => string): Reading {
  const renamed = Object.entries(reading).map(([key, value]: [string, unknown]) => [
    key,
    pointKeys.includes(key) ? renameIn(value, rename) : value,
  ]);
  return Object.fromEntries(renamed) as Reading;
}

function renameIn(value: unknown, rename: (name: string) => string): unknown {
  if (typeof value === 'string') return rename(value);
  return Array.isArray(value) ? value.map((each) => renameIn(each, rename)) : value;
}
