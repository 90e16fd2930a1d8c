import { expect, test } from 'vitest';
import type { BuiltPiece, WorkingStep } from '#core/joinery';
import { parametersBehind, shapesBehind, withNumbers } from '#app/bench/working.ts';
import { freshId } from '#app/ids.ts';
import { groupFiles } from '#app/paper/files.ts';
import { packFiles } from '#app/paper/hand-out.ts';
import { faultOfPlace, firstPlace } from '#app/rack/keep-out.ts';
import { firstLine, priceWords } from '#app/rack/words.ts';
import { closeness, verdictWords } from '#app/saw/words.ts';
import { countChanges } from '#app/bench/changes.ts';
import { kindGroups, lacksShape } from '#app/bench/kind-groups.ts';
import { nothingFits } from '#app/bench/parameters.ts';
import { pieceKinds } from '#core/joinery';
import type { CostMeasure, PartChange } from '#core/pipeline';
import { newProject } from '#core/project';
import { joinAlike, minutesWords } from '#app/trips/words.ts';
import { unzipSync, strFromU8 } from 'fflate';
import { openPlan as plan } from '../core/pipeline/made-up.ts';

test('a rule is shown with its numbers, whole names only', () => {
  const step: WorkingStep = {
    name: 'Fh',
    label: 'frame height',
    formula: 'down(yH - p - p_h, 0.5)',
    inputs: [
      { name: 'yH', value: 1786.5949 },
      { name: 'p', value: 5 },
      { name: 'p_h', value: 4 },
    ],
    value: 1777.5,
    unit: 'mm',
    source: 'joinery B1',
  };
  expect(withNumbers(step)).toBe('down(1786.595 - 5 - 4, 0.5)');
});

test('a size leads to the parameters and shapes it depends on, the nearest first, each once', () => {
  const put = (name: string, parameter?: string, source = 'you'): WorkingStep => {
    const step = { name, label: name, inputs: [], value: 1, unit: 'mm', source } as const;
    return parameter === undefined ? step : { ...step, parameter };
  };
  const work = (name: string, ...inputs: readonly string[]): WorkingStep => ({
    ...put(name, undefined, 'joinery B1'),
    formula: inputs.join(' + '),
    inputs: inputs.map((input) => ({ name: input, value: 1 })),
  });
  const working = [
    put('BL_x', undefined, 'shape Saloon door'),
    put('p', 'packingSides'),
    put('tj', 'jambThickness'),
    work('Fw', 'BL_x', 'p'),
    work('Wc', 'Fw', 'tj', 'p'),
  ];
  const built = { kind: 'door-frame', working } as unknown as BuiltPiece;
  expect(parametersBehind(built, 'Wc').map(({ key }) => key)).toEqual(['jambThickness', 'packingSides']);
  expect(parametersBehind(built, 'Fw').map(({ key }) => key)).toEqual(['packingSides']);
  expect(shapesBehind(built, 'Wc')).toEqual(['Saloon door']);
  expect(shapesBehind(built, 'tj')).toEqual([]);
  expect(parametersBehind(built, 'unknown')).toEqual([]);
});

test('a bad spot that leaves its stock is pointed out with by how much', () => {
  const stock = { length: 2440, width: 1220 };
  const spot = { x: 100, y: 50, length: 300, width: 200 };
  expect(faultOfPlace(spot, stock, 'mm')).toBeNull();
  expect(faultOfPlace(firstPlace(stock), stock, 'mm')).toBeNull();
  expect(faultOfPlace(firstPlace({ length: 30, width: 20 }), { length: 30, width: 20 }, 'mm')).toBeNull();
  expect(faultOfPlace({ ...spot, x: 2200 }, stock, 'mm')).toContain('60 mm beyond the length of 2440 mm');
  expect(faultOfPlace({ ...spot, y: 1100 }, stock, 'inch')).toContain('3 1/8 in beyond the width');
  expect(faultOfPlace({ ...spot, x: -1 }, stock, 'mm')).toContain('outside the stock');
  expect(faultOfPlace({ ...spot, width: 0 }, stock, 'mm')).toContain('more than 0');
});

const euro: CostMeasure = { unit: { kind: 'money', currency: 'EUR' }, isRack: false, unpriced: [] };

test('a plan that is not proven says how much a better one could save', () => {
  expect(verdictWords(plan, euro)).toBe('Not proven: a better plan could save at most 20.00 EUR (20 %).');
  expect(verdictWords({ ...plan, bound: 100, proven: true }, euro)).toContain('Proven');
  expect(verdictWords({ ...plan, bound: null, unplaced: [{ id: 'A1', count: 1 }] }, euro)).toContain(
    'findings',
  );
  const area: CostMeasure = { ...euro, unit: { kind: 'stock', unit: 'm²', scale: 1e-6 } };
  expect(verdictWords({ ...plan, cost: 5e6, bound: 4e6 }, area)).toBe(
    'Not proven: a better plan could save at most 1 m² to buy (20 %).',
  );
});

