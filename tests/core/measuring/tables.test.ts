import { describe, expect, test } from 'vitest';
import type { Shape } from '#core/geometry';
import {
  adjustSurvey,
  checkSurvey,
  edgeUncertainty,
  makeOpeningReading,
  methods,
  openingChecklist,
  openingKeyOf,
  pointUncertainty,
  readingWords,
  sigmaOf,
  spanUncertainty,
} from '#core/measuring';
import type { Method, Reading } from '#core/measuring';
import { readOpening, workedCase } from './openings.ts';

const seenFrom = 'from the saloon, looking forward';

describe('methods of measuring (joinery A1)', () => {
  test.each([
    ['M1', 641, 0.5],
    ['M1', 1000, 0.5],
    ['M1', 1752, 0.7],
    ['M2', 641, 1],
    ['M3', 1868, 0.3],
    ['M4', 80, 0.2],
    ['M5', 18, 0.05],
  ] as const)('%s over %d mm is good to %d mm', (method, value, sigma) => {
    expect(sigmaOf({ id: 'a', kind: 'distance', from: 'A', to: 'B', value, method })).toBe(sigma);
  });

  test('all fourteen have words, a use and an accuracy', () => {
    const names = Array.from({ length: 14 }, (_, k) => `M${k + 1}` as Method);
    expect(Object.keys(methods)).toEqual(names);
    for (const name of names) {
      expect(methods[name].words.length).toBeGreaterThan(3);
      expect(methods[name].sigma(500)).toBeGreaterThan(0);
    }
  });

  test('without sigma and method a reading counts as taped; a given sigma goes before the method', () => {
    const reading: Reading = { id: 'a', kind: 'distance', from: 'A', to: 'B', value: 1200 };
    expect(sigmaOf(reading)).toBe(0.7);
    expect(sigmaOf({ ...reading, method: 'M3', sigma: 2 })).toBe(2);
  });

  test('a plumb reading is 1 mm per metre of the height it runs over', () => {
    const readings = (['wb', 'wt', 'hl', 'hr', 'd1', 'd2', 'pl'] as const).map((key) =>
      makeOpeningReading(key, workedCase[key]),
    );
    const { adjustment } = adjustSurvey({ seenFrom, readings });
    expect(adjustment.readings.find(({ id }) => id === 'pl')?.sigma).toBeCloseTo(1.746, 9);
    expect(adjustment.readings.find(({ id }) => id === 'hl')?.sigma).toBe(0.7);
  });
});

describe('the checklist of an opening', () => {
  test('names the twelve readings of joinery A3 in the order of one visit, each with its place', () => {
    expect(openingChecklist.map(({ key }) => key).join(' ')).toBe('wb w13 w23 wt hl hr d1 d2 pl pr ls lh');
    for (const { where, words } of openingChecklist) expect(`${words} ${where}`).toMatch(/^[a-z].*\.$/);
  });

  test('a reading made for a line is recognised as that line, from either end', () => {
    for (const { key } of openingChecklist) {
      const reading = makeOpeningReading(key, 100, { id: `my-${key}`, toFace: 'lining' });
      expect(openingKeyOf(reading)).toBe(key);
      expect(reading).toMatchObject({ id: `my-${key}`, value: 100, toFace: 'lining' });
      if ('from' in reading)
        expect(openingKeyOf({ ...reading, from: reading.to, to: reading.from })).toBe(key);
    }
    expect(openingKeyOf({ id: 'x', kind: 'distance', from: 'A', to: 'B', value: 1 })).toBeNull();
  });

  test('a width counted from the head is the one seen from the sill', () => {
    const reading: Reading = {
      id: 'w',
      kind: 'width',
      left: ['TL', 'BL'],
      right: ['TR', 'BR'],
      at: 1 / 3,
      value: 637,
    };
    expect(openingKeyOf(reading)).toBe('w23');
    expect(readingWords(reading)).toBe('width at two thirds w');
  });

  test('a full set has nothing to check', () => {
    expect(checkSurvey({ seenFrom, readings: readOpening(workedCase) })).toEqual([]);
  });
});

