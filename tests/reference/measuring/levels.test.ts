import { describe, expect, test } from 'vitest';
import { suspectLimit } from '#core/numerics';
import { adjustNetwork } from '../../../src/core/measuring/adjust-network.ts';
import type { Network } from '../../../src/core/measuring/network.ts';
import type { AnalysedFit } from '../../../src/core/measuring/solve.ts';
import { covarianceOf } from '../../../src/core/measuring/solve.ts';
import { levelNetworks } from './published-levels.ts';
import type { LevelNetwork } from './published-levels.ts';

type Rise = LevelNetwork['rises'][number];

function networkOf(held: Readonly<Record<string, number>>, rises: readonly Rise[]): Network {
  const points = [...new Set(rises.flatMap(([from, to]) => [from, to]))];
  return {
    points,
    held: Object.fromEntries(
      points.map((name) => [name, { x: 0, ...(name in held ? { y: held[name] ?? 0 } : {}) }]),
    ),
    observations: rises.map(([from, to, value, sigma], k) => ({
      id: `${k}`,
      measure: 'level',
      terms: [
        [to, 1],
        [from, -1],
      ],
      value,
      sigma,
    })),
    tiltFree: false,
  };
}

const adjust = (held: Readonly<Record<string, number>>, rises: readonly Rise[]) =>
  adjustNetwork({ network: networkOf(held, rises), datum: null }).fit;
const height = (fit: AnalysedFit, name: string) => fit.position.points[name]?.y ?? NaN;
const columnOf = (fit: AnalysedFit, name: string) =>
  fit.unknowns.findIndex((u) => 'point' in u && u.point === name && u.axis === 'y');

describe('published levelling networks come out as printed', () => {
  test.each(levelNetworks.map((network) => [network.name, network] as const))('%s', (_, published) => {
    const fit = adjust(published.held, published.rises);
    expect(fit.dof).toBe(published.dof);
    for (const [name, [printed, deviation]] of Object.entries(published.printed)) {
      expect(Math.abs(height(fit, name) - printed), name).toBeLessThan(0.00006); // printed to 0.1 mm
      const variance = fit.analysis.variances[columnOf(fit, name)] ?? NaN;
      const posterior = 1000 * Math.sqrt((variance * fit.chi2) / fit.dof);
      expect(Math.abs(posterior - deviation), name).toBeLessThan(0.0051); // printed to 0.01 mm
    }
  });

  // W. Niemeier 2008, Ausgleichungsrechnung, 2nd ed., pp. 268-269: heights free, datum the mean of points 1, 3 and 5.
  test('Niemeier, free: the mean of three points is the datum', () => {
    const published = levelNetworks.find(({ name }) => name === 'Niemeier');
    if (!published) throw new Error('network missing');
    const approximate: Readonly<Record<string, number>> = { 1: 68.927, 3: 63.193, 5: 44.324 };
    const printed: Readonly<Record<string, readonly [number, number]>> = {
      ...{ 1: [68.9249, 1.75], 2: [60.7167, 1.65], 3: [63.1952, 1.13] },
      ...{ 4: [56.2852, 1.94], 5: [44.324, 1.6], 6: [67.2294, 2.0] },
    };
    const fit = adjust(published.held, published.rises);
    const marks = Object.keys(approximate);
    const shift =
      marks.reduce((sum, name) => sum + (approximate[name] ?? 0) - height(fit, name), 0) / marks.length;
    const table = covarianceOf(fit);
    const at = (a: string, b: string) => table[columnOf(fit, a)]?.[columnOf(fit, b)] ?? 0; // point 6 is held
    for (const [name, [h, deviation]] of Object.entries(printed)) {
      expect(Math.abs(height(fit, name) + shift - h), name).toBeLessThan(0.00006);
      const cross = marks.reduce((sum, mark) => sum + at(name, mark), 0) / marks.length;
      const own =
        marks.reduce((sum, a) => sum + marks.reduce((inner, b) => inner + at(a, b), 0), 0) /
        marks.length ** 2;
      const variance = at(name, name) - 2 * cross + own;
      const posterior = 1000 * Math.sqrt((variance * fit.chi2) / fit.dof);
      expect(Math.abs(posterior - deviation), name).toBeLessThan(0.0051);
    }
  });

  // E. M. Mikhail and F. Ackermann 1976, Observations and Least Squares, ex. 7.4, pp. 147-151; heights by a second program.
  test('Mikhail and Ackermann, example 7.4', () => {
    const rises = (
      [
        ['A', 'B', 25.42, 18.1],
        ['B', 'C', 10.34, 9.4],
        ['C', 'A', -35.2, 14.2],
        ['B', 'D', -15.54, 17.6],
        ['D', 'E', 21.32, 13.5],
        ['E', 'C', 4.82, 9.9],
        ['E', 'A', -31.02, 13.8],
        ['C', 'D', -26.11, 14.0],
      ] as const
    ).map(([from, to, rise, km]): Rise => [from, to, rise, Math.sqrt(0.1 * km)]);
    const fit = adjust({ A: 800 }, rises);
    const known = { B: 825.2206243279, C: 835.5354302206, D: 809.5339282167, E: 830.8460286989 };
    for (const [name, h] of Object.entries(known)) expect(height(fit, name)).toBeCloseTo(h, 9);
  });

  // J. Mahun, Least Squares Lite, ch. B.2 (jerrymahun.com): residuals printed in feet; Q is put at 0.
  test('Mahun, seven runs from four benchmarks', () => {
    const rises: readonly Rise[] = [
      ['A', 'Q', 8.91, 1],
      ['B', 'Q', -2.92, 1],
      ['C', 'Q', -4.67, 1],
      ['D', 'Q', -8.66, 1],
      ['A', 'R', -3.56, 1],
      ['C', 'R', -17.12, 1],
      ['D', 'R', -21.1, 1],
    ];
    const fit = adjust({ A: -8.895, B: 2.905, C: 4.705, D: 8.625 }, rises);
    const printed = [-0.015, 0.015, -0.035, 0.035, 0.007, -0.033, 0.027]; // adjusted minus observed
    printed.forEach((v, k) => expect(Math.abs(-(fit.residuals[k] ?? NaN) - v)).toBeLessThan(0.0006));
    expect(Math.sqrt(fit.chi2 / fit.dof)).toBeCloseTo(0.0309, 4);
  });
});

