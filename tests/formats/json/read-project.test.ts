import { describe, expect, test } from 'vitest';

import { newProject, type Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';

const sound: Project = {
  ...newProject('Test'),
  shapes: [
    {
      id: 'door',
      name: 'Door opening',
      kind: 'opening',
      seenFrom: 'from the saloon, looking forward',
      readings: [{ id: 'wb', kind: 'distance', from: 'BL', to: 'BR', value: 641, sigma: 0.5 }],
    },
  ],
  materials: [
    { id: 'oak', kind: 'solid', name: 'Oak', species: 'Oak, European', state: 'sawn' },
    { id: 'ply18', kind: 'sheet', name: 'Birch plywood 18', thickness: 17.7 },
  ],
  pieces: [
    {
      id: 'frame',
      letter: 'A',
      name: 'Door frame',
      shape: 'door',
      kind: 'door-frame',
      parameters: { jambThickness: 20, materials: { frame: 'oak' } },
    },
  ],
  stock: [
    {
      id: 'ply',
      material: 'ply18',
      form: 'sheet',
      length: 2440,
      width: 1220,
      thickness: 17.7,
      count: null,
      price: 78,
    },
  ],
};

/** The text of the sound project after a change to its plain data. */
function spoilt(change: (document: ReturnType<typeof plain>) => void): string {
  const document = plain();
  change(document);
  return JSON.stringify(document);
}

// Plain data may be spoilt in ways the types forbid: that is the point here.
// eslint-disable-next-line @typescript-eslint/no-explicit-any
function plain(): any {
  return JSON.parse(JSON.stringify(sound));
}

function problemsOf(text: string) {
  const result = readProject(text);
  expect(result.ok).toBe(false);
  for (const problem of result.problems) {
    expect(problem.message).toMatch(/[.:]/);
    expect(problem.message).not.toMatch(/undefined|\[object/);
    expect(problem.remedy).toBeTruthy();
  }
  return result.problems;
}

describe('a project file', () => {
  test('a sound one is read as it was written', () => {
    expect(readProject(writeJson(sound))).toEqual({ ok: true, value: sound, problems: [] });
  });

  test('a price not known is left out; one of an older file is read as it stands', () => {
    const unknown = readProject(spoilt((p) => delete p.stock[0].price));
    expect(unknown.ok && unknown.value.stock[0]).not.toHaveProperty('price');
    const free = readProject(spoilt((p) => (p.stock[0].price = 0)));
    expect(free.ok && free.value.stock[0]?.price).toBe(0);
  });

  test('an unknown key is refused with its path and the key that was meant', () => {
    const [problem] = problemsOf(spoilt((p) => (p.pieces[0].parameters.jamThickness = 22)));
    expect(problem?.code).toBe('unknown-key');
    expect(problem?.about).toBe('pieces[0].parameters.jamThickness');
    expect(problem?.remedy).toContain('jambThickness');
  });

  test('keys that every object inherits are unknown keys too', () => {
    for (const key of ['__proto__', 'constructor', 'toString']) {
      const text = JSON.stringify(sound).replace('"name":"Test"', `"name":"Test","${key}":{}`);
      expect(problemsOf(text).map((problem) => problem.about)).toEqual([key]);
    }
  });

  test('of a hundred faults fifty are told and the others counted', () => {
    const problems = problemsOf(spoilt((p) => (p.done = Array.from({ length: 100 }, () => 1))));
    expect(problems).toHaveLength(51);
    expect(problems[50]?.message).toBe('There are 50 more faults in the file.');
  });

  test('every fault is listed, not only the first', () => {
    const problems = problemsOf(
      spoilt((p) => {
        p.colour = 'red';
        p.shade = 'dark';
        p.stock[0].length = '2440';
        p.tools.sheetSaw.kerf = -2;
        delete p.pieces[0].name;
        p.pieces[0].parameters.corner = 'dovetail';
        p.shapes[0].readings[0].kind = 'diagonal';
      }),
    );
    expect(problems.map((problem) => problem.about).toSorted()).toEqual(
      [
        'colour',
        'shade',
        'stock[0].length',
        'tools.sheetSaw.kerf',
        'pieces[0].name',
        'pieces[0].parameters.corner',
        'shapes[0].readings[0].kind',
      ].toSorted(),
    );
  });

  test('a wrong type says what it is and what it must be', () => {
    const [problem] = problemsOf(spoilt((p) => (p.stock[0].length = '2440')));
    expect(problem?.message).toBe('stock[0].length is "2440"; it must be a number.');
    const [list] = problemsOf(spoilt((p) => (p.tools.sheetSaw.trim = [])));
    expect(list?.message).toBe('tools.sheetSaw.trim is a list; it must be an object.');
    const [choice] = problemsOf(spoilt((p) => (p.paper = 'A5')));
    expect(choice?.message).toBe('paper is "A5"; it must be one of "A4", "Letter".');
  });

  test('a negative kerf is refused with its number', () => {
    const [problem] = problemsOf(spoilt((p) => (p.tools.boardSaw.kerf = -3)));
    expect(problem?.message).toBe('tools.boardSaw.kerf is -3; it must be 0 or more.');
    expect(problem?.code).toBe('value-out-of-range');
  });

  test('a number beyond all bounds is refused', () => {
    const text = JSON.stringify(sound).replace('"price":78', '"price":1e999');
    expect(problemsOf(text)[0]?.about).toBe('stock[0].price');
  });

  test('a sheet longer than a hundred metres is refused: no plan could show it', () => {
    const [problem] = problemsOf(spoilt((p) => (p.stock[0].length = 1e300)));
    expect(problem?.about).toBe('stock[0].length');
    expect(problem?.message).toContain('must be 100000 or less');
  });

  test('a file of a newer version says so and what to do', () => {
    const [problem] = problemsOf(
      spoilt((p) => {
        p.version = 7;
        p.fromTheFuture = true;
      }),
    );
    expect(problem?.code).toBe('newer-version');
    expect(problem?.message).toContain('7');
    expect(problem?.remedy).toMatch(/^Update/);
  });

  test('ids given twice make the file unreadable', () => {
    expect(problemsOf(spoilt((p) => p.materials.push({ ...p.materials[0] })))[0]).toMatchObject({
      code: 'id-twice',
      about: 'materials[2].id',
    });
  });

  test('a missing material is a finding beside the project, so that it can be mended', () => {
    const result = readProject(spoilt((p) => (p.pieces[0].parameters.materials.frame = 'ash')));
    expect(result.ok).toBe(true);
    expect(result.problems).toMatchObject([
      { severity: 'stop', code: 'material-missing', about: 'pieces[0].parameters.materials.frame' },
    ]);
    expect(result.problems[0]?.message).toContain('"ash"');
  });

  test.each([
    ['', 'line 1, column 1', /empty/],
    ['{"version": 1,}', 'line 1, column 15', /comma too many/],
    ['{"version": 1\n "name": "x"}', 'line 2, column 2', /comma or } is missing/],
    ["{'version': 1}", 'line 1, column 2', /double quotes/],
    ['{"version": 01}', 'line 1, column 13', /number/],
    ['{"version": NaN}', 'line 1, column 13', /NaN is not a number/],
    ['{"version": 1} x', 'line 1, column 16', /After the end/],
    ['{"version": 1, "version": 2}', 'line 1, column 16', /twice/],
    ['{"name": "a\nb"}', 'line 1, column 10', /not closed/],
    ['{"name": [1, 2', 'line 1, column 15', /ends in the middle/],
    ['// hello\n{}', 'line 1, column 1', /Remarks/],
    ['['.repeat(250), 'line 1, column 202', /nested/],
  ])('broken text %j names the place and the fault', (text, place, what) => {
    const [problem] = problemsOf(text);
    expect(problem?.code).toBe('json-broken');
    expect(problem?.about).toBe(place);
    expect(problem?.message).toMatch(what);
  });

  test('what is JSON but no project is refused', () => {
    expect(problemsOf('[]')[0]?.code).toBe('not-a-project');
    expect(problemsOf('{}')[0]?.code).toBe('not-a-project');
    expect(problemsOf('{"version": 1, "groups": [], "parts": []}')).toMatchObject([
      { code: 'not-a-project' },
    ]);
    expect(problemsOf('{"pieces": []}')[0]?.code).toBe('no-version');
    expect(problemsOf('{"version": "1", "shapes": []}')[0]?.code).toBe('no-version');
  });
});