describe('uncertainty', () => {
  const shape = adjustSurvey({ seenFrom, readings: readOpening(workedCase) }).shape;
  if (!shape) throw new Error('no shape');

  test('of a point in a direction is two sigma, and nothing where the datum holds it', () => {
    expect(Math.abs(pointUncertainty(shape, 'TL', { x: 1, y: 0 }) - 2.6)).toBeLessThan(0.05);
    expect(pointUncertainty(shape, 'TL', { x: 0, y: 5 })).toBeCloseTo(0.81, 2);
    expect(pointUncertainty(shape, 'BL', { x: 1, y: 1 })).toBe(0);
  });

  test('of a way between points is less than of each where they move together', () => {
    const across = spanUncertainty(shape, ['TL', 'TR'], { x: 1, y: 0 });
    expect(across).toBeLessThan(0.9);
    expect(across).toBeGreaterThan(0.5);
    expect(spanUncertainty(shape, ['TR', 'TL'], { x: -1, y: 0 })).toBeCloseTo(across, 12);
  });

  test('of an edge does not depend on where the coordinates begin', () => {
    const head = { name: 'head', from: 'TR', to: 'TL' };
    const sill = { name: 'sill', from: 'BL', to: 'BR' };
    const upsideDown = [
      ...readOpening({ wt: workedCase.wt }),
      ...readOpening(workedCase).filter(({ id }) => id !== 'wt'),
    ];
    const renamed = upsideDown.map((reading) => rename(reading));
    const other = adjustSurvey({ seenFrom, readings: renamed }).shape;
    if (!other) throw new Error('no shape');
    for (const edge of [head, sill]) {
      const there = { ...edge, from: `${edge.from}*`, to: `${edge.to}*` };
      expect(edgeUncertainty(other, there)).toBeCloseTo(edgeUncertainty(shape, edge), 3);
    }
    expect(edgeUncertainty(shape, sill)).toBeGreaterThan(0.1);
    expect(pointUncertainty(other, 'TL*', { x: 0, y: 1 })).not.toBeCloseTo(0.81, 1);
  });

  test('an edge that the shape does not have is our mistake', () => {
    expect(() => edgeUncertainty(shape as Shape, { name: 'roof', from: 'X', to: 'Y' })).toThrow('roof');
  });
});

/** The same reading between starred points, so that it is no opening and begins at its head. */
function rename(reading: Reading): Reading {
  if ('from' in reading) return { ...reading, from: `${reading.from}*`, to: `${reading.to}*` };
  if (reading.kind !== 'width') return reading;
  const star = ([a, b]: readonly [string, string]) => [`${a}*`, `${b}*`] as const;
  return { ...reading, left: star(reading.left), right: star(reading.right) };
}

describe('slips of a few millimetres with a fine method', () => {
  const fine = (changes: Partial<typeof workedCase>) => {
    const clean = adjustSurvey({ seenFrom, readings: readOpening(workedCase) }).adjustment.readings;
    const readings = clean.flatMap(({ id, adjusted }) => {
      const key = id as keyof typeof workedCase;
      const change = changes[key] ?? 0;
      return [makeOpeningReading(key, adjusted + change, { sigma: 0.1 })];
    });
    return adjustSurvey({ seenFrom, readings }).adjustment.suspects;
  };

  // joinery A5 E8: 5 degrees on 640 gives +2.4, always plus; E9: 20 mm sag on 1800 gives +0.6.
  test('a width held askew by five degrees', () => {
    expect(fine({ wt: 2.4 })[0]).toMatchObject({ id: 'wt', mistake: 'E8' });
    expect(fine({ wt: -2.4 })[0]?.mistake).toBeUndefined();
  });

  test('a sagging tape up the jamb', () => {
    const [suspect] = fine({ hr: 1.4 });
    expect(suspect).toMatchObject({ id: 'hr', mistake: 'E9' });
    expect(suspect?.cause).toContain('30');
  });

  test('a width between that disagrees with its ends may be a bowed side', () => {
    const [suspect] = fine({ w13: -4 });
    expect(suspect).toMatchObject({ id: 'w13', mistake: 'E14' });
  });
});
