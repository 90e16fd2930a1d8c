import { describe, expect, test } from 'vitest';
import type { Piece } from '#core/joinery';
import { asMade, checkSums, understandProject } from '#core/pipeline';
import { beginnersProject, doorOpening, pieceA } from '../../support/first-timers.ts';

const oak = { frame: 'oak' };
const pieces: readonly (readonly [string, Piece, RegExp, 'width' | 'height'])[] = [
  [
    'free frame',
    pieceA('free-frame', { width: 500, height: 400, joint: 'loose-tenon', materials: oak }),
    /bottom/i,
    'width',
  ],
  [
    'carcase',
    pieceA('carcase', {
      ...{ width: 600, height: 500, heights: [0, 250, 500], left: [300, 330, 350], right: [300, 330, 350] },
      ...{ shelves: [200], materials: { panel: 'ply12' } },
    }),
    /^Shelf/,
    'width',
  ],
  [
    'cabinet front',
    pieceA('cabinet-front', {
      width: 460,
      height: 640,
      materials: { frame: 'oak', front: 'ply18' },
    } as never),
    /rail/i,
    'width',
  ],
];

/** The project with one part cut so much longer than planned. */
function cutLonger(piece: Piece, name: RegExp, by: number) {
  const project = beginnersProject({ pieces: [piece], shapes: [doorOpening()] });
  const part = understandProject(project).pieces[0]!.parts.find((one) => name.test(one.name));
  if (!part) throw new Error(`no part ${name}`);
  const made = asMade(part, 1);
  return {
    part,
    project: {
      ...project,
      made: [{ ...made, finished: { ...made.finished, length: made.finished.length + by } }],
    },
  };
}

const tell = (project: ReturnType<typeof cutLonger>['project']) =>
  checkSums(project, understandProject(project).pieces).filter(({ code }) => code === 'parts-do-not-add-up');

describe.each(pieces)('a %s with a member cut to another length', (_, piece, name, across) => {
  test('does not add up, by just as much as that', () => {
    for (const by of [-10, 6]) {
      const { part, project } = cutLonger(piece, name, by);
      const [found] = tell(project);
      expect(found?.about).toBe(part.id);
      expect(found?.severity).toBe(by > 0 ? 'stop' : 'warn');
      const [is, needs] = /add up to ([\d.]+) mm .* needs ([\d.]+)\./
        .exec(found?.message ?? '')!
        .slice(1)
        .map(Number);
      expect(found?.message).toContain(`Over its ${across} `);
      expect(is! - needs!).toBeCloseTo(by, 1);
    }
  });

  test('adds up when it was cut as planned, or as near as a saw gets', () => {
    for (const by of [0, 0.3]) expect(tell(cutLonger(piece, name, by).project)).toEqual([]);
  });
});

test('what the members of a frame need is the outside of the frame, joints counted once', () => {
  const { project } = cutLonger(pieces[0]![1], /bottom/i, -10);
  // a frame of 500 less its fitting gap, as free frames are asked for by their outside or opening
  const [found] = tell(project);
  const outside = understandProject(project).pieces[0]!.envelope;
  const needs = Number(/needs ([\d.]+)\.$/.exec(found!.message)![1]);
  expect(needs).toBeCloseTo(outside.max.x - outside.min.x, 1);
});
