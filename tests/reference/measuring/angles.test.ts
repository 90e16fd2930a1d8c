import { describe, expect, test } from 'vitest';
import type { Point } from '#core/geometry';
import { adjustNetwork } from '../../../src/core/measuring/adjust-network.ts';
import type { Network, Observation, Position } from '../../../src/core/measuring/network.ts';
import type { AnalysedFit } from '../../../src/core/measuring/solve.ts';
import { blunderAngle, distancesAndAngles, traverse, withBearing } from './published-angles.ts';
import type { AngleNetwork, Dms } from './published-angles.ts';
import { linkTraverse, traverseWithSlips } from './published-angles-more.ts';

/** Printed to 0.1 mm and 0.001 cm. */
const coordinateTolerance = 0.00006;
const deviationTolerance = 0.0007;
const second = Math.PI / 180 / 3600;
/** A point due north of a station, from which its bearings are counted as angles. */
const north = 'north';

function radians([degrees, minutes, seconds]: Dms): number {
  return (degrees * 3600 + minutes * 60 + seconds) * second;
}

function angleAt(at: string, [from, to]: readonly [string, string], dms: Dms, sigma: number): Observation {
  const ray = (end: string) =>
    [
      [end, 1],
      [at, -1],
    ] as const;
  // Clockwise from the first to the second is counter-clockwise from the second to the first.
  const rays = { terms: ray(from), base: ray(to) };
  return { id: `${from}-${at}-${to}`, measure: 'angle', ...rays, value: radians(dms), sigma: sigma * second };
}

function networkOf({ approximate, held, distances, angles, bearings }: AngleNetwork): Network {
  const fixed = Object.fromEntries(held.map((name) => [name, pointOf(approximate[name])]));
  const station = fixed[bearings[0]?.[0] ?? ''];
  const marks: Network['held'] = station ? { [north]: { x: station.x, y: station.y + 1000 } } : {};
  return {
    points: [...Object.keys(approximate), ...Object.keys(marks)],
    held: { ...fixed, ...marks },
    observations: [
      ...distances.map(([from, to, value, sigma]): Observation => ({
        id: `${from}-${to}`,
        measure: 'length',
        terms: [
          [to, 1],
          [from, -1],
        ],
        value,
        sigma,
      })),
      ...angles.map(([at, from, to, dms, sigma]) => angleAt(at, [from, to], dms, sigma)),
      ...bearings.map(([from, to, dms, sigma]) => angleAt(from, [north, to], dms, sigma)),
    ],
    tiltFree: false,
  };
}

function pointOf(xy: readonly [number, number] | undefined): Point {
  return { x: xy?.[0] ?? NaN, y: xy?.[1] ?? NaN };
}

function startOf({ approximate }: AngleNetwork, network: Network): Position {
  const points = Object.fromEntries(Object.entries(approximate).map(([name, xy]) => [name, pointOf(xy)]));
  return { points: { ...points, ...(network.held as Record<string, Point>) }, tilt: 0 };
}

function expectPrinted(fit: AnalysedFit, published: AngleNetwork): void {
  for (const [name, [x, sx, y, sy]] of Object.entries(published.printed)) {
    const found = fit.position.points[name] ?? { x: NaN, y: NaN };
    expect(Math.abs(found.x - x), `${name} x`).toBeLessThan(coordinateTolerance);
    expect(Math.abs(found.y - y), `${name} y`).toBeLessThan(coordinateTolerance);
    const deviation = (axis: 'x' | 'y') => {
      const at = fit.unknowns.findIndex((u) => 'point' in u && u.point === name && u.axis === axis);
      // The residuals say how good the readings were: standard deviations a posteriori.
      return 100 * Math.sqrt(((fit.analysis.variances[at] ?? NaN) * fit.chi2) / fit.dof);
    };
    expect(Math.abs(deviation('x') - sx), `${name} sx`).toBeLessThan(deviationTolerance);
    expect(Math.abs(deviation('y') - sy), `${name} sy`).toBeLessThan(deviationTolerance);
  }
}

