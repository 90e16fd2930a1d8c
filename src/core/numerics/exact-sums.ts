/** Splits a double into two halves of 26 bits whose products are exact (Veltkamp 1968, from memory). */
const splitter = 2 ** 27 + 1;

/**
 * start - a1 b1 - a2 b2 - … worked out as with twice the digits of a double and rounded once.
 * Ogita, Rump and Oishi 2005, Accurate sum and dot product, algorithm Dot2 (from memory).
 */
export function subtractProducts(start: number, a: readonly number[], b: readonly number[]): number {
  let sum = start;
  let lost = 0;
  for (let k = 0; k < a.length; k += 1) {
    const x = -(a[k] ?? 0);
    const y = b[k] ?? 0;
    const product = x * y;
    const next = sum + product;
    const part = next - sum;
    lost += sum - (next - part) + (product - part) + productError(x, y, product);
    sum = next;
  }
  return sum + lost;
}

function productError(x: number, y: number, product: number): number {
  const [xHigh, yHigh] = [highHalf(x), highHalf(y)];
  const [xLow, yLow] = [x - xHigh, y - yHigh];
  return xLow * yLow - (product - xHigh * yHigh - xLow * yHigh - xHigh * yLow);
}

function highHalf(x: number): number {
  const large = splitter * x;
  return large - (large - x);
}
