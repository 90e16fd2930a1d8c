import { expect, test } from 'vitest';
import { fitAlgebraic } from '../../../src/core/numerics/circle-fit.ts';

// R. Bullock, Least-squares circle fit (from memory): y = x² at 0, 0.5 to 3, centre (-11.839, 8.4464), radius 14.686. The six
// points of Gander, Golub and Strebel 1994 by the same rule: computed with another library.
test.each([
  [
    'a parabola',
    [0, 0.5, 1, 1.5, 2, 2.5, 3].map((x) => ({ x, y: x * x })),
    [-11.839286, 8.446429, 14.686368],
  ],
  [
    'six points',
    [
      { x: 1, y: 7 },
      { x: 2, y: 6 },
      { x: 5, y: 8 },
      { x: 7, y: 7 },
      { x: 9, y: 5 },
      { x: 3, y: 7 },
    ],
    [4.742331, 3.835123, 4.108762],
  ],
])('the circle a fit through %s begins at is that of Kåsa', (_, points, [x = NaN, y = NaN, radius = NaN]) => {
  const circle = fitAlgebraic(points);
  expect(circle?.x).toBeCloseTo(x, 5);
  expect(circle?.y).toBeCloseTo(y, 5);
  expect(circle?.radius).toBeCloseTo(radius, 5);
});
