import { describe, expect, test } from 'vitest';

import { equilibriumMoisture } from '#core/materials';

/**
 * Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190 (2010), Table 4-2: moisture content of wood in percent at
 * relative humidity (row, percent) and temperature (column, degrees Fahrenheit). Public domain. Read in a copy on a
 * timber merchant's site, in which 20 % at 110 °F is misprinted as 3.0.
 */
const fahrenheit = [30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130];
const table: readonly (readonly [number, readonly number[]])[] = [
  [5, [1.4, 1.4, 1.4, 1.3, 1.3, 1.3, 1.2, 1.2, 1.1, 1.1, 1.0]],
  [10, [2.6, 2.6, 2.6, 2.5, 2.5, 2.4, 2.3, 2.3, 2.2, 2.1, 2.0]],
  [15, [3.7, 3.7, 3.6, 3.6, 3.5, 3.5, 3.4, 3.3, 3.2, 3.0, 2.9]],
  [20, [4.6, 4.6, 4.6, 4.6, 4.5, 4.4, 4.3, 4.2, 4.0, 3.9, 3.7]],
  [25, [5.5, 5.5, 5.5, 5.4, 5.4, 5.3, 5.1, 5.0, 4.9, 4.7, 4.5]],
  [30, [6.3, 6.3, 6.3, 6.2, 6.2, 6.1, 5.9, 5.8, 5.6, 5.4, 5.2]],
  [35, [7.1, 7.1, 7.1, 7.0, 6.9, 6.8, 6.7, 6.5, 6.3, 6.1, 5.9]],
  [40, [7.9, 7.9, 7.9, 7.8, 7.7, 7.6, 7.4, 7.2, 7.0, 6.8, 6.6]],
  [45, [8.7, 8.7, 8.7, 8.6, 8.5, 8.3, 8.1, 7.9, 7.7, 7.5, 7.2]],
  [50, [9.5, 9.5, 9.5, 9.4, 9.2, 9.1, 8.9, 8.7, 8.4, 8.2, 7.9]],
  [55, [10.4, 10.4, 10.3, 10.2, 10.1, 9.9, 9.7, 9.5, 9.2, 8.9, 8.7]],
  [60, [11.3, 11.3, 11.2, 11.1, 11.0, 10.8, 10.5, 10.3, 10.0, 9.7, 9.4]],
  [65, [12.4, 12.3, 12.3, 12.1, 12.0, 11.7, 11.5, 11.2, 11.0, 10.6, 10.3]],
  [70, [13.5, 13.5, 13.4, 13.3, 13.1, 12.9, 12.6, 12.3, 12.0, 11.7, 11.3]],
  [75, [14.9, 14.9, 14.8, 14.6, 14.4, 14.2, 13.9, 13.6, 13.2, 12.9, 12.5]],
  [80, [16.5, 16.5, 16.4, 16.2, 16.0, 15.7, 15.4, 15.1, 14.7, 14.4, 14.0]],
  [85, [18.5, 18.5, 18.4, 18.2, 17.9, 17.7, 17.3, 17.0, 16.6, 16.2, 15.8]],
];

/** Half of the last digit printed, and the misfit between the formula's two unit sets. */
const printed = 0.07;

describe('moisture of wood at rest in air', () => {
  test.each(table)(
    '%d % humidity agrees with the handbook at all eleven temperatures',
    (humidity, values) => {
      expect(values).toHaveLength(fahrenheit.length);
      values.forEach((value, column) => {
        const celsius = ((fahrenheit[column] ?? NaN) - 32) / 1.8;
        expect(Math.abs(equilibriumMoisture(humidity, celsius) - value)).toBeLessThan(printed);
      });
    },
  );

  // A second table that owes nothing to the formula, 20 °C: German flooring trade (massivholzdielen); agrees within half a percent up to 80 %.
  test.each([
    [25, 5],
    [30, 5.9],
    [40, 7.5],
    [50, 9],
    [55, 9.9],
    [60, 10.8],
    [65, 11.8],
    [70, 13],
    [80, 16],
  ])('at 20 °C and %d %% it is near the %d %% of a table of the flooring trade', (humidity, value) => {
    expect(Math.abs(equilibriumMoisture(humidity, 20) - value)).toBeLessThan(0.5);
  });

  // Rulebook examples (heated shop, boat in use, boat laid up and the handbook's checks), computed independently.
  test.each([
    [45, 20, 8.49],
    [50, 21.1, 9.24],
    [65, 21.1, 11.96],
    [70, 15, 13.3],
    [80, 12, 16.33],
    [80, 21.1, 15.99],
  ])('%d %% at %d °C gives %d %%', (humidity, celsius, value) => {
    expect(equilibriumMoisture(humidity, celsius)).toBeCloseTo(value, 2);
  });
});
