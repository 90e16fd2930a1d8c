import { describe, expect, test } from 'vitest';

import {
  coefficientAtAngle,
  coefficientFromShrinkage,
  densityFromGravity,
  findSpecies,
  movement,
  movementFromShrinkage,
  sheetGoods,
  plywoodLimits,
  speciesTable,
  ultimateWithdrawalN,
  weigh,
  woodScrews,
} from '#core/materials';

const inch = 25.4;

function species(name: string) {
  const found = findSpecies(name);
  if (!found) throw new Error(`no ${name} in the table`);
  return found;
}

describe('movement of solid timber', () => {
  // Wood Handbook, FPL-GTR-190 (2010), p. 13-17: white fir flooring 232 mm wide, 8 to 11 %: 1.7 mm, to 233.7 mm.
  test('the white fir board of the handbook grows by 1.7 mm', () => {
    const growth = movement(232, species('Fir, white').tangential, 11 - 8);
    expect(growth).toBeCloseTo(1.7, 1);
    expect(232 + growth).toBeCloseTo(233.7, 1);
    expect(species('Fir, white').radial).toBe(0.00112);
  });

  // Hardwood Floors Magazine, 2016: red oak, 5 in wide, 3 % change, coefficient 0.00369: 0.055 in.
  test('the red oak board of a trade magazine moves by 0.055 in', () => {
    expect(movement(5 * inch, species('oak, northern red').tangential, 3) / inch).toBeCloseTo(0.055, 3);
  });

  // flooringartists.com/dimensional-change: mesquite, 5 in, 6 to 9 %, 0.00129: 0.019 in.
  test('the mesquite board of a flooring guide moves by 0.019 in', () => {
    expect(movement(5 * inch, 0.00129, 3) / inch).toBeCloseTo(0.019, 3);
  });

  // German annex of Eurocode 5, Table NA.7: 0.25 % per percent across the grain; 100 mm and 10 % give 2.5 mm.
  test('softwood by the rule of the code moves by 2.5 mm on 100', () => {
    expect(movement(100, 0.0025, 10)).toBeCloseTo(2.5, 9);
  });

  // EN 1313-1:2010, clause 5: 0.25 % smaller per percent below 20 %: 100 mm at 20 % is 98.0 mm at 12 %.
  test('sawn softwood measured at 20 % is 98 mm at 12 %', () => {
    expect(100 + movement(100, 0.0025, 12 - 20)).toBeCloseTo(98, 9);
  });

  // Wood Handbook Eq. 13-3 against Eq. 13-2 on the same boards, computed independently.
  test('the long formula agrees with the short one to about a percent', () => {
    expect(movementFromShrinkage(232, 7, 8, 11)).toBeCloseTo(1.712, 3);
    expect(movementFromShrinkage(100, 9.9, 12, 6)).toBeCloseTo(-2.105, 3);
    expect(movement(100, species('Maple, sugar (hard)').tangential, -6)).toBeCloseTo(-2.118, 3);
  });

  // Wood Handbook Table 4-3 (shrinkage) and Table 13-5 (coefficients): pairs as printed for the same species.
  test.each([
    ['white ash', 4.9, 0.00169],
    ['white ash', 7.8, 0.00274],
    ['American beech', 11.9, 0.00431],
    ['black walnut', 5.5, 0.0019],
    ['black walnut', 7.8, 0.00274],
    ['black cherry', 7.1, 0.00248],
  ])('the coefficient of %s follows from its shrinkage of %d %%', (_, shrinkage, coefficient) => {
    expect(coefficientFromShrinkage(shrinkage)).toBeCloseTo(coefficient, 5);
  });

  test('between flat-sawn and quarter-sawn the movement lies between', () => {
    expect(coefficientAtAngle(0.0016, 0.0036, 0)).toBe(0.0036);
    expect(coefficientAtAngle(0.0016, 0.0036, Math.PI / 2)).toBeCloseTo(0.0016, 12);
    expect(coefficientAtAngle(0.0016, 0.0036, Math.PI / 4)).toBeCloseTo(0.0026, 12);
  });
});

describe('the tables', () => {
  test('every species has sense in it: tangential above radial, density and stiffness of wood', () => {
    expect(speciesTable.length).toBeGreaterThanOrEqual(25);
    expect(new Set(speciesTable.map((each) => each.name)).size).toBe(speciesTable.length);
    for (const each of speciesTable) {
      expect(each.tangential).toBeGreaterThan(each.radial);
      expect(each.radial).toBeGreaterThan(0.0005);
      expect(each.density).toBeGreaterThan(300);
      expect(each.density).toBeLessThan(800);
      expect(each.modulus).toBeGreaterThan(7000);
      expect(each.movementSource).not.toBe('');
      expect(each.densitySource).not.toBe('');
    }
  });

  // Wood Handbook ch. 4 (basis of Table 4-6): 12 % moisture, gravity .40 -> 448, .55 -> 616, .68 -> 762 kg/m³.
  test.each([
    [0.4, 448],
    [0.5, 560],
    [0.55, 616],
    [0.6, 672],
    [0.68, 762],
  ])('gravity %d at 12 %% weighs %d kg/m³', (gravity, density) => {
    expect(Math.round(densityFromGravity(gravity, 12))).toBe(density);
  });

  // Data sheet of a birch plywood maker: mass of a sheet of 1220 × 2440 mm in kg, by nominal thickness.
  test.each([
    [4, 7.9],
    [6.5, 13],
    [9, 19],
    [12, 24.8],
    [15, 30.8],
    [18, 36.7],
    [24, 48.6],
    [30, 60],
  ])('a sheet of %d mm birch plywood weighs what its maker says', (nominal, kilograms) => {
    const sheet = sheetGoods.find((each) => each.kind === 'birch plywood' && each.nominal === nominal);
    // The maker reckons with the nominal thickness.
    const mass = weigh({ length: 2440, width: 1220, thickness: nominal }, sheet?.density ?? 0);
    expect(Math.abs(mass - kilograms)).toBeLessThan(0.06);
  });

  // EN 315 limits as a mill prints them, cut to 0.1 mm, from 12 mm up: 12 +0.5/-0.7, 18 +0.7/-0.9, 24 +0.9/-1.1.
  test.each([
    [12, 0.7, 0.5],
    [18, 0.9, 0.7],
    [24, 1.1, 0.9],
  ])('plywood of %d mm may be %d thinner and %d thicker', (nominal, below, above) => {
    const limits = plywoodLimits(nominal);
    expect(Math.floor((nominal - limits.min) * 10 + 1e-9) / 10).toBe(below);
    expect(Math.floor((limits.max - nominal) * 10 + 1e-9) / 10).toBe(above);
  });

  // Published table of gauges: No. 8 is 4.17 mm, No. 14 is 6.15 mm.
  test('screw gauges are as thick as published', () => {
    expect(woodScrews.find((each) => each.gauge === 8)?.shank).toBeCloseTo(4.17, 2);
    expect(woodScrews.find((each) => each.gauge === 14)?.shank).toBeCloseTo(6.15, 2);
  });

  // Wood Handbook ch. 8 in inches and pounds: 15 700 G² D L; a No. 8 screw, gravity .55, one inch of thread.
  test('withdrawal agrees with the formula in pounds', () => {
    const pounds = 15700 * 0.55 ** 2 * (4.17 / inch) * (25 / inch);
    expect(ultimateWithdrawalN(0.55, 4.17, 25) / (pounds * 4.44822)).toBeCloseTo(1, 3);
  });
});
