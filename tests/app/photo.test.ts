import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addToStroke, fitSize, strokePath } from '#app/site/photo.ts';

test('a picture is kept 1280 px long at most, and never made larger', () => {
  expect(fitSize({ width: 4000, height: 3000 })).toEqual({ width: 1280, height: 960 });
  expect(fitSize({ width: 3000, height: 4000 })).toEqual({ width: 960, height: 1280 });
  expect(fitSize({ width: 640, height: 480 })).toEqual({ width: 640, height: 480 });
});

test('a stroke is one path, a tap a dot', () => {
  expect(
    strokePath({
      points: [
        { x: 0.1, y: 0.2 },
        { x: 0.5, y: 0.25 },
      ],
    }),
  ).toBe('M0.1 0.2 L0.5 0.25');
  expect(strokePath({ points: [{ x: 0.1, y: 0.2 }] })).toBe('M0.1 0.2 L0.1 0.2');
});

test('always: a stroke stays inside the picture however far the finger goes', () => {
  const place = fc.record({
    x: fc.double({ min: -3, max: 3, noNaN: true }),
    y: fc.double({ min: -3, max: 3, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(place, { minLength: 1 }), (places) => {
      const { points } = places.reduce(addToStroke, { points: [] });
      expect(points.length).toBeGreaterThan(0);
      for (const { x, y } of points) expect(x >= 0 && x <= 1 && y >= 0 && y <= 1).toBe(true);
    }),
  );
});