// F. Wicki 1998, Robuste Schätzverfahren, ch. 18.2, pp. 151-157: +100 mm added to run 1, -100 mm to run 7.
describe('two gross errors of 100 mm in nine runs', () => {
  const rises = (
    [
      ['6', '8', 32159, 0.1276],
      ['8', '10', -6556, 0.1372],
      ['8', '11', 26170, 0.0772],
      ['10', '11', 32726, 0.1041],
      ['9', '6', -27809, 0.0693],
      ['9', '11', 30419, 0.1041],
      ['9', '10', -2417, 0.0918],
      ['9', '8', 4246, 0.1372],
      ['6', '10', 25496, 0.0865],
    ] as const
  ).map(([from, to, rise, weight]): Rise => [from, to, rise, 1 / Math.sqrt(weight)]);

  function snoop(left: readonly Rise[]): readonly Rise[] {
    const fit = adjust({ '9': 0 }, left);
    const sizes = fit.normalised.map((w) => Math.abs(w ?? 0));
    const most = Math.max(...sizes);
    return most > suspectLimit ? snoop(left.filter((_, k) => k !== sizes.indexOf(most))) : left;
  }

  test('are removed one after the other, and nothing else is', () => {
    const kept = snoop(rises);
    expect(rises.filter((rise) => !kept.includes(rise))).toEqual([rises[0], rises[6]]);
  });

  test('without them the heights are those printed', () => {
    const clean = rises.map(([from, to, rise, sigma], k): Rise => [
      from,
      to,
      rise - (k === 0 ? 100 : k === 6 ? -100 : 0),
      sigma,
    ]);
    const fit = adjust({ '9': 0 }, clean);
    // Printed to 1 mm; the third differs from the print by half a millimetre more than rounding allows.
    const printed = { '6': -27811, '8': 4246, '10': -2313, '11': 30416 };
    for (const [name, h] of Object.entries(printed))
      expect(Math.abs(height(fit, name) - h)).toBeLessThan(0.6);
  });
});
