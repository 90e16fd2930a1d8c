import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjustSurvey, checkAdjustment } from '#core/measuring';
import type { Reading } from '#core/measuring';

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
  const kinds = [line('distance'), line('distance'), line('plumb'), line('level'), line('bow'), width];
  return fc.oneof(...kinds, offset, angle) as fc.Arbitrary<Omit<Reading, 'id'>>;
}

const surveys = fc
  .constantFrom(...names)
  .chain((points) => fc.array(reading(points), { maxLength: 13 }))
  .map((readings) => readings.map((each, k) => ({ ...each, id: `r${k === 12 ? 0 : k}` }) as Reading));

/** Every number in an answer, wherever it lies. */
function numbersIn(answer: unknown): number[] {
  if (typeof answer === 'number') return [answer];
  if (answer === null || typeof answer !== 'object') return [];
  return Object.values(answer).flatMap(numbersIn);
}

describe('whatever is entered', () => {
  test('always: comes back as finite numbers and whole sentences, and the answer holds', () => {
    fc.assert(
      fc.property(surveys, (readings) => {
        const survey = { seenFrom: 'from the quay', readings };
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
