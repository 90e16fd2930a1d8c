import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjustSurvey, checkAdjustment } from '#core/measuring';
import type { Reading, Survey } from '#core/measuring';

const names = [
  ['BL', 'BR', 'TR', 'TL'],
  ['A', 'B', 'C'],
  ['BL', 'BR', 'TR', 'TL', 'A', 'B', 'C', ''],
] as const;
const odd = fc.constantFrom(NaN, 0, -5, 1e9, 1e-9, Infinity, 50, 100, 150);
const usual = fc.integer({ min: 4000, max: 20000 }).map((tenths) => tenths / 10);
const value = fc.oneof({ weight: 8, arbitrary: usual }, { weight: 1, arbitrary: odd });
const sigma = fc.oneof(
  { weight: 8, arbitrary: fc.constant(undefined) },
  { weight: 1, arbitrary: fc.constantFrom(0, NaN, 1e-12, 0.1, 50, 1e9) },
);

function reading(points: readonly string[]): fc.Arbitrary<Omit<Reading, 'id'>> {
  const point = fc.constantFrom(...points);
  const edge = fc.tuple(point, point);
  const base = {
    value,
    sigma,
    toConfirm: fc.option(value, { nil: undefined, freq: 20 }),
    repeats: fc.option(fc.array(value, { maxLength: 3 }), { nil: undefined, freq: 6 }),
  };
  const line = (kind: 'distance' | 'plumb' | 'level' | 'bow') =>
    fc.record({ ...base, kind: fc.constant(kind), from: point, to: point });
  const at = fc.constantFrom(0, 1 / 3, 0.5, 1, 2, NaN);
  const width = fc.record({ ...base, kind: fc.constant('width' as const), left: edge, right: edge, at });
  const offset = fc.record({ ...base, kind: fc.constant('offset' as const), point, from: point, to: point });
  const turn = fc.oneof(fc.integer({ min: -360, max: 360 }), odd);
  const angle = fc.record({
    ...base,
    kind: fc.constant('angle' as const),
    at: point,
    from: point,
    to: point,
    value: turn,
  });
  const station = fc.oneof({ weight: 8, arbitrary: usual }, { weight: 1, arbitrary: odd });
  const ordinate = fc.record({
    ...{ ...base, kind: fc.constant('ordinate' as const) },
    ...{ point, from: point, to: point, station },
  });
  const board = fc.constantFrom('1', '2', '');
  const reach = fc.option(fc.constantFrom(0, 1, 3, -1, NaN), { nil: undefined });
  const tick = fc.record({ ...base, kind: fc.constant('tick' as const), board, point, station, reach });
  const twist = fc.record({ ...base, kind: fc.constant('twist' as const), first: edge, second: edge });
  const place = fc.constantFrom('head', ' ');
  const thickness = fc.record({ ...base, kind: fc.constant('thickness' as const), place });
  const kinds = [line('distance'), line('distance'), line('plumb'), line('level'), line('bow'), width];
  return fc.oneof(...kinds, offset, angle, ordinate, tick, tick, twist, thickness) as fc.Arbitrary<
    Omit<Reading, 'id'>
  >;
}

const coordinate = fc.oneof(usual, odd);
const surveys: fc.Arbitrary<Survey> = fc.constantFrom(...names).chain((points) => {
  const known = fc.record({ id: fc.constantFrom(...points), x: coordinate, y: coordinate });
  return fc.record({
    seenFrom: fc.constant('from the quay'),
    readings: fc
      .array(reading(points), { maxLength: 13 })
      .map((readings) => readings.map((each, k) => ({ ...each, id: `r${k === 12 ? 0 : k}` }) as Reading)),
    fixed: fc.option(fc.array(known, { maxLength: 3 }), { nil: undefined, freq: 4 }),
    datum: fc.constantFrom(undefined, 'first' as const, 'free' as const),
  }) as fc.Arbitrary<Survey>;
});

/** Every number in an answer, wherever it lies. */
function numbersIn(answer: unknown): number[] {
  if (typeof answer === 'number') return [answer];
  if (answer === null || typeof answer !== 'object') return [];
  return Object.values(answer).flatMap(numbersIn);
}

