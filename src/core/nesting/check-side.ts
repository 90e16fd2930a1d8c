import type { Corner } from './types.ts';

/** The error of the determinant below in units of its terms (Shewchuk 1997, error bound A, from memory). */
const doubt = 3.3306690738754716e-16;

/**
 * Which side of the line from a to b the point c lies on: 1 left, -1 right, 0 on it. Exact: where floating point leaves a
 * doubt, whole numbers of any length decide.
 */
export function sideOf(a: Corner, b: Corner, c: Corner): -1 | 0 | 1 {
  const left = (b[0] - a[0]) * (c[1] - a[1]);
  const right = (b[1] - a[1]) * (c[0] - a[0]);
  const determinant = left - right;
  const error = doubt * (Math.abs(left) + Math.abs(right));
  if (determinant > error) return 1;
  if (determinant < -error) return -1;
  return exactSide(a, b, c);
}

function exactSide(a: Corner, b: Corner, c: Corner): -1 | 0 | 1 {
  const [ax, ay, bx, by, cx, cy] = [...a, ...b, ...c].map(toWhole) as [
    bigint,
    bigint,
    bigint,
    bigint,
    bigint,
    bigint,
  ];
  const determinant = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  return determinant > 0n ? 1 : determinant < 0n ? -1 : 0;
}

/** A floating-point number as a whole number of 2^-1074, the finest step there is. */
function toWhole(value: number): bigint {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, value);
  const high = bits.getUint32(0);
  const exponent = (high >>> 20) & 0x7ff;
  const fraction = (BigInt(high & 0xfffff) << 32n) | BigInt(bits.getUint32(4));
  const size = exponent === 0 ? fraction : (fraction | (1n << 52n)) << BigInt(exponent - 1);
  return high >>> 31 === 1 ? -size : size;
}
