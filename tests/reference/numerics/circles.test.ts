import { expect, test } from 'vitest';
import { fitCircle } from '#core/numerics';

// W. Gander, G. H. Golub and R. Strebel 1994, Least-squares fitting of circles and ellipses, BIT 34, 558-578 (numbers from
// memory): the geometric fit.
test('the six points of Gander, Golub and Strebel', () => {
  const points = [
    [1, 7],
    [2, 6],
    [5, 8],
    [7, 7],
    [9, 5],
    [3, 7],
  ].map(([x = 0, y = 0]) => ({ x, y }));
  const circle = fitCircle(points);
  expect(Math.abs((circle?.x ?? NaN) - 4.7398)).toBeLessThan(6e-5);
  expect(Math.abs((circle?.y ?? NaN) - 2.9835)).toBeLessThan(6e-5);
  expect(Math.abs((circle?.radius ?? NaN) - 4.7142)).toBeLessThan(6e-5);
});

// W. Niemeier 2008, Ausgleichungsrechnung, 2nd ed., section 5.2.3, pp. 178-181: printed centre 70.000, 100.000, radius 40.000 m
// from weighted polar readings. Unweighted points agree to what a reading is worth, 2 mm.
test('the tower of Niemeier from twelve polar readings', () => {
  const distances = [
    156.5221, 161.9524, 159.2147, 148.6576, 131.7163, 111.2273, 92.1938, 82.2948, 87.4644, 104.4039, 125.1007,
    143.6252,
  ];
  const gon = [
    70.48282, 62.48844, 54.34595, 46.97062, 41.55401, 39.98572, 45.11189, 58.42577, 73.50564, 81.44536,
    81.7578, 77.36336,
  ];
  const points = distances.map((distance, i) => {
    const angle = ((gon[i] ?? NaN) * Math.PI) / 200;
    return { x: distance * Math.cos(angle), y: distance * Math.sin(angle) };
  });
  const circle = fitCircle(points);
  expect(Math.abs((circle?.x ?? NaN) - 70)).toBeLessThan(0.002);
  expect(Math.abs((circle?.y ?? NaN) - 100)).toBeLessThan(0.002);
  expect(Math.abs((circle?.radius ?? NaN) - 40)).toBeLessThan(0.002);
});
