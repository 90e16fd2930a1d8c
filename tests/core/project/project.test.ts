import { describe, expect, test } from 'vitest';

import {
  checkProject,
  isPieceLetter,
  newProject,
  nextLetter,
  upgradeProject,
  type Project,
} from '#core/project';

import { generateProject } from '../../support/generate-project.ts';

function withLetters(...letters: readonly string[]): Project {
  return {
    ...newProject('Letters'),
    pieces: letters.map((letter) => ({
      id: letter,
      letter,
      name: letter,
      kind: 'drawer',
      parameters: {
        openingWidth: 300,
        openingHeight: 120,
        clearDepth: 400,
        materials: { box: 'x', bottom: 'x' },
      },
    })),
  };
}

describe('letters of pieces', () => {
  test('they run from A to Z without I and O, then go on with AA', () => {
    expect(nextLetter(newProject('empty'))).toBe('A');
    expect(nextLetter(withLetters('A'))).toBe('B');
    expect(nextLetter(withLetters('H'))).toBe('J');
    expect(nextLetter(withLetters('N'))).toBe('P');
    expect(nextLetter(withLetters('Z'))).toBe('AA');
    expect(nextLetter(withLetters('AA'))).toBe('AB');
    expect(nextLetter(withLetters('AZ'))).toBe('BA');
  });

  test('a letter given up is not given again while a later one is in use', () => {
    expect(nextLetter(withLetters('A', 'C'))).toBe('D');
  });

  test('I, O, small letters and nothing are no letters', () => {
    expect(['A', 'AB', 'I', 'O', 'a', '', 'ABC', '1'].map(isPieceLetter)).toEqual([
      true,
      true,
      false,
      false,
      false,
      false,
      false,
      false,
    ]);
  });
});

describe('a project in itself', () => {
  test('a new one and generated ones are sound', () => {
    expect(checkProject(newProject('new'))).toEqual([]);
    for (let seed = 0; seed < 50; seed += 1) expect(checkProject(generateProject(seed))).toEqual([]);
  });

  test('ids given twice, letters given twice and dangling references are found with their paths', () => {
    const base = withLetters('A', 'A');
    const problems = checkProject({
      ...base,
      pieces: base.pieces.map((piece) => ({ ...piece, id: 'same', shape: 'nowhere' })),
      materials: [
        { id: 'm', kind: 'sheet', name: 'Ply', thickness: -1 },
        { id: 'm', kind: 'sheet', name: 'Ply', thickness: 6 },
      ],
      stock: [
        {
          id: 's',
          material: 'n',
          form: 'sheet',
          length: 0,
          width: 1220,
          thickness: 6,
          count: null,
          price: -1,
        },
      ],
    });
    const found = new Map(problems.map((problem) => [problem.about, problem.code]));
    expect(found).toEqual(
      new Map([
        ['pieces[1].id', 'id-twice'],
        ['materials[1].id', 'id-twice'],
        ['pieces[1].letter', 'letter-twice'],
        ['pieces[0].shape', 'shape-missing'],
        ['pieces[0].parameters.materials.box', 'material-missing'],
        ['pieces[0].parameters.materials.bottom', 'material-missing'],
        ['pieces[1].shape', 'shape-missing'],
        ['pieces[1].parameters.materials.box', 'material-missing'],
        ['pieces[1].parameters.materials.bottom', 'material-missing'],
        ['stock[0].material', 'material-missing'],
        ['materials[0].thickness', 'value-out-of-range'],
        ['stock[0].length', 'value-out-of-range'],
        ['stock[0].price', 'value-out-of-range'],
      ]),
    );
    for (const problem of problems) expect(problem.message).toMatch(/\.$/);
  });
});

describe('versions of the saved document', () => {
  test('the current version passes as it is', () => {
    const project = newProject('Curlew');
    expect(upgradeProject(project)).toEqual({ ok: true, value: project, problems: [] });
  });

  test('an older one goes through every step after its own', () => {
    const steps = [
      (old: Readonly<Record<string, unknown>>) => ({ ...old, version: 2, first: true }),
      (old: Readonly<Record<string, unknown>>) => ({ ...old, version: 3, second: true }),
    ];
    expect(upgradeProject({ version: 1 }, steps)).toMatchObject({
      value: { version: 3, first: true, second: true },
    });
    expect(upgradeProject({ version: 2 }, steps)).toMatchObject({ value: { version: 3, second: true } });
    const current = upgradeProject({ version: 3 }, steps);
    expect(current.ok && current.value).toEqual({ version: 3 });
  });

  test.each([[{ version: 2 }], [{ version: 99 }]])('a newer one is not touched: %j', (document) => {
    const result = upgradeProject(document);
    expect(result.ok).toBe(false);
    expect(result.problems[0]).toMatchObject({ code: 'newer-version', severity: 'stop' });
    expect(result.problems[0]?.remedy).toMatch(/Update/);
  });

  test.each([[{}], [{ version: 'one' }], [{ version: 0 }], [{ version: 1.5 }], [null], [[]], [7]])(
    'what has no version is refused: %j',
    (document) => {
      expect(upgradeProject(document).ok).toBe(false);
    },
  );
});
