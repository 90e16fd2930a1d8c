import { expect, test } from 'vitest';
import { readSvgDrawing } from '#formats/svg';

const unitOf = (attributes: string) => {
  const read = readSvgDrawing(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}/>`);
  return read.ok ? read.value.unit : NaN;
};

// CSS Values and Units, absolute lengths: 1in = 2.54cm = 96px, 1cm = 10mm, 1Q = 1/40 cm, 1pc = 1/6 in, 1pt = 1/72 in.
test.each([
  ['1in', 25.4],
  ['1cm', 10],
  ['1mm', 1],
  ['1Q', 0.25],
  ['1pc', 25.4 / 6],
  ['1pt', 25.4 / 72],
])('a picture %s wide with a view box of one unit has units of %d mm', (width, millimetres) => {
  expect(unitOf(`width="${width}" viewBox="0 0 1 1"`)).toBeCloseTo(millimetres, 12);
});

// 1 mm is 3.7795275591 px: worked out from the same page
test.each([
  ['210mm', 793.700787],
  ['297mm', 1122.519685],
])('%s across %d pixels makes a pixel of 1/96 inch', (width, pixels) => {
  const unit = unitOf(`width="${width}" viewBox="0 0 ${pixels} 100"`) ?? NaN;
  expect(1 / unit).toBeCloseTo(3.7795275591, 8);
});

test('pixels alone are no size of their own', () => {
  expect(unitOf('width="96px" height="96px"')).toBeNull();
  expect(unitOf('width="96" height="96"')).toBeNull();
});
