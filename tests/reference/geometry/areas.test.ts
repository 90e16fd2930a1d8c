import { describe, expect, test } from 'vitest';
import { arcBetween, offsetOutline, outlineArea, outlinePerimeter, rectangleOutline } from '#core/geometry';

describe('areas and perimeters agree with published figures', () => {
  // MatheAss manual page "Arbitrary polygons": area 18, perimeter 22.032567; concave at (4, 1).
  test('of an arbitrary polygon', () => {
    const polygon = [
      { x: 0, y: 0 },
      { x: 4, y: 1 },
      { x: 6, y: 0 },
      { x: 5, y: 7 },
    ];
    expect(outlineArea(polygon)).toBeCloseTo(18, 9);
    expect(outlinePerimeter(polygon)).toBeCloseTo(22.032567, 6);
  });

  // Steiner's formula A + P r + pi r² for convex shapes; 3-4-5 triangle at r = 2: 42.566371.
  test.each([
    [rectangleOutline(1, 1), 1, 8.141593],
    [
      [
        { x: 0, y: 0 },
        { x: 4, y: 0 },
        { x: 0, y: 3 },
      ],
      2,
      42.566371,
    ],
  ])('of an offset outline', (outline, distance, expected) => {
    const large = outline.map(({ x, y }) => ({ x: x * 100, y: y * 100 }));
    const grown = offsetOutline(large, distance * 100);
    const area = grown.reduce((sum, path) => sum + outlineArea(path), 0);
    expect(Math.abs(area / 1e4 - expected)).toBeLessThan(0.003);
  });

  // Published reference of the DXF format, group 42: bulge = tan(included angle / 4).
  test('of arcs given by a bulge', () => {
    const half = arcBetween({ x: 0, y: 0 }, { x: 10, y: 0 }, 1);
    expect(half?.radius).toBeCloseTo(5, 12);
    const quarter = arcBetween({ x: 0, y: 0 }, { x: 10, y: 0 }, 0.41421356);
    expect(quarter?.radius).toBeCloseTo(7.0710678, 6);
    const circle = [
      { x: -3, y: 0, bulge: 1 },
      { x: 3, y: 0, bulge: 1 },
    ];
    expect(outlineArea(circle)).toBeCloseTo(Math.PI * 9, 9);
    expect(outlinePerimeter(circle)).toBeCloseTo(Math.PI * 6, 9);
  });
});
