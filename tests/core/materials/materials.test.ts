import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  coatingLitres,
  coatings,
  equilibriumMoisture,
  filmOf,
  findSpecies,
  movement,
  pilotDiameter,
  potLifeMinutes,
  weigh,
  woodScrews,
} from '#core/materials';

describe('materials', () => {
  test('a species is found whatever its capitals, and an unknown one is not', () => {
    expect(findSpecies('oak, european')?.density).toBe(706);
    expect(findSpecies('Unobtainium')).toBeNull();
  });

  test('a cubic metre weighs its density', () => {
    expect(weigh({ length: 1000, width: 1000, thickness: 1000 }, 706)).toBeCloseTo(706, 9);
  });

  // Published worked example (technical note 5.3 of a paint maker): 65 % solids at 125 µm spread 5.2 m² per litre.
  test('a litre of 65 % solids covers 5.2 m² at 125 µm', () => {
    expect(coatingLitres({ areaM2: 5.2, film: 0.125, solidsPercent: 65, loss: 0 })).toBeCloseTo(1, 9);
  });

  test('four coats of varnish leave the film that gaps are planned with', () => {
    const varnish = coatings.find((coating) => coating.name.startsWith('Spar varnish'));
    expect(varnish && filmOf(varnish, 4)).toBeCloseTo(0.16, 9);
  });

  // Three epoxy suppliers: pot life halves per 10 °C more. 30 minutes at 25 °C are 60 at 15 °C and 15 at 35 °C.
  test('pot life doubles in the cold and halves in the heat', () => {
    const at20 = 30 * Math.SQRT2;
    expect(potLifeMinutes(at20, 15)).toBeCloseTo(60, 9);
    expect(potLifeMinutes(at20, 35)).toBeCloseTo(15, 9);
  });

  test('a pilot hole is smaller than the root and larger in hardwood', () => {
    for (const screw of woodScrews) {
      expect(pilotDiameter(screw, 'softwood')).toBeLessThan(pilotDiameter(screw, 'hardwood'));
      expect(pilotDiameter(screw, 'hardwood')).toBeLessThan(screw.root);
      expect(screw.root).toBeLessThan(screw.shank);
    }
  });

  test('always: damper air makes wood wetter, and there and back is no movement', () => {
    const humidity = fc.double({ min: 5, max: 90, noNaN: true });
    fc.assert(
      fc.property(humidity, humidity, fc.double({ min: 0, max: 50, noNaN: true }), (a, b, celsius) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        const change = equilibriumMoisture(high, celsius) - equilibriumMoisture(low, celsius);
        expect(change).toBeGreaterThanOrEqual(0);
        expect(movement(100, 0.0036, change) + movement(100, 0.0036, -change)).toBeCloseTo(0, 12);
      }),
    );
  });
});
