import makerjs from 'makerjs';
import { describe, expect, test } from 'vitest';

import { newProject, type Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';

import { run } from '../../src/cli/run.ts';

const model: makerjs.IModel = {
  models: {
    mouth: { ...new makerjs.models.RoundRectangle(500, 400, 60), layer: 'mouth' },
    vent: { ...new makerjs.models.Rectangle(80, 40), layer: 'vent', origin: [100, 100] },
  },
};
const files: Readonly<Record<string, string>> = {
  'locker.dxf': makerjs.exporter.toDXF(model, { units: makerjs.unitType.Millimeter }),
  'locker.svg':
    '<svg xmlns="http://www.w3.org/2000/svg" width="9in" height="9in" viewBox="0 0 9 9"><rect width="4" height="3"/></svg>',
  'boat.json': writeJson(newProject('Curlew')),
  'open.svg': '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0 L100 0 L100 100"/></svg>',
  'readings.csv':
    'id,value,seenFrom\nwb,640,from the saloon\nwt,640\nhl,1750\nhr,1750\nd1,1863.3\nd2,1863.3\npl,nothing\n',
};

async function call(...argv: readonly string[]) {
  let [answer, said] = ['', ''];
  const code = await run(argv, {
    folder: '.',
    answer: (text) => (answer += text),
    say: (text) => (said += text),
    readText: (path) => {
      const text = files[path];
      if (text === undefined) throw Object.assign(new Error('no such file'), { code: 'ENOENT' });
      return text;
    },
    elapsed: () => 0,
  });
  return { code, answer, said };
}

describe('joggle trace', () => {
  test('lists the closed contours of a drawing', async () => {
    const { code, answer } = await call('trace', 'locker.dxf', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(answer)).toMatchObject({
      contours: [
        { contour: 1, layer: 'mouth', width: 500, height: 400, inside: 1 },
        { contour: 2, layer: 'vent', width: 80, height: 40, inside: 0 },
      ],
    });
    expect((await call('trace', 'locker.svg')).answer).toContain('101.6 × 76.2 mm');
  });

  test('answers a project with the outline as a shape, and leaves the file alone', async () => {
    const before = files['boat.json'];
    const side = ['--seen-from', 'from the saloon'];
    const { code, answer } = await call('trace', 'locker.dxf', '--into', 'boat.json', ...side, '--json');
    expect(code).toBe(0);
    const project = readProject(answer);
    expect(project.ok && project.value.shapes[0]).toMatchObject({
      ...{ id: 'locker', name: 'locker', kind: 'outline', seenFrom: 'from the saloon' },
      traced: { source: 'locker.dxf' },
    });
    expect(files['boat.json']).toBe(before);
    const vent = await call(
      'trace',
      'locker.dxf',
      '--into',
      'boat.json',
      '--layer',
      'vent',
      ...side,
      '--json',
    );
    expect((JSON.parse(vent.answer) as Project).shapes[0]).toMatchObject({ corners: ['A', 'B', 'C', 'D'] });
  });

  test('what cannot be done is said', async () => {
    const cases = [
      [['trace', 'locker.dxf', '--into', 'boat.json'], 'mirror image'],
      [['trace', 'locker.dxf', '--into', 'boat.json', '--contour', '9'], 'no contour 9'],
      [['trace', 'locker.dxf', '--unit', 'ell'], 'must be one of mm'],
      [['trace', 'open.svg'], 'no closed contour'],
      [['trace', 'boat.json'], 'DXF'],
      [['trace', 'absent.dxf'], 'absent.dxf'],
    ] as const;
    for (const [argv, words] of cases) {
      const { code, said } = await call(...argv);
      expect(code, argv.join(' ')).toBe(2);
      expect(said).toContain(words);
    }
  });
});

describe('readings as a table', () => {
  test('joggle measure takes CSV and names the row that it cannot read', async () => {
    const { code, answer, said } = await call('measure', 'readings.csv', '--json');
    expect(code).toBe(1);
    expect(said).toContain('Row 8');
    const { points, seenFrom } = JSON.parse(answer) as { points: readonly unknown[]; seenFrom: string };
    expect(points).toHaveLength(4);
    expect(seenFrom).toBe('from the saloon');
  });

  test('joggle check says the same of it', async () => {
    const { answer } = await call('check', 'readings.csv', '--json');
    const { kind, findings } = JSON.parse(answer) as { kind: string; findings: readonly { code: string }[] };
    expect(kind).toBe('csv');
    expect(findings.map(({ code }) => code)).toContain('row-unreadable');
  });
});
