import type { MeasuredOutline, MeasuredSections, MeasuredShape, MeasuredWalls, Wall } from '#core/project';

import { wallPoint } from '../shapes/adjust-walls.ts';
import { ask, look } from './asked.ts';
import { openingLines } from './opening-lines.ts';
import type { OpeningReadingKey } from './topic.ts';
import type { AskedLine } from './types.ts';

/** What is read of a shape for the pieces fitted to it; `wanted` are their readings of an opening. */
export function linesOfShape(
  shape: MeasuredShape,
  wanted: readonly OpeningReadingKey[],
): readonly AskedLine[] {
  switch (shape.kind) {
    case 'opening':
      return openingLines(wanted);
    case 'outline':
      return shape.traced ? tracedLines : outlineLines(shape);
    case 'sections':
      return sectionLines(shape);
    case 'walls':
      return wallLines(shape);
  }
}

const tracedLines: readonly AskedLine[] = [
  ask('bar-x', 'Two crosses across', 'How far apart aboard, at least 80 % of the width.', {
    stage: 'templates',
  }),
  ask('bar-y', 'Two crosses upwards', 'How far apart aboard, at least 80 % of the height.', {
    stage: 'templates',
  }),
];

/** Sides, then the short diagonals: each corner is then held from four others, or three. */
function outlineLines({ corners, curves = [] }: MeasuredOutline): readonly AskedLine[] {
  const count = corners.length;
  if (count < 3 && curves.length === 0)
    return [
      look('corners', 'Names of the corners', 'Counter-clockwise as you see it; write them on a sketch.'),
      ask('sides', 'Every side', 'From corner to corner, all round.', { blanks: 6 }),
      ask('diagonals', 'Diagonals', 'From each corner to the next but one.', { blanks: 6 }),
    ];
  const pairs = (step: number) =>
    corners.map((from, at) => [from, corners[(at + step) % count] ?? from] as const);
  const short = count === 4 ? pairs(2).slice(0, 2) : count > 4 ? pairs(2) : [];
  return [
    ...pairs(1).map(([from, to]) => distance(from, to, 'Along the side, from corner to corner.')),
    ...short.map(([from, to]) => distance(from, to, 'Straight across, from corner to corner.')),
    ...curves.map(({ id, from, to }) =>
      ask(
        `curve-${id}`,
        `Curve ${from} to ${to}`,
        'Batten from corner to corner: out to the edge every 100, square to it.',
        {
          blanks: 8,
          method: 'M9',
          stage: 'strings',
        },
      ),
    ),
    look('obstructions', 'What is in the way', 'Pipes, stringers, wires: place and size of each.'),
  ];
}

function distance(from: string, to: string, where: string): AskedLine {
  const id = `${from}-${to}`;
  return ask(id, `${from} to ${to}`, where, {
    method: 'M1',
    reading: { id, kind: 'distance', method: 'M1', from, to },
  });
}

function sectionLines({ sections }: MeasuredSections): readonly AskedLine[] {
  const named =
    sections.length > 0
      ? sections
      : [
          { id: 'left', name: 'left end' },
          { id: 'right', name: 'right end' },
        ];
  return [
    ...named.map(({ id, name }) =>
      ask(
        `ordinates-${id}`,
        `Hull at the ${name.toLowerCase()}`,
        'From the plane of the fronts square to the bare hull, every 100 of height, both ends included.',
        {
          blanks: 8,
          method: 'M9',
        },
      ),
    ),
    ...named.map(({ id, name }) =>
      ask(
        `bevels-${id}`,
        `Bevels at the ${name.toLowerCase()}`,
        'Against square to the section at three heights; say which face was measured.',
        {
          blanks: 3,
          unit: '°',
          method: 'M12',
          stage: 'bevels',
        },
      ),
    ),
    ask('apart', 'Sections apart', 'From one to the next; one more between them where it is over 900.', {
      blanks: 2,
    }),
    look(
      'obstructions',
      'What is in the way',
      'Stringers, frames, wires: place and size of each, with 5 round them.',
    ),
  ];
}

function wallLines({ walls, closed }: MeasuredWalls): readonly AskedLine[] {
  if (walls.length === 0)
    return [
      ask('lengths', 'Length of each wall', 'At the height of the piece, left to right as you face them.', {
        blanks: 6,
      }),
      ask('corners', 'Angle of each corner', 'On the side of the room: over 180 round a post.', {
        blanks: 5,
        unit: '°',
        method: 'M12',
        stage: 'bevels',
      }),
      ask('bows', 'Bow of each wall', 'Straightedge along it: hollow plus, round minus.', {
        blanks: 6,
        method: 'M7',
        stage: 'strings',
      }),
    ];
  return [
    ...walls.map(({ id, name }) =>
      ask(`length-${id}`, `Length of ${name}`, 'At the height of the piece.', { method: 'M1' }),
    ),
    ...walls.map(({ id, name }) =>
      ask(`bow-${id}`, `Bow of ${name}`, 'Straightedge along it, in the middle: hollow plus, round minus.', {
        method: 'M7',
        stage: 'strings',
      }),
    ),
    ...walls.flatMap((wall, at): readonly AskedLine[] => {
      const next = walls[at + 1] ?? (closed === true ? walls[0] : undefined);
      return next ? [cornerLine(wall, next)] : [];
    }),
    ...walls.slice(2).map((_, at) => {
      const [from, to] = [wallPoint(at), wallPoint(at + 2)];
      return distance(
        from,
        to,
        `Straight from the start of ${walls[at]?.name ?? ''} to the end of ${walls[at + 1]?.name ?? ''}: it checks lengths and corner.`,
      );
    }),
  ];
}

function cornerLine(wall: Wall, next: Wall): AskedLine {
  const where = 'On the side of the room: 90 when square, over 180 round a post.';
  return ask(`corner-${wall.id}`, `Corner ${wall.name} to ${next.name}`, where, {
    ...{ unit: '°', method: 'M12', stage: 'bevels' },
  });
}