test('stock without a price is told so, and a new line has none', () => {
  const line = firstLine({ id: 'ply', kind: 'sheet', name: 'Ply', thickness: 12 }, 'a');
  expect(priceWords(line, 'EUR')).toBe('no price known');
  expect(priceWords({ ...line, price: 0 }, 'EUR')).toBe('0.00 EUR');
  expect(priceWords({ ...line, owned: true }, 'EUR')).toBe('on the rack');
});

test('the gap closes from 0 to 1 and never shows more than is known', () => {
  expect(closeness(100, 80)).toBe(0.8);
  expect(closeness(Number.NaN, 80)).toBe(0);
  expect(closeness(100, null)).toBe(0);
  expect(closeness(0, 0)).toBe(1);
});

test('an id is taken once only', () => {
  expect(freshId('Birch plywood 12', [])).toBe('birch-plywood-12');
  expect(freshId('Birch plywood 12', ['birch-plywood-12'])).toBe('birch-plywood-12-2');
  expect(freshId('Ø ∞', [])).toBe('item');
});

test('minutes are shown in hours once there are any', () => {
  expect(minutesWords(50)).toBe('50 min');
  expect(minutesWords(60)).toBe('1 h');
  expect(minutesWords(85.2)).toBe('1 h 25 min');
});

test('every file has its place in the list, what is printed first', () => {
  const paths = ['cutting/ply-1.svg', 'cutting.pdf', 'router/A1.dxf', 'parts.csv', 'labels.pdf', 'odd.bin'];
  const groups = groupFiles(paths.map((path) => ({ path, content: '' })));
  expect(groups.flatMap((group) => group.files.map((file) => file.path)).sort()).toEqual([...paths].sort());
  expect(groups[0]?.files.map((file) => file.path)).toEqual(['cutting.pdf', 'cutting/ply-1.svg']);
  expect(groups.at(-1)?.title).toBe('Other files');
});

test('all files packed in one come out again as they were, with the same bytes each time', () => {
  const files = [
    { path: 'parts.csv', content: 'part,length\r\nA1,700\r\n' },
    { path: 'cutting/ply-1.svg', content: new Uint8Array([1, 2, 3]) },
  ];
  const packed = packFiles('Curlew', files).content as Uint8Array;
  const unpacked = unzipSync(packed);
  expect(strFromU8(unpacked['parts.csv'] as Uint8Array)).toBe(files[0]?.content);
  expect(unpacked['cutting/ply-1.svg']).toEqual(files[1]?.content);
  expect(packFiles('Curlew', files).content).toEqual(packed);
});

test('what is taken along of one kind stands in one line', () => {
  const things = ['stock: Oak', 'tape', 'fixings for A', 'stock: Birch', 'fixings for B'];
  expect(joinAlike(things)).toEqual(['stock: Oak; Birch', 'tape', 'fixings for A, B']);
  expect(joinAlike(['A2', 'tape', 'A1', 'A3', 'B1'])).toEqual(['parts A1 to A3, B1', 'tape']);
});

test('every kind of piece is offered once, and only a frame waits for its opening', () => {
  const offered = kindGroups.flatMap(({ kinds }) => kinds);
  expect([...offered].sort()).toEqual([...pieceKinds].sort());
  expect(offered.filter((kind) => lacksShape(kind, newProject('Boat')))).toEqual(['door-frame']);
});

test('what the rack lacks for a piece is named with what it is for', () => {
  expect(nothingFits('flat-door', []).message).toBe(
    'Flat door: the rack has nothing yet to make it of. It wants solid timber (Lippings) and a sheet (Sheet).',
  );
  const oak = { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn' } as const;
  expect(nothingFits('flat-door', [oak]).message).toContain('It wants a sheet (Sheet).');
});

test('the parts that a step changed are counted by piece, a new piece not at all', () => {
  const change = (part: string, kind: PartChange['kind'] = 'size') =>
    ({ part, kind, name: 'Part' }) as PartChange;
  const built = { letter: 'A', parts: [{ id: 'A1' }, { id: 'A2' }] } as unknown as BuiltPiece;
  expect(countChanges([change('A1'), change('A1', 'joints'), change('AC1')], built)).toBe(
    '1 part here and 1 of other pieces',
  );
  expect(countChanges([change('A1', 'added'), change('A2', 'added')], built)).toBe('');
  expect(countChanges([], built)).toBe('');
});
