import { wallPoint, type ShapeOutcome } from '#core/pipeline';
import type { MeasuredWalls, Wall } from '#core/project';
import type { SiteTask } from './task.ts';

/** Each wall and the corner at its right end, from left to right; then one more wall, unless the run is closed. */
export function wallTasks(outcome: ShapeOutcome, shape: MeasuredWalls): readonly SiteTask[] {
  const { walls, closed } = shape;
  const tasks = walls.flatMap((wall, at) => {
    const isLast = at === walls.length - 1;
    const length = lengthTask(outcome, wall, at);
    return isLast && closed !== true
      ? [length]
      : [length, cornerTask(outcome, { wall, at, next: walls[isLast ? 0 : at + 1] })];
  });
  const last = walls.at(-1);
  if (closed === true) return tasks;
  const corner = last ? [cornerTask(outcome, { wall: last, at: walls.length - 1, next: undefined })] : [];
  return [...tasks, ...corner, moreTask(walls.length)];
}

const bare = { unit: 'mm', isSigned: false, reading: null, isOff: false } as const;

function lengthTask(outcome: ShapeOutcome, wall: Wall, at: number): SiteTask {
  return {
    ...bare,
    ...foundOf(outcome, wall.id),
    id: wall.id,
    words: `length of ${wall.name}`,
    where: 'At the height of the piece, from corner to corner.',
    values: [wall.length],
    place: { kind: 'distance', from: wallPoint(at), to: wallPoint(at + 1) },
    goal: { kind: 'wall', wall: wall.id },
  };
}

function cornerTask(
  outcome: ShapeOutcome,
  { wall, at, next }: { wall: Wall; at: number; next: Wall | undefined },
): SiteTask {
  const id = `${wall.id}/${next?.id ?? ''}`;
  return {
    ...bare,
    ...foundOf(outcome, id),
    id: `${wall.id}-corner`,
    words: `corner at the right end of ${wall.name}`,
    where: `The angle on the side of the room: 90 in a square corner, 270 round a square post.${next ? '' : ' Leave it when the run ends here.'}`,
    unit: 'degrees',
    values: wall.corner ? [wall.corner.degrees] : [],
    place: { kind: 'angle', from: wallPoint(at), at: wallPoint(at + 1), to: wallPoint(at + 2) },
    goal: { kind: 'corner', wall: wall.id },
  };
}

function moreTask(count: number): SiteTask {
  return {
    ...bare,
    id: 'more',
    words: count === 0 ? 'length of the first wall' : 'length of the next wall',
    where:
      'From left to right as you face the walls, at the height of the piece. Leave it when the run ends here.',
    values: [],
    place: null,
    goal: { kind: 'wall', wall: null },
    ...{ adjusted: null, suspect: null },
  };
}

function foundOf({ adjustment }: ShapeOutcome, id: string): Pick<SiteTask, 'adjusted' | 'suspect'> {
  return {
    adjusted: adjustment.readings.find((each) => each.id === id) ?? null,
    suspect: adjustment.suspects.find((each) => each.id === id) ?? null,
  };
}
