import { readFileSync } from 'node:fs';

import { describe, expect, test } from 'vitest';

import { placePoint } from '#core/geometry';
import type { Part } from '#core/joinery';
import { findBlocked, groupParts, listTasks, understandProject } from '#core/pipeline';
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

describe('a frame has beds for the hinges of its door', () => {
  const jambs = (project: Project) =>
    understandProject(project)
      .pieces.find((each) => each.piece === frame.id)
      ?.parts.filter((part) => part.name.startsWith('Jamb')) ?? [];
  const bedsOf = (part: Part | undefined) =>
    (part?.machining ?? []).flatMap((one) =>
      one.kind === 'recess' && one.note?.startsWith('hinge leaf of') ? [one.box] : [],
    );
  const set = (project: Project, id: string, key: string, value: string | number) => {
    const changed = applyCommand(project, { kind: 'set-parameter', id, key, value });
    if (!changed.ok) throw new Error('not set');
    return changed.value;
  };

  test('at the heights of the door hung with its gap at the top, on the hinge side only', () => {
    const [left, right] = jambs(demo);
    expect(bedsOf(right)).toEqual([]);
    const head = understandProject(demo)
      .pieces.find((each) => each.piece === frame.id)
      ?.parts.find((part) => part.name === 'Head');
    const at = left?.placements[0];
    if (!left || !head?.placements[0] || !at) throw new Error('no jamb or head');
    const top = head.placements[0].origin.y - (workedIn(demo, frame.id, 'gt') ?? 0); // upper edge of the hung door
    const wanted = ['hinge_top', 'hinge_mid', 'hinge_low'].map(
      (name) => top - (workedIn(demo, door.id, 'Hd') ?? 0) + (workedIn(demo, door.id, name) ?? 0),
    );
    const found = bedsOf(left).map(
      ({ min, max }) => placePoint(at, { x: (min.x + max.x) / 2, y: 0, z: 0 }).y,
    );
    expect(found).toHaveLength(3);
    found.forEach((height, i) => expect(height).toBeCloseTo(wanted[i] ?? NaN, 6));
    expect(left.notes.join(' ')).toContain(`Hinge beds for ${door.letter} ${door.name}: middles `);
    for (const { min, max } of bedsOf(left)) {
      expect(max.z - min.z).toBeCloseTo(workedIn(demo, door.id, 'hinge_in') ?? NaN, 9);
      expect(min.y).toBeGreaterThanOrEqual(0);
      expect(max.y).toBeLessThanOrEqual(left.finished.width);
    }
  });

  test('they change sides with the hinges, and go with the door', () => {
    const [left, right] = jambs(set(demo, door.id, 'hinged', 'right'));
    expect([bedsOf(left).length, bedsOf(right).length]).toEqual([0, 3]);
    const alone = { ...demo, pieces: demo.pieces.filter((piece) => piece !== door) };
    expect(jambs(alone).flatMap(bedsOf)).toEqual([]);
  });

  test('understanding on from before gives the same as afresh, and what is unchanged stays the very same', () => {
    const before = { project: demo, understanding: understandProject(demo) };
    const same = understandProject(demo, before);
    const of = (pieces: typeof same.pieces) => pieces.find((each) => each.piece === frame.id);
    expect(of(same.pieces)).toBe(of(before.understanding.pieces));
    const taller = set(demo, door.id, 'hingeLength', 100);
    expect(understandProject(taller, before).pieces).toEqual(understandProject(taller).pieces);
    const turned = set(taller, door.id, 'hinged', 'right');
    const next = { project: taller, understanding: understandProject(taller, before) };
    expect(understandProject(turned, next).pieces).toEqual(understandProject(turned).pieces);
  });
});

