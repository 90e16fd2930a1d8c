import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { Point, Shape } from '#core/geometry';
import { adjustSurvey, edgeUncertainty, hangShape, mirrorShape, type Reading } from '#core/measuring';

/** All distances between some points. */
function tape(points: Readonly<Record<string, Point>>): Reading[] {
  const names = Object.keys(points);
  return names.flatMap((from, at) =>
    names.slice(at + 1).map((to): Reading => {
      const [p, q] = [points[from] as Point, points[to] as Point];
      return {
        id: from + to,
        kind: 'distance',
        from,
        to,
        value: Math.hypot(p.x - q.x, p.y - q.y),
        sigma: 0.5,
      };
    }),
  );
}

function shapeOf(readings: readonly Reading[], corners?: readonly string[]): Shape {
  const { shape } = adjustSurvey({ seenFrom: 'x', readings, ...(corners && { corners }) });
  if (!shape) throw new Error('not fixed');
  return shape;
}

const points = { A: { x: 0, y: 0 }, B: { x: 700, y: 30 }, C: { x: 650, y: 500 }, D: { x: 20, y: 420 } };

/** Variance of the distance between two points of a shape. */
function varianceOf(shape: Shape, a: string, b: string): number {
  const [p, q] = [shape.points[a] as Point, shape.points[b] as Point];
  const length = Math.hypot(q.x - p.x, q.y - p.y);
  const weights = new Map([
    [`${a}.x`, (p.x - q.x) / length],
    [`${a}.y`, (p.y - q.y) / length],
    [`${b}.x`, (q.x - p.x) / length],
    [`${b}.y`, (q.y - p.y) / length],
  ]);
  return shape.order.reduce(
    (sum, row, i) =>
      sum +
      shape.order.reduce(
        (inner, column, j) =>
          inner + (weights.get(row) ?? 0) * (weights.get(column) ?? 0) * (shape.covariance[i]?.[j] ?? 0),
        0,
      ),
    0,
  );
}

describe('a shape hung on other points', () => {
  test('starts at the one and runs along x to the other, which are then exact', () => {
    const hung = hangShape(shapeOf(tape(points)), 'C', 'D');
    expect(hung.points['C']).toEqual({ x: 0, y: 0 });
    expect(hung.points['D']?.y).toBe(0);
    expect(hung.points['D']?.x).toBeCloseTo(Math.hypot(630, 80), 6);
    for (const entry of ['C.x', 'C.y', 'D.y']) {
      const at = hung.order.indexOf(entry);
      expect(hung.covariance[at]?.[at]).toBeCloseTo(0, 9);
    }
  });

  test('always: distances, their variances and the uncertainty of edges stay what they were', () => {
    fc.assert(
      fc.property(fc.constantFrom('A', 'B', 'C', 'D'), fc.constantFrom('A', 'B', 'C', 'D'), (from, to) => {
        fc.pre(from !== to);
        const shape = shapeOf(tape(points));
        const hung = hangShape(shape, from, to);
        for (const [a, b] of [
          ['A', 'B'],
          ['A', 'C'],
          ['B', 'D'],
          ['C', 'D'],
        ] as const) {
          const apart = ({ points: all }: Shape) =>
            Math.hypot((all[a]?.x ?? 0) - (all[b]?.x ?? 0), (all[a]?.y ?? 0) - (all[b]?.y ?? 0));
          expect(apart(hung)).toBeCloseTo(apart(shape), 6);
          expect(varianceOf(hung, a, b)).toBeCloseTo(varianceOf(shape, a, b), 6);
        }
        for (const edge of shape.edges)
          expect(edgeUncertainty(hung, edge)).toBeCloseTo(edgeUncertainty(shape, edge), 6);
      }),
    );
  });

  test('agrees with the adjustment hung there from the start', () => {
    // the first distance of the readings is what the engine hangs a survey on
    const readings = tape(points);
    const first = readings.filter(({ id }) => id === 'BD');
    const direct = shapeOf([...first, ...readings.filter(({ id }) => id !== 'BD')]);
    const hung = hangShape(shapeOf(readings), 'B', 'D');
    const hand = Math.sign((direct.points['A']?.y ?? 0) * (hung.points['A']?.y ?? 0));
    const same = hand < 0 ? mirrorShape(hung) : hung;
    for (const [name, { x, y }] of Object.entries(direct.points)) {
      expect(same.points[name]?.x).toBeCloseTo(x, 5);
      expect(same.points[name]?.y).toBeCloseTo(y, 5);
    }
    direct.order.forEach((row, i) =>
      direct.order.forEach((column, j) => {
        const [k, l] = [same.order.indexOf(row), same.order.indexOf(column)];
        expect(same.covariance[k]?.[l]).toBeCloseTo(direct.covariance[i]?.[j] ?? NaN, 4);
      }),
    );
  });

  test('mirrored twice it is the same', () => {
    const shape = shapeOf(tape(points));
    const twice = mirrorShape(mirrorShape(shape));
    expect(twice.points).toEqual(shape.points);
    expect(twice.covariance).toEqual(shape.covariance);
    expect(Math.cos(twice.tilt)).toBeCloseTo(Math.cos(shape.tilt), 12);
  });
});

describe('corners in a known order', () => {
  // an arrow: D points inwards; its five distances fit a second shape, with D on the other side of A-C
  const arrow = { A: { x: 0, y: 0 }, B: { x: 800, y: 0 }, C: { x: 800, y: 800 }, D: { x: 500, y: 300 } };
  const sides = tape(arrow).filter(({ id }) => id !== 'BD');

  test('the one of two shapes is taken whose corners go round without crossing, and the hand is known', () => {
    const square = { A: { x: 0, y: 0 }, B: { x: 600, y: 0 }, C: { x: 600, y: 400 }, D: { x: 0, y: 400 } };
    const five = tape(square).filter(({ id }) => id !== 'BD');
    const { adjustment, shape } = adjustSurvey({
      seenFrom: 'x',
      readings: five,
      corners: ['A', 'B', 'C', 'D'],
    });
    expect(shape?.points['D']?.x).toBeCloseTo(0, 4);
    expect(shape?.points['D']?.y).toBeCloseTo(400, 4);
    expect(adjustment.findings.map(({ code }) => code)).not.toContain('hand-guessed');
  });

  test('where both shapes suit the order, that is said', () => {
    const { adjustment } = adjustSurvey({ seenFrom: 'x', readings: sides, corners: ['A', 'B', 'C', 'D'] });
    expect(adjustment.findings.map(({ code }) => code)).toContain('shape-ambiguous');
  });

  test('one distance more decides, and a corner that points inwards stays there', () => {
    const shape = shapeOf(tape(arrow), ['A', 'B', 'C', 'D']);
    expect(shape.points['D']?.x).toBeCloseTo(500, 3);
    expect(shape.points['D']?.y).toBeCloseTo(300, 3);
  });
});
