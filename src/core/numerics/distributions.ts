/** Two-sided 0.1 % point of the normal distribution: above it a normalised residual is a suspect (Baarda 1968). */
export const suspectLimit = 3.2905;

/** z(1 - 0.001 / 2) + z(0.80): shift found with 80 % probability at 0.1 % false alarm (Baarda 1968, delta zero). */
export const findableShift = 4.1321;

/** Terms after which a series or continued fraction that still moves is a mistake of ours. */
const mostTerms = 10_000;
const settled = 1e-16;

/** Probability that a normal variable exceeds `z`. */
export function normalTail(z: number): number {
  const half = chiSquareTail(z * z, 1) / 2;
  return z >= 0 ? half : 1 - half;
}

/** The value that a normal variable stays below with probability `p`; -Infinity and Infinity at 0 and 1. */
export function normalQuantile(p: number): number {
  if (p <= 0 || p >= 1) return p <= 0 ? -Infinity : Infinity;
  if (p > 0.5) return -normalQuantile(1 - p);
  return -bisect((z) => normalTail(z) - p, 0, 40);
}

/** Probability that a chi-square variable with `dof` degrees of freedom exceeds `x`. */
export function chiSquareTail(x: number, dof: number): number {
  if (!(dof > 0)) throw new Error(`no chi-square distribution with ${dof} degrees of freedom`);
  return x <= 0 ? 1 : upperGammaShare(dof / 2, x / 2);
}

/** The value that a chi-square variable stays below with probability `p`. */
export function chiSquareQuantile(p: number, dof: number): number {
  if (p <= 0 || p >= 1) return p <= 0 ? 0 : Infinity;
  let high = dof + 10;
  while (chiSquareTail(high, dof) > 1 - p) high *= 2;
  return bisect((x) => chiSquareTail(x, dof) - (1 - p), 0, high);
}

/** Zero of a falling function between `low` and `high`, to the last bits of a double. */
function bisect(falling: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let step = 0; step < 200 && b - a > 1e-15 * b; step += 1) {
    const middle = (a + b) / 2;
    if (falling(middle) > 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Q(a, x), regularised: by series below a + 1, by continued fraction above (Abramowitz and Stegun 6.5.29, 6.5.31). */
function upperGammaShare(a: number, x: number): number {
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? 1 - front * lowerSeries(a, x) : front * upperFraction(a, x);
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; k < mostTerms && term > settled * sum; k += 1) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

/** Lentz's evaluation of the continued fraction. */
function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let product = d;
  for (let k = 1; k < mostTerms; k += 1) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    product *= d * c;
    if (Math.abs(d * c - 1) < settled) break;
  }
  return product;
}

/** log of the gamma function for a > 0: Stirling's series after shifting beyond 15 (Abramowitz and Stegun 6.1.41). */
function logGamma(a: number): number {
  let shift = 0;
  let x = a;
  while (x < 15) {
    shift += Math.log(x);
    x += 1;
  }
  const x2 = x * x;
  const series = (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / x2) / x2) / x2) / x2) / x;
  return (x - 0.5) * Math.log(x) - x + Math.log(2 * Math.PI) / 2 + series - shift;
}