describe('two doors that meet in one frame', () => {
  const at = (one: Project, id: string, key: string, value: string | number) => {
    const changed = applyCommand(one, { kind: 'set-parameter', id, key, value });
    if (!changed.ok) throw new Error(`not set: ${key}`);
    return changed.value;
  };
  const first = at(at(demo, door.id, 'leaf', 'first'), door.id, 'lock', 'mortise-lock');
  const other = { ...door, id: 'other-door', letter: 'H', name: 'Saloon door, other' };
  const added = applyCommand(first, {
    kind: 'add-piece',
    piece: { ...other, parameters: { ...other.parameters, leaf: 'second', hinged: 'right' } },
  } as Parameters<typeof applyCommand>[1]);
  if (!added.ok) throw new Error('not added');
  const pair = added.value;
  const cutIn = (project: Project, piece: string, start: string) =>
    understandProject(project)
      .pieces.find((each) => each.piece === piece)
      ?.parts.flatMap((part) => part.machining.filter(({ note = '' }) => note.startsWith(start))).length;

  test('each is half as wide less half the gap, beds are in both jambs, the strike is in the other door', () => {
    const whole = workedIn(demo, frame.id, 'Wd') ?? NaN;
    expect(workedIn(pair, door.id, 'Wd')).toBeCloseTo((whole - 3) / 2, 9);
    expect(workedIn(pair, other.id, 'Wd')).toBeCloseTo((whole - 3) / 2, 9);
    expect(cutIn(pair, frame.id, 'hinge leaf of')).toBe(6);
    expect(cutIn(pair, frame.id, 'strike of')).toBe(0);
    expect(cutIn(pair, other.id, 'strike of')).toBeGreaterThan(0);
    expect(cutIn(pair, frame.id, 'bolt of')).toBe(1); // into the head; it has no timber sill
    expect(cutIn(first, frame.id, 'strike of')).toBe(0);
    expect(understandProject(first).findings.map(({ code }) => code)).toContain('doors-in-frame');
    expect(understandProject(pair).findings.map(({ code }) => code)).not.toContain('doors-in-frame');
  });

  test('understanding on from before is the same as afresh, whichever of the three changes', () => {
    let before = { project: pair, understanding: understandProject(pair) };
    for (const [id, key, value] of [
      [door.id, 'lockHeight', 700],
      [other.id, 'hingeLength', 100],
      [frame.id, 'doorGapSide', 4],
      [door.id, 'lock', 'turn-button'],
      [other.id, 'leaf', 'whole'],
      [door.id, 'lock', 'mortise-lock'],
      [other.id, 'leaf', 'second'],
      [other.id, 'meetingGap', 4],
      [door.id, 'figure', 'through'],
      [other.id, 'hinged', 'left'],
      [other.id, 'hinged', 'right'],
      [door.id, 'figure', 'own'],
    ] as const) {
      const project = at(before.project, id, key, value);
      const understanding = understandProject(project, before);
      expect(understanding.pieces).toEqual(understandProject(project).pieces);
      before = { project, understanding };
    }
  });

  test('their visits can be planned', () => {
    const tasks = listTasks(pair, understandProject(pair));
    expect(checkVisits(tasks, planVisits(tasks))).toEqual([]);
  });

  describe('with the figure of the sheet running on', () => {
    const through = at(pair, door.id, 'figure', 'through');
    const { pieces } = understandProject(through);
    const core = (id: string) => {
      const found = pieces.find(({ piece }) => piece === id)?.parts.find(({ name }) => name === 'Core');
      if (!found?.placements[0]) throw new Error('no core');
      return { part: found, left: found.placements[0].origin.x };
    };
    const [left, right] = [core(door.id), core(other.id)]; // hinged left and right
    const stripsOf = (project: Project) =>
      groupParts(project, understandProject(project).pieces)
        .groups.flatMap(({ blanks }) => blanks)
        .filter(({ parts }) => parts.some(({ part }) => part === left.part.id));

    test('both come out of one strip of one sheet, neighbours in order (joinery D3, B6)', () => {
      const [strip, ...others] = stripsOf(through);
      expect(others).toEqual([]);
      expect(strip?.parts.map(({ part }) => part)).toEqual([left.part.id, right.part.id]);
      const [one, next] = strip?.parts ?? [];
      if (!one || !next) throw new Error('no strip');
      // face up a part's y runs down the sheet: the left one lies above, as far off as the two sheets are when hung
      const apart = one.y - (next.y + next.width);
      const width = workedIn(through, door.id, 'Wd') ?? NaN;
      const hung = width - left.left - left.part.finished.width + 3 + right.left;
      expect(apart).toBeCloseTo(hung, 6);
      expect([one.x, next.x]).toEqual([0, 0]);
      expect(left.part.matched).toEqual({ set: `${door.letter} and H`, index: 0 });
      expect(right.part.notes.join(' ')).toContain('Figure runs on over both doors');
    });
    test('else each is a blank of its own, as when one of the two is made', () => {
      expect(stripsOf(pair)[0]?.parts).toHaveLength(1);
      expect(
        understandProject(pair).pieces.flatMap(({ matchedSets, kind }) =>
          kind === 'flat-door' ? matchedSets : [],
        ),
      ).toEqual([]);
      const made = pieces.map((piece) => ({
        ...piece,
        parts: piece.parts.map((part) => (part === left.part ? { ...part, quantity: 0 } : part)),
      }));
      const blanks = groupParts(through, made).groups.flatMap((group) => group.blanks);
      const rest = blanks.filter(({ parts }) => parts.some(({ part }) => part === right.part.id));
      expect(rest.map(({ parts }) => parts.length)).toEqual([1]);
    });
    test('doors of two sheets share none', () => {
      const sheets = through.materials.filter(({ kind }) => kind === 'sheet');
      const [another] = sheets.filter(({ id }) => id !== left.part.material);
      if (!another) throw new Error('one sheet only');
      const mixed = at(through, other.id, 'materials.core', another.id);
      expect(stripsOf(mixed)[0]?.parts ?? []).toHaveLength(1);
    });
  });
});
