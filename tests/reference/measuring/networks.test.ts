import { describe, expect, test } from 'vitest';
import { covarianceTable } from '#core/numerics';
import type { Point, Shape } from '#core/geometry';
import { adjustNetwork } from '../../../src/core/measuring/adjust-network.ts';
import type { Network, Position } from '../../../src/core/measuring/network.ts';
import type { AnalysedFit } from '../../../src/core/measuring/solve.ts';
import { freeCovariance } from '../../../src/core/measuring/uncertainty.ts';
import { publishedNetworks } from './published-networks.ts';
import type { PublishedNetwork } from './published-networks.ts';

/** Printed to 0.1 mm and 0.001 cm; the free networks also carry the rounding of their linearised datum. */
const coordinateTolerance = 0.00006;
const deviationTolerance = 0.0007;

function point(xy: readonly [number, number] | undefined): Point {
  return { x: xy?.[0] ?? NaN, y: xy?.[1] ?? NaN };
}

function networkOf(published: PublishedNetwork, held: Network['held']): Network {
  return {
    points: Object.keys(published.approximate),
    held,
    observations: published.distances.map(([from, to, value, sigma], k) => ({
      id: `${k}:${from}-${to}`,
      measure: 'length',
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

function heldPoints(published: PublishedNetwork): Network['held'] {
  return Object.fromEntries(published.held.map((name) => [name, point(published.approximate[name])]));
}

function approximate(published: PublishedNetwork): Position {
  const points = Object.fromEntries(
    Object.entries(published.approximate).map(([name, xy]) => [name, point(xy)]),
  );
  return { points, tilt: 0 };
}

/** Standard deviation after the adjustment: the residuals say how good the readings were. */
function posterior(fit: AnalysedFit, variance: number): number {
  return Math.sqrt((variance * fit.chi2) / fit.dof);
}

function varianceOf(fit: AnalysedFit, name: string, axis: 'x' | 'y'): number {
  const at = fit.unknowns.findIndex((u) => 'point' in u && u.point === name && u.axis === axis);
  return fit.analysis.variances[at] ?? NaN;
}

const fixed = publishedNetworks.filter(({ free }) => !free);
const free = publishedNetworks.filter((network) => network.free);

describe('published networks with fixed points come out as printed', () => {
  test.each(fixed.map((network) => [network.name, network] as const))('%s', (_, published) => {
    const network = networkOf(published, heldPoints(published));
    const { fit } = adjustNetwork({ network, datum: null, start: approximate(published) });
    expect(fit.dof).toBe(published.dof);
    for (const [name, [x, sx, y, sy]] of Object.entries(published.printed)) {
      const found = fit.position.points[name];
      expect(Math.abs((found?.x ?? NaN) - x), `${name} x`).toBeLessThan(coordinateTolerance);
      expect(Math.abs((found?.y ?? NaN) - y), `${name} y`).toBeLessThan(coordinateTolerance);
      const deviations = (['x', 'y'] as const).map(
        (axis) => 100 * posterior(fit, varianceOf(fit, name, axis)),
      );
      expect(Math.abs((deviations[0] ?? NaN) - sx), `${name} sx`).toBeLessThan(deviationTolerance);
      expect(Math.abs((deviations[1] ?? NaN) - sy), `${name} sy`).toBeLessThan(deviationTolerance);
    }
  });

  test.each(fixed.filter(({ held }) => held.length > 2).map((network) => [network.name, network] as const))(
    '%s, without the approximate coordinates',
    (_, published) => {
      const { fit } = adjustNetwork({ network: networkOf(published, heldPoints(published)), datum: null });
      for (const [name, [x, , y]] of Object.entries(published.printed)) {
        expect(Math.abs((fit.position.points[name]?.x ?? NaN) - x)).toBeLessThan(coordinateTolerance);
        expect(Math.abs((fit.position.points[name]?.y ?? NaN) - y)).toBeLessThan(coordinateTolerance);
      }
    },
  );
});

/** Moves and turns a shape so that its corrections to the approximate points have no shift and no turn (inner constraints). */
function settleFree(
  published: PublishedNetwork,
  points: Readonly<Record<string, Point>>,
): Record<string, Point> {
  const names = Object.keys(published.approximate);
  const mean = (of: (name: string) => number) =>
    names.reduce((sum, name) => sum + of(name), 0) / names.length;
  const goal = (name: string) => point(published.approximate[name]);
  const at = (name: string) => points[name] ?? { x: NaN, y: NaN };
  const [gx, gy] = [mean((n) => goal(n).x), mean((n) => goal(n).y)];
  const [px, py] = [mean((n) => at(n).x), mean((n) => at(n).y)];
  let [dot, cross] = [0, 0];
  for (const name of names) {
    const [a, b] = [at(name), goal(name)];
    dot += (a.x - px) * (b.x - gx) + (a.y - py) * (b.y - gy);
    cross += (a.x - px) * (b.y - gy) - (a.y - py) * (b.x - gx);
  }
  const turn = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return Object.fromEntries(
    names.map((name) => {
      const [dx, dy] = [at(name).x - px, at(name).y - py];
      return [name, { x: gx + dx * cos - dy * sin, y: gy + dx * sin + dy * cos }];
    }),
  );
}

function adjustFree(published: PublishedNetwork, distances = published.distances) {
  const [origin = '', along = ''] = published.distances[0] ?? [];
  const network = networkOf({ ...published, distances }, { [origin]: { x: 0, y: 0 }, [along]: { y: 0 } });
  return adjustNetwork({ network, datum: { origin, along } }).fit;
}

function mirrored(points: Readonly<Record<string, Point>>): Record<string, Point> {
  return Object.fromEntries(Object.entries(points).map(([name, p]) => [name, { x: p.x, y: -p.y }]));
}

describe('published free networks come out as printed, started from their distances alone', () => {
  test.each(free.map((network) => [network.name, network] as const))('%s', (_, published) => {
    const fit = adjustFree(published);
    expect(fit.dof).toBe(published.dof);
    const off = (points: Readonly<Record<string, Point>>) =>
      Math.max(
        ...Object.entries(published.printed).map(([name, [x, , y]]) =>
          Math.hypot((points[name]?.x ?? NaN) - x, (points[name]?.y ?? NaN) - y),
        ),
      );
    const sides = [fit.position.points, mirrored(fit.position.points)].map((p) => settleFree(published, p));
    const [same = {}, other = {}] = sides;
    const points = off(same) < off(other) ? same : other;
    expect(off(points)).toBeLessThan(2 * coordinateTolerance);
    const order = fit.network.points.flatMap((name) => [`${name}.x`, `${name}.y`]);
    const covariance = order.map((a) => order.map((b) => covarianceOf(fit, a, b)));
    const shape: Shape = { seenFrom: '', points: fit.position.points, edges: [], order, covariance, tilt: 0 };
    const inner = freeCovariance(shape);
    for (const [name, [, sx, , sy]] of Object.entries(published.printed)) {
      const [i, j] = [order.indexOf(`${name}.x`), order.indexOf(`${name}.y`)];
      const total = Math.sqrt((((inner[i]?.[i] ?? NaN) + (inner[j]?.[j] ?? NaN)) * fit.chi2) / fit.dof);
      // Turning the network turns its error ellipses: their size is what does not depend on the axes.
      expect(Math.abs(100 * total - Math.hypot(sx, sy)), name).toBeLessThan(2 * deviationTolerance);
    }
  });

  // Höpke's book lists 1789.499 for the side 1059-75 but computes with 1789.449: a slip of 5 cm in print.
  test('the slip of 50 mm in print stands out from 27 distances', () => {
    const published = free.find(({ name }) => name.startsWith('Hoepke'));
    if (!published) throw new Error('network missing');
    const distances = published.distances.map(
      (line) =>
        (line[0] === '1059' && line[1] === '75'
          ? [line[0], line[1], 1789.499, line[3]]
          : line) as typeof line,
    );
    const fit = adjustFree(published, distances);
    const sizes = fit.normalised.map((w) => Math.abs(w ?? 0));
    const worst = sizes.indexOf(Math.max(...sizes));
    expect(distances[worst]?.slice(0, 2)).toEqual(['1059', '75']);
    expect(Math.abs((sizes[worst] ?? 0) - 34.26)).toBeLessThan(0.01);
    expect(Math.abs((fit.redundancy[worst] ?? 0) - 0.46717)).toBeLessThan(1e-5);
    const slip = (fit.residuals[worst] ?? 0) / (fit.redundancy[worst] ?? 1);
    expect(Math.abs(slip * 1000 - 50.1)).toBeLessThan(0.05);
    expect([...sizes].sort((a, b) => b - a)[1]).toBeCloseTo(24.02, 1);
  });
});

function covarianceOf(fit: AnalysedFit, a: string, b: string): number {
  const at = (entry: string) =>
    fit.unknowns.findIndex((u) => 'point' in u && `${u.point}.${u.axis}` === entry);
  return at(a) < 0 || at(b) < 0 ? 0 : (covarianceTable(fit.analysis)[at(a)]?.[at(b)] ?? 0);
}

describe('published levelling networks come out as printed', () => {
  function levelNetwork(
    held: Readonly<Record<string, number>>,
    lines: readonly (readonly [string, string, number, number])[],
  ): Network {
    const points = [...new Set(lines.flatMap(([from, to]) => [from, to]))];
    return {
      points,
      held: Object.fromEntries(
        points.map((name) => [name, { x: 0, ...(name in held ? { y: held[name] ?? 0 } : {}) }]),
      ),
      observations: lines.map(([from, to, value, sigma]) => ({
        id: `${from}${to}`,
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

  // C. D. Ghilani 2010, Adjustment Computations, 5th ed., ex. 12.6, p. 218; residuals and sigmas as printed by F. Krumm 2020.
  test('Ghilani, example 12.6', () => {
    const lines = [
      ['A', 'B', 10.509, 0.006],
      ['B', 'C', 5.36, 0.004],
      ['C', 'D', -8.523, 0.005],
      ['D', 'A', -7.348, 0.003],
      ['B', 'D', -3.167, 0.004],
      ['A', 'C', 15.881, 0.012],
    ] as const;
    const { fit } = adjustNetwork({ network: levelNetwork({ A: 437.596 }, lines), datum: null });
    const printed = { B: [448.1087, 2.3], C: [453.4685, 2.64], D: [444.9436, 1.76] } as const;
    for (const [name, [height, deviation]] of Object.entries(printed)) {
      expect(fit.position.points[name]?.y).toBeCloseTo(height, 4);
      expect(Math.abs(1000 * posterior(fit, varianceOf(fit, name, 'y')) - deviation)).toBeLessThan(0.006);
    }
    expect(fit.dof).toBe(3);
    expect(fit.chi2).toBeCloseTo(1.27212, 4);
    const residuals = [3.71, -0.24, -1.86, 0.39, 1.89, -8.53]; // printed as adjusted minus observed, mm
    residuals.forEach((v, k) => expect(Math.abs(-1000 * (fit.residuals[k] ?? NaN) - v)).toBeLessThan(0.006));
  });

  // Z. Siki, adjustment tutorial (BME Budapest 2012-2014): a run of L km has 0.7 L mm; U is the normalised residual.
  test('Siki, data snooping in a levelling net', () => {
    const lines = (
      [
        ['1', '2', -0.749, 1.1],
        ['1', '3', -1.274, 1.8],
        ['1', '4', -2.89, 1.4],
        ['2', '3', -0.53, 1.5],
        ['2', '4', -2.141, 1.9],
        ['3', '4', -1.614, 0.9],
      ] as const
    ).map(([from, to, rise, km]) => [from, to, rise, 0.0007 * km] as const);
    const { fit } = adjustNetwork({ network: levelNetwork({ '4': 101.345 }, lines), datum: null });
    const heights = ['1', '2', '3'].map((name) => fit.position.points[name]?.y ?? NaN);
    [104.235, 103.4868, 102.9588].forEach((h, k) =>
      expect(Math.abs((heights[k] ?? NaN) - h)).toBeLessThan(6e-5),
    );
    expect(fit.chi2).toBeCloseTo(8.217, 3);
    const printed = { r: [0.3, 0.7, 0.5, 0.5, 0.7, 0.2], U: [1.9, 2.1, 0, 2.6, 0.7, 0.6] };
    printed.r.forEach((r, k) => expect(Math.abs((fit.redundancy[k] ?? NaN) - r)).toBeLessThan(0.051));
    printed.U.forEach((w, k) => expect(Math.abs(Math.abs(fit.normalised[k] ?? NaN) - w)).toBeLessThan(0.051));
  });
});
