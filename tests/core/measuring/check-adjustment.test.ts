import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjustSurvey, checkAdjustment, openingChecklist } from '#core/measuring';
import type { Adjustment, Reading, Survey } from '#core/measuring';
import { makeRandom } from '#core/numerics';
import { readOpening, workedCase } from './openings.ts';

const survey: Survey = { seenFrom: 'from the saloon, looking forward', readings: readOpening(workedCase) };
const { adjustment } = adjustSurvey(survey);

function tamper(change: Partial<Adjustment>): readonly string[] {
  return checkAdjustment(survey, { ...adjustment, ...change }).map(({ message }) => message);
}

describe('an adjustment is checked by code that does not trust it', () => {
  test('the worked case passes', () => {
    expect(checkAdjustment(survey, adjustment)).toEqual([]);
  });

  test('a corner moved by a hundredth of a millimetre is noticed', () => {
    const points = adjustment.points.map((point) =>
      point.id === 'TR' ? { ...point, x: point.x + 0.01 } : point,
    );
    expect(tamper({ points }).length).toBeGreaterThan(0);
  });

  test('a residual, a redundancy and a tilt that do not add up are noticed', () => {
    const bend = (change: object) => adjustment.readings.map((r, k) => (k === 0 ? { ...r, ...change } : r));
    expect(tamper({ readings: bend({ residual: 1 }) })[0]).toContain('residual');
    expect(tamper({ readings: bend({ redundancy: 0.9 }) })[0]).toContain('redundancies');
    expect(tamper({ tilt: 1 })[0]).toContain('points given');
    expect(tamper({ readings: bend({ id: 'ghost' }) })[0]).toContain('never given');
  });

  test('a shape that shows its own figures but is not the best is noticed', () => {
    // Another survey's answer, dressed as the answer to this one: consistent in itself, but not least squares.
    const other = adjustSurvey({ ...survey, readings: readOpening({ ...workedCase, wt: 640 }) }).adjustment;
    const readings = other.readings.map((r) => {
      const value = workedCase[r.id as keyof typeof workedCase];
      return { ...r, value, residual: value - r.adjusted };
    });
    expect(checkAdjustment(survey, { ...other, readings })[0]?.message).toContain(
      'would fit the readings better',
    );
  });

  test('always: what the adjustment answers passes, whatever was read and in whatever order', () => {
    const keys = openingChecklist.map(({ key }) => key);
    fc.assert(
      fc.property(fc.shuffledSubarray(keys, { minLength: 1 }), fc.integer(), (chosen, seed) => {
        const random = makeRandom(seed);
        const readings: readonly Reading[] = chosen.flatMap((key) =>
          readOpening({ [key]: workedCase[key] + 3 * random.normal() }),
        );
        const given = { ...survey, readings };
        expect(checkAdjustment(given, adjustSurvey(given).adjustment)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});

describe('an opening with points beside its corners', () => {
  test('keeps left on the left, whatever was measured first', () => {
    const extra: readonly Reading[] = [
      { id: 'm1', kind: 'distance', from: 'BL', to: 'M', value: 873, sigma: 0.5 },
      { id: 'm2', kind: 'distance', from: 'TL', to: 'M', value: 873, sigma: 0.5 },
      { id: 'm3', kind: 'distance', from: 'BR', to: 'M', value: 1082, sigma: 0.5 },
    ];
    const first = readOpening({ hl: workedCase.hl });
    const rest = readOpening(workedCase).filter(({ id }) => id !== 'hl');
    const { shape } = adjustSurvey({ ...survey, readings: [...first, ...rest, ...extra] });
    expect(shape?.points['BR']?.y).toBe(0);
    expect(shape?.points['TL']?.y).toBeCloseTo(1745.8, 0);
    expect(shape?.points['M']?.x).toBeLessThan(20);
    expect(shape?.edges.map(({ name }) => name)).toEqual(['sill', 'right jamb', 'head', 'left jamb']);
  });
});