describe('whatever is entered', () => {
  test('always: comes back as finite numbers and whole sentences, and the answer holds', () => {
    fc.assert(
      fc.property(surveys, (survey) => {
        const { adjustment, shape } = adjustSurvey(survey);
        for (const number of [...numbersIn(adjustment), ...numbersIn(shape)])
          expect(Number.isFinite(number)).toBe(true);
        for (const { message, remedy } of adjustment.findings) {
          expect(message).toMatch(/[.!?]$/);
          expect(remedy).toMatch(/[.!?]$/);
          expect(message).not.toMatch(/undefined|\[object/);
        }
        const wrong = checkAdjustment(survey, adjustment).filter(
          ({ message }) => !message.includes('fit the readings better'),
        );
        expect(wrong).toEqual([]);
      }),
      { numRuns: 250 },
    );
  });
});

describe('degenerate sets end in sentences', () => {
  const seenFrom = 'from the quay';
  const distance = (from: string, to: string, length: number, id = `${from}${to}`): Reading => ({
    ...{ id, from, to, value: length },
    kind: 'distance',
  });
  const told = (readings: readonly Reading[]) => adjustSurvey({ seenFrom, readings }).adjustment;
  const codes = (readings: readonly Reading[]) => told(readings).findings.map(({ code }) => code);

  test('three points in a line: they can be told apart no further', () => {
    const adjustment = told([distance('A', 'B', 1000), distance('B', 'C', 500), distance('A', 'C', 1500)]);
    expect(adjustment.points.find(({ id }) => id === 'B')?.x).toBeCloseTo(1000, 3);
    expect(adjustment.undetermined.join(' ')).toMatch(/C/);
  });

  test('lengths that make no triangle contradict each other', () => {
    expect(codes([distance('A', 'B', 1000), distance('B', 'C', 300), distance('A', 'C', 400)])).toContain(
      'no-such-shape',
    );
  });

  test('one point alone, named by an angle from itself, or by nothing', () => {
    expect(codes([distance('A', 'A', 100)])).toContain('ends-alike');
    const one = told([{ id: 't', kind: 'tick', board: '1', point: 'A', station: 10, value: 20 }]);
    expect(one.points.length).toBeLessThanOrEqual(1);
    expect(one.undetermined).toEqual(['Nothing is fixed yet: only point A is named.']);
  });

  test('the same reading entered twice under one name, or under two', () => {
    expect(codes([distance('A', 'B', 1000, 'x'), distance('A', 'B', 1001, 'x')])).toContain('id-twice');
    const two = told([distance('A', 'B', 900, 'x'), distance('B', 'A', 901, 'y')]);
    expect(two.points.find(({ id }) => id === 'B')?.x).toBeCloseTo(900.5, 6);
    expect(two.dof).toBe(1);
  });

  test('1e9 mm is refused with its number, nothing else is', () => {
    const adjustment = told([distance('A', 'B', 1000), distance('B', 'C', 1e9), distance('A', 'C', 900)]);
    expect(adjustment.findings[0]).toMatchObject({ code: 'reading-too-long', about: 'BC' });
    expect(adjustment.readings.map(({ id }) => id)).toEqual(['AB', 'AC']);
  });

  test('the largest of numbers is refused with it', () => {
    const adjustment = told([distance('A', 'B', 1000), distance('B', 'C', 1e308), distance('A', 'C', 900)]);
    expect(adjustment.findings[0]).toMatchObject({ code: 'reading-too-long', about: 'BC' });
    expect(adjustment.findings[0]?.message).toContain('1e+308 mm');
  });

  test('more points or readings than can be adjusted in good time are refused with their number, at once', () => {
    const chain = Array.from({ length: 5000 }, (_, i) => distance(`P${i}`, `P${i + 1}`, 100));
    const [points] = told(chain).findings;
    expect(points).toMatchObject({ severity: 'stop', code: 'survey-too-large' });
    expect(points?.message).toContain('names 5001 points; at most 500');
    const often = Array.from({ length: 2001 }, (_, i) => ({ ...distance('A', 'B', 100), id: `r${i}` }));
    expect(told(often).findings[0]?.message).toContain('has 2001 readings; at most 2000');
  });

  test('two groups that no reading joins are told apart, each by name', () => {
    const triangle = (a: string, b: string, c: string) => [
      ...[distance(a, b, 300), distance(b, c, 400), distance(a, c, 500)],
    ];
    const adjustment = told([...triangle('A', 'B', 'C'), ...triangle('P', 'Q', 'R')]);
    const found = adjustment.findings.find(({ code }) => code === 'readings-not-joined');
    expect(found?.message).toBe('No reading ties P, Q and R to A and B.');
    expect(adjustment.points.map(({ id }) => id)).toEqual(['A', 'B', 'C']);
  });

  test('a survey seen in a mirror is told by one reading with a side', () => {
    const square = (side: 1 | -1): readonly Reading[] => [
      ...[distance('A', 'B', 300), distance('B', 'C', 400), distance('A', 'C', 500)],
      { id: 'o', kind: 'offset', point: 'C', from: 'A', to: 'B', value: 400 * side },
    ];
    expect(told(square(1)).points.find(({ id }) => id === 'C')?.y).toBeCloseTo(400, 6);
    expect(told(square(-1)).points.find(({ id }) => id === 'C')?.y).toBeCloseTo(-400, 6);
  });

  test('NaN and nothing at all', () => {
    expect(codes([distance('A', 'B', NaN)])).toContain('reading-not-a-number');
    expect(codes([])).toContain('no-readings');
  });

  test('a large set of which half the points still swing is answered within seconds', () => {
    const chain = Array.from({ length: 120 }, (_, k) => distance(`p${k}`, `p${k + 1}`, 100 + k));
    const cross = Array.from({ length: 60 }, (_, k) => distance(`p${k}`, `p${k + 2}`, 150 + k));
    const adjustment = told([...chain, ...cross]);
    expect(adjustment.findings.map(({ code }) => code)).toContain('shape-undetermined');
    expect(adjustment.points.map(({ id }) => id)).toContain('p12');
    expect(adjustment.points.map(({ id }) => id)).not.toContain('p100');
    expect(adjustment.undetermined.at(-1)).toMatch(/^Still open as well: /);
  });
});
