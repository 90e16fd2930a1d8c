import { describe, expect, test } from 'vitest';
import { arcBetween, offsetOutline, outlinePerimeter, pointOnArc, rectangleOutline } from '#core/geometry';

// Published reference of the DXF format, group 42: bulge = tan(included angle / 4), negative when clockwise, 0 straight,
// 1 a semicircle; 90° gives 0.414214. Sagitta |bulge| c / 2 and radius c (1 + b²) / (4 |b|) follow for a chord c.
describe('arcs given by a bulge agree with the published reference', () => {
  const chord = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
  ] as const;
  test.each([
    [1, 180, 5, -5],
    [-1, -180, 5, 5],
    [0.41421356, 90, 7.0710678, -2.0710678],
    [-0.41421356, -90, 7.0710678, 2.0710678],
  ])(
    '%d over a chord of 10 turns %d degrees with radius %d, its middle at height %d',
    (bulge, turn, r, y) => {
      const arc = arcBetween(...chord, bulge);
      if (!arc) throw new Error('no arc');
      expect((arc.sweep * 180) / Math.PI).toBeCloseTo(turn, 5);
      expect(arc.radius).toBeCloseTo(r, 6);
      expect(pointOnArc(arc, 0.5).x).toBeCloseTo(5, 9);
      expect(pointOnArc(arc, 0.5).y).toBeCloseTo(y, 6);
    },
  );
  test('0 is straight', () => {
    expect(arcBetween(...chord, 0)).toBeNull();
  });
});

// Steiner: the perimeter of a convex outline grows by 2 pi r.
test.each([
  [rectangleOutline(100, 100), 100, 400 + 200 * Math.PI],
  [
    [
      { x: 0, y: 0 },
      { x: 400, y: 0 },
      { x: 0, y: 300 },
    ],
    200,
    1200 + 400 * Math.PI,
  ],
])('an outline grown all round is longer by the circle of that radius', (outline, distance, expected) => {
  const length = offsetOutline(outline, distance).reduce((sum, path) => sum + outlinePerimeter(path), 0);
  expect(Math.abs(length - expected)).toBeLessThan(1); // on 1028 and 2457: its arcs are chords
});
