import { readFileSync } from 'node:fs';

import { describe, expect, test } from 'vitest';

import { findBlocked, listTasks, understandProject } from '#core/pipeline';
import { applyCommand, checkProject, type Project } from '#core/project';
import { checkVisits, planVisits } from '#core/visits';
import { readProject } from '#formats/json';

const read = readProject(
  readFileSync(new URL('../../../static/projects/curlew.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('the demo cannot be read');
const demo: Project = read.value;
const door = demo.pieces.find((piece) => piece.kind === 'flat-door');
const frame = demo.pieces.find((piece) => piece.kind === 'door-frame');
if (!door || !frame) throw new Error('the demo has lost its door or frame');

const workedIn = (project: Project, piece: string, name: string) =>
  understandProject(project)
    .pieces.find((each) => each.piece === piece)
    ?.working.find((step) => step.name === name)?.value;

describe('a door that takes its size from a frame', () => {
  test('is as wide as the frame says, whichever letter comes first, and pieces stay in the order of letters', () => {
    const letters = understandProject(demo).pieces.map((piece) => piece.letter);
    expect(letters).toEqual([...letters].sort());
    const width = workedIn(demo, frame.id, 'Wd');
    expect(width).toBeGreaterThan(500);
    expect(workedIn(demo, door.id, 'Wd')).toBe(width);
    const swapped = {
      ...demo,
      pieces: demo.pieces.map((piece) =>
        piece === door
          ? { ...piece, letter: frame.letter }
          : piece === frame
            ? { ...piece, letter: door.letter }
            : piece,
      ),
    };
    expect(workedIn(swapped, door.id, 'Wd')).toBe(width);
    expect(understandProject(swapped).pieces.map((piece) => piece.letter)).toEqual(letters);
  });

  test('follows the frame when its gap is changed', () => {
    const before = workedIn(demo, door.id, 'Wd') ?? 0;
    const wider = applyCommand(demo, {
      kind: 'set-parameter',
      id: frame.id,
      key: 'doorGapSide',
      value: 4,
    });
    if (!wider.ok) throw new Error('not set');
    expect(workedIn(wider.value, door.id, 'Wd')).toBeCloseTo(before - 2, 9);
  });

  test('is not cut while the readings of the frame contradict each other', () => {
    const blocked = findBlocked(demo, understandProject(demo), []);
    expect(blocked.get(`${door.letter}1`)?.code).toBe('readings-contradict');
    expect(blocked.has('C1')).toBe(false);
  });

  test('is hung between the fixing of the two jambs, and the visits can be planned', () => {
    const tasks = listTasks(demo, understandProject(demo));
    const after = (id: string) => tasks.find((task) => task.id === id)?.after ?? [];
    expect(after(`step:${door.letter}/hang`)).toContain(`step:${frame.letter}/fix-hinge-jamb`);
    expect(after(`step:${frame.letter}/fix-latch-jamb`)).toContain(`step:${door.letter}/hang`);
    expect(checkVisits(tasks, planVisits(tasks))).toEqual([]);
  });

  test('that names no piece of the project is told so by path', () => {
    const alone = { ...demo, pieces: demo.pieces.filter((piece) => piece !== frame) };
    const index = alone.pieces.indexOf(door);
    expect(checkProject(alone)).toMatchObject([
      { code: 'piece-missing', about: `pieces[${index}].parameters.frame` },
    ]);
    expect(understandProject(alone).findings.map((found) => found.code)).toContain('frame-missing');
  });

  test('can be set to another size and back by its parameter', () => {
    const free = applyCommand(demo, { kind: 'set-parameter', id: door.id, key: 'frame', value: null });
    if (!free.ok) throw new Error('not set');
    const codes = understandProject(free.value).findings.map((found) => found.code);
    expect(codes).toContain('door-size-missing');
    const wrong = applyCommand(demo, { kind: 'set-parameter', id: door.id, key: 'frame', value: 3 });
    expect(wrong.ok).toBe(false);
    const again = applyCommand(free.value, {
      kind: 'set-parameter',
      id: door.id,
      key: 'frame',
      value: frame.id,
    });
    if (!again.ok) throw new Error('not set');
    expect(workedIn(again.value, door.id, 'Wd')).toBe(workedIn(demo, door.id, 'Wd'));
  });
});
