import { describe, expect, test } from 'vitest';
import { adjustNetwork } from '../../../src/core/measuring/adjust-network.ts';
import type { Network, Observation, Terms } from '../../../src/core/measuring/network.ts';
import type { AnalysedFit } from '../../../src/core/measuring/solve.ts';

const fromTo = (from: string, to: string): Terms => [
  [to, 1],
  [from, -1],
];

function posterior(fit: AnalysedFit, name: string, axis: 'x' | 'y'): number {
  const at = fit.unknowns.findIndex((u) => 'point' in u && u.point === name && u.axis === axis);
  return Math.sqrt(((fit.analysis.variances[at] ?? NaN) * fit.chi2) / fit.dof);
}

// F. Krumm 2020, Geodetic Network Adjustment Examples, rev. 3.5, section 2.3, pp. 13-16: levels hung on two heights that are
// themselves known only with covariances 0.0025, -0.0015, 0.0036 m²; a run of L m has sqrt(L / 1000) m.
describe('a datum that is itself uncertain', () => {
  const zero = 'zero';
  const runs = [
    ['2', '8', 5.128, 700],
    ['3', '6', 2.183, 500],
    ['3', '7', 12.254, 500],
    ['6', '7', 10.071, 800],
    ['8', '7', 2.824, 800],
  ] as const;
  const names = ['2', '3', '6', '7', '8'];
  const level = (id: string, terms: Terms, value: number, sigma: number): Observation => ({
    ...{ id, measure: 'level', terms, value, sigma },
  });
  // The two heights as readings that know nothing of each other: the second, and the third with what it shares taken off,
  // 0.0015 / 0.0025 = 0.6 of the second; 0.0036 - 0.6 · 0.0015 = 0.0027 remain.
  const prior = [
    level('H2', fromTo(zero, '2'), 107.7541, Math.sqrt(0.0025)),
    level(
      'H3',
      [
        ['3', 1],
        ['2', 0.6],
        [zero, -1.6],
      ],
      103.4535 + 0.6 * 107.7541,
      Math.sqrt(0.0027),
    ),
  ];
  const network: Network = {
    points: [zero, ...names],
    held: { [zero]: { x: 0, y: 0 }, ...Object.fromEntries(names.map((name) => [name, { x: 0 }])) },
    observations: [
      ...prior,
      ...runs.map(([from, to, rise, length]) =>
        level(`${from}-${to}`, fromTo(from, to), rise, Math.sqrt(length / 1000)),
      ),
    ],
    tiltFree: false,
  };
  const { fit } = adjustNetwork({ network, datum: null });

  test('heights and their deviations come out as printed', () => {
    expect(fit.dof).toBe(2);
    const printed = {
      '2': [107.7541, 0.04],
      '3': [103.4535, 0.04],
      '6': [105.6364, 0.43],
      '7': [115.7072, 0.39],
      '8': [112.8826, 0.48],
    } as const;
    for (const [name, [height, deviation]] of Object.entries(printed)) {
      expect(Math.abs((fit.position.points[name]?.y ?? NaN) - height), name).toBeLessThan(0.00006);
      expect(Math.abs(1000 * posterior(fit, name, 'y') - deviation), name).toBeLessThan(0.0051);
    }
  });
  test('and so do the residuals of the runs', () => {
    const printed = [0.52, -0.1, -0.27, -0.17, 0.6]; // adjusted minus observed, mm
    printed.forEach((v, k) =>
      expect(Math.abs(-1000 * (fit.residuals[prior.length + k] ?? NaN) - v)).toBeLessThan(0.0051),
    );
  });
});

