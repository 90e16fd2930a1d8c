import { describe, expect, test } from 'vitest';

import { checkProject, longestImage, newProject, type MeasuredShape, type Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';

import { expectCommand, expectRefused } from '../../support/expect-command.ts';
import {
  bowLocker,
  galleyHull,
  samplePhoto,
  sampleShapes,
  saloonWalls,
  tracedHatch,
} from '../../support/sample-shapes.ts';

const withShapes = (...shapes: readonly MeasuredShape[]): Project => ({ ...newProject('Curlew'), shapes });
const project = withShapes(...sampleShapes);

function codesOf(...shapes: readonly MeasuredShape[]): readonly string[] {
  return checkProject(withShapes(...shapes)).map(({ code }) => code);
}

/** The project with one shape changed. */
const changed =
  <Kind extends MeasuredShape>(id: string, change: Partial<Kind>) =>
  (before: Project): Project => ({
    ...before,
    shapes: before.shapes.map((shape) => (shape.id === id ? ({ ...shape, ...change } as Kind) : shape)),
  });

describe('shapes of every kind', () => {
  test('they are sound, and come back from a file as they went', () => {
    expect(checkProject(project)).toEqual([]);
    expect(readProject(writeJson(project))).toEqual({ ok: true, value: project, problems: [] });
  });

  test('an old file, with openings only, is read as it was', () => {
    const old = withShapes({
      id: 'door',
      name: 'Door',
      kind: 'opening',
      seenFrom: 'from the saloon',
      readings: [{ id: 'wb', kind: 'distance', from: 'BL', to: 'BR', value: 641 }],
    });
    expect(readProject(JSON.stringify(old))).toEqual({ ok: true, value: old, problems: [] });
  });
});

describe('commands on the lists of a shape', () => {
  test('items are added, changed and removed', () => {
    const post = { id: 'post', name: 'Pillar', x: 10, y: 20, width: 30, height: 40 };
    const added = expectCommand(
      project,
      { kind: 'add-item', shape: 'bow', list: 'obstructions', item: post, at: 0 },
      changed('bow', { obstructions: [post, ...(bowLocker.obstructions ?? [])] }),
    );
    const moved = expectCommand(
      added,
      { kind: 'change-item', shape: 'bow', list: 'obstructions', id: 'post', item: { ...post, x: 11 } },
      changed('bow', { obstructions: [{ ...post, x: 11 }, ...(bowLocker.obstructions ?? [])] }),
    );
    expectCommand(
      moved,
      { kind: 'remove-item', shape: 'bow', list: 'obstructions', id: 'post' },
      changed('bow', { obstructions: bowLocker.obstructions }),
    );
    const wall = { id: 'w4', name: 'Locker front', length: 400 };
    expectCommand(
      project,
      { kind: 'add-item', shape: 'walls', list: 'walls', item: wall },
      changed('walls', { walls: [...saloonWalls.walls, wall] }),
    );
  });

  test('a photo is added to a shape that has none yet, and drawn on', () => {
    const added = expectCommand(
      project,
      { kind: 'add-item', shape: 'hull', list: 'photos', item: { ...samplePhoto, strokes: [] } },
      changed('hull', { photos: [{ ...samplePhoto, strokes: [] }] }),
    );
    expectCommand(
      added,
      { kind: 'change-item', shape: 'hull', list: 'photos', id: 'before', item: samplePhoto },
      changed('hull', { photos: [samplePhoto] }),
    );
  });

  test('a photo too large for the file, no picture, or drawn on outside is refused', () => {
    const add = (photo: Partial<typeof samplePhoto>) =>
      ({ kind: 'add-item', shape: 'bow', list: 'photos', item: { ...samplePhoto, ...photo } }) as const;
    const large = samplePhoto.image.padEnd(longestImage + 1, 'A');
    expect(expectRefused(project, add({ image: large }), 'photo-too-large')).toContain(String(longestImage));
    expectRefused(project, add({ image: 'https://example.org/a.png' }), 'photo-unreadable');
    expectRefused(project, add({ strokes: [{ points: [{ x: 0.5, y: 1.2 }] }] }), 'stroke-outside');
  });

  test('a list that the kind does not have is refused, and so is a property', () => {
    const wall = { id: 'w4', name: 'Locker front', length: 400 };
    expectRefused(
      project,
      { kind: 'add-item', shape: 'hull', list: 'walls', item: wall },
      'not-of-this-kind',
    );
    expectRefused(
      project,
      { kind: 'change-shape', id: 'hull', change: { closed: true } },
      'not-of-this-kind',
    );
  });

  test('an item that is there already or is not there is named', () => {
    const [section] = galleyHull.sections;
    if (!section) throw new Error('the sample has sections');
    expectRefused(project, { kind: 'add-item', shape: 'hull', list: 'sections', item: section }, 'id-taken');
    expectRefused(
      project,
      { kind: 'remove-item', shape: 'hull', list: 'sections', id: 'middle' },
      'not-found',
    );
    expectRefused(
      project,
      { kind: 'remove-item', shape: 'hull', list: 'sections', id: 'left' },
      'section-missing',
    );
  });

  test('a renamed corner is renamed in its readings and curves', () => {
    const renamed = expectCommand(
      project,
      { kind: 'rename-corner', shape: 'bow', from: 'stem', to: 'fore' },
      (before) => JSON.parse(JSON.stringify(before).replaceAll('"stem"', '"fore"')) as Project,
    );
    expect(JSON.stringify(renamed)).not.toContain('stem');
    expectRefused(
      project,
      { kind: 'rename-corner', shape: 'bow', from: 'stem', to: 'aft port' },
      'corner-twice',
    );
    expectRefused(project, { kind: 'rename-corner', shape: 'walls', from: 'A', to: 'B' }, 'not-found');
  });

  test('corners and closing are changed; a drawing is dropped by null', () => {
    expectCommand(
      project,
      { kind: 'change-shape', id: 'walls', change: { closed: true } },
      changed('walls', { closed: true }),
    );
    const { traced, ...untraced } = tracedHatch;
    expect(traced).toBeDefined();
    expectCommand(project, { kind: 'change-shape', id: 'hatch', change: { traced: null } }, (before) => ({
      ...before,
      shapes: before.shapes.map((shape) => (shape.id === 'hatch' ? untraced : shape)),
    }));
  });
});

describe('what a shape cannot be', () => {
  test('corners named twice, curves beside the corners, stations out of order', () => {
    expect(codesOf({ ...bowLocker, corners: ['aft port', 'stem', 'stem'] })).toContain('corner-twice');
    const [curve] = bowLocker.curves ?? [];
    if (!curve) throw new Error('the sample has a curve');
    expect(codesOf({ ...bowLocker, curves: [{ ...curve, to: 'aft starboard' }] })).toContain('curve-corners');
    expect(codesOf({ ...bowLocker, curves: [curve, { ...curve, id: 'again' }] })).toContain('curve-twice');
    const backwards = { ...curve, ordinates: curve.ordinates.toReversed() };
    expect(codesOf({ ...bowLocker, curves: [backwards] })).toEqual(['stations-order']);
    expect(codesOf({ ...tracedHatch, corners: ['A', 'B'] })).toEqual(['traced-corners']);
  });

  test('sections in the same place, heights out of order, bevels past square', () => {
    const [left, right] = galleyHull.sections;
    if (!left || !right) throw new Error('the sample has two sections');
    expect(codesOf({ ...galleyHull, sections: [left, { ...right, at: 0 }] })).toEqual(['sections-alike']);
    const upside = { ...left, ordinates: left.ordinates.toReversed() };
    expect(codesOf({ ...galleyHull, sections: [upside, right] })).toEqual(['stations-order']);
    const steep = { ...left, bevels: [{ height: 0, degrees: 95 }] };
    expect(codesOf({ ...galleyHull, sections: [steep, right] })).toEqual(['value-out-of-range']);
  });

  test('walls without length, corners past a whole turn, obstructions of no size', () => {
    const wall = { id: 'w', name: 'Side', length: 0, corner: { degrees: 400 } };
    expect(codesOf({ ...saloonWalls, walls: [wall] })).toEqual(['value-out-of-range', 'value-out-of-range']);
    const flat = { id: 'pipe', name: 'Pipe', x: 0, y: 0, width: 0, height: 10 };
    expect(codesOf({ ...bowLocker, obstructions: [flat] })).toEqual(['value-out-of-range']);
  });
});