const published = [traverse, withBearing, distancesAndAngles, traverseWithSlips, linkTraverse].map(
  (network) => [network.name, network] as const,
);

describe('published networks with angles come out as printed', () => {
  test.each(published)('%s', (_, from) => {
    const network = networkOf(from);
    const { fit } = adjustNetwork({ network, datum: null, start: startOf(from, network) });
    expect(fit.dof).toBe(from.dof);
    expect(Math.abs(fit.chi2 / from.chi2 - 1)).toBeLessThan(1e-5);
    expectPrinted(fit, from);
  });

  test.each(published)('%s, without the approximate coordinates', (_, from) => {
    expectPrinted(adjustNetwork({ network: networkOf(from), datum: null }).fit, from);
  });
});

// The figures are those of a second program fed with the same file; the mark in the file is the published part.
describe('the angle that the data file of example 16.2 marks as a blunder', () => {
  const network = networkOf({ ...withBearing, angles: [...withBearing.angles, blunderAngle] });
  const { fit } = adjustNetwork({ network, datum: null });
  const sizes = fit.normalised.map((w) => Math.abs(w ?? 0));

  test('stands out from the other seventeen readings', () => {
    const worst = sizes.indexOf(Math.max(...sizes));
    expect(network.observations[worst]?.id).toBe('Q-T-R');
    expect(fit.dof).toBe(13);
    expect(Math.abs((sizes[worst] ?? NaN) - 5.201)).toBeLessThan(0.0006);
    expect(Math.abs((fit.redundancy[worst] ?? NaN) - 0.792)).toBeLessThan(0.0006);
    expect(Math.abs(Math.sqrt(fit.chi2 / fit.dof) - 1.4819)).toBeLessThan(0.00006);
  });

  test('and no other exceeds the limit', () => {
    expect(Math.abs(([...sizes].sort((a, b) => b - a)[1] ?? NaN) - 1.868)).toBeLessThan(0.0006);
  });
});

// The slip that stands out in example 21.10 (its printed variance factor is 9.29): angle D from A to B.
test('the worst angle of example 21.10 is 29 times its own deviation off', () => {
  const { fit } = adjustNetwork({ network: networkOf(distancesAndAngles), datum: null });
  const sizes = fit.normalised.map((w) => Math.abs(w ?? 0));
  const worst = sizes.indexOf(Math.max(...sizes));
  expect(fit.network.observations[worst]?.id).toBe('A-D-B');
  expect(Math.abs((sizes[worst] ?? NaN) - 29.1933)).toBeLessThan(0.0001);
  expect(Math.abs((fit.redundancy[worst] ?? NaN) - 0.96645)).toBeLessThan(0.00001);
});

// The file marks the distance 3-4 of example 21.1 as a blunder; the figures are those of a second program.
test('the distance that the data file of example 21.1 marks as a blunder stands out, before the angle beside it', () => {
  const { fit } = adjustNetwork({ network: networkOf(traverseWithSlips), datum: null });
  const unit = Math.sqrt(fit.chi2 / fit.dof);
  const sizes = fit.normalised.map((w) => Math.abs(w ?? 0) / unit);
  const order = sizes.map((_, k) => k).sort((a, b) => (sizes[b] ?? 0) - (sizes[a] ?? 0));
  const [first = -1, second = -1] = order;
  expect(fit.network.observations[first]?.id).toBe('3-4');
  expect(Math.abs((sizes[first] ?? NaN) - 3.735)).toBeLessThan(0.0006);
  expect(Math.abs((fit.redundancy[first] ?? NaN) - 0.622)).toBeLessThan(0.0006);
  expect(fit.network.observations[second]?.id).toBe('3-5-4');
  expect(Math.abs((sizes[second] ?? NaN) - 3.616)).toBeLessThan(0.0006);
});