// F. Neitzel and S. Petrovic 2008, zfv 133 (3), 141-148, table 3: a line through points of which both coordinates were
// observed, sigma 1 each; printed slope 3.241804, intercept -1.362705, their deviations, and the sum of squares 0.372946.
test('a line through points uncertain both ways', () => {
  const seen = [
    [0, 0],
    [1, 1],
    [2, 4],
    [3, 9],
  ] as const;
  const [start, end] = ['start', 'end'];
  const onLine = 5e-4; // every point lies on the line, next to a sigma of 1; less would make the steps creep
  const network: Network = {
    points: [start, end, ...seen.map((_, i) => `${i}`)],
    held: { [start]: { x: 0 }, [end]: { x: 1 } },
    observations: seen.flatMap(([x, y], i): readonly Observation[] => {
      const point = `${i}`;
      return [
        { id: `x${point}`, measure: 'plumb', terms: [[point, 1]], value: x, sigma: 1 },
        { id: `y${point}`, measure: 'level', terms: [[point, 1]], value: y, sigma: 1 },
        {
          ...{ id: `on${point}`, measure: 'offset', value: 0, sigma: onLine },
          ...{ terms: fromTo(start, point), base: fromTo(start, end) },
        },
      ];
    }),
    tiltFree: false,
  };
  const points = Object.fromEntries(seen.map(([x, y], i) => [`${i}`, { x, y }]));
  const first = { ...points, [start]: { x: 0, y: -1 }, [end]: { x: 1, y: 2 } };
  const { fit } = adjustNetwork({ network, datum: null, start: { points: first, tilt: 0 } });
  const [a, b] = [start, end].map((name) => fit.position.points[name]?.y ?? NaN) as [number, number];
  expect(fit.dof).toBe(2);
  expect(a).toBeCloseTo(-1.362705, 6);
  expect(b - a).toBeCloseTo(3.241804, 6);
  expect(fit.chi2).toBeCloseTo(0.372946, 6);
  expect(Math.abs(posterior(fit, start, 'y') - 1.254155)).toBeLessThan(0.00005);
});

// W. Niemeier 2008, Ausgleichungsrechnung, 2nd ed., section 5.2.3, pp. 178-181: a circle from twelve polar readings, 2 mm and
// 0.3 mgon; printed centre 70.000, 100.000, radius 40.000, sigma a posteriori 1.13. A second program finds 69.9996, 99.9990,
// 39.9998 and 1.1233 with readings that know nothing of each other: agreement to the mm and to 0.01 is all to be had.
test('a circle through points from polar readings', () => {
  const distances = [
    156.5221, 161.9524, 159.2147, 148.6576, 131.7163, 111.2273, 92.1938, 82.2948, 87.4644, 104.4039, 125.1007,
    143.6252,
  ];
  const gon = [
    70.48282, 62.48844, 54.34595, 46.97062, 41.55401, 39.98572, 45.11189, 58.42577, 73.50564, 81.44536,
    81.7578, 77.36336,
  ];
  const radians = Math.PI / 200;
  const [station, mark, centre] = ['station', 'mark', 'centre'];
  const onCircle = 1e-6; // every point lies on the circle, next to 2 mm
  const network: Network = {
    points: [station, mark, centre, ...gon.map((_, i) => `${i}`)],
    held: { [station]: { x: 0, y: 0 }, [mark]: { x: 100, y: 0 } },
    observations: gon.flatMap((turn, i): readonly Observation[] => {
      const ray = fromTo(station, `${i}`);
      return [
        { id: `d${i}`, measure: 'length', terms: ray, value: distances[i] ?? NaN, sigma: 0.002 },
        {
          ...{ id: `t${i}`, measure: 'angle', terms: ray, base: fromTo(station, mark) },
          ...{ value: turn * radians, sigma: 0.0003 * radians },
        },
        {
          ...{ id: `on${i}`, measure: 'length', terms: fromTo(centre, `${i}`), value: 0, sigma: onCircle },
          bows: [['radius', -1]],
        },
      ];
    }),
    bows: ['radius'],
    tiltFree: false,
  };
  const seen = gon.map((turn, i) => {
    const far = distances[i] ?? NaN;
    return [`${i}`, { x: far * Math.cos(turn * radians), y: far * Math.sin(turn * radians) }] as const;
  });
  const held = { [station]: { x: 0, y: 0 }, [mark]: { x: 100, y: 0 }, [centre]: { x: 70.05, y: 99.97 } };
  const start = { points: { ...held, ...Object.fromEntries(seen) }, tilt: 0, bows: { radius: 40.03 } };
  const { fit } = adjustNetwork({ network, datum: null, start });
  const found = fit.position.points[centre];
  expect(fit.dof).toBe(9);
  expect(Math.abs((found?.x ?? NaN) - 70)).toBeLessThan(0.0015);
  expect(Math.abs((found?.y ?? NaN) - 100)).toBeLessThan(0.0015);
  expect(Math.abs((fit.position.bows?.radius ?? NaN) - 40)).toBeLessThan(0.0015);
  expect(Math.abs(Math.sqrt(fit.chi2 / fit.dof) - 1.13)).toBeLessThan(0.01);
  // as the second program has it
  expect(found?.x).toBeCloseTo(69.9996, 4);
  expect(found?.y).toBeCloseTo(99.999, 4);
  expect(fit.position.bows?.radius).toBeCloseTo(39.9998, 4);
  expect(Math.sqrt(fit.chi2 / fit.dof)).toBeCloseTo(1.1233, 3);
});
