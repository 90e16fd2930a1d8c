import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Numbers that look random and are the same for the same seed. */
export interface Random {
  /** At least 0 and below 1, with 53 random bits. */
  next(): number;
  /** A whole number from `lo` to `hi`, both included. */
  whole(lo: number, hi: number): number;
  /** Normally distributed with mean 0 and standard deviation 1 (Box and Muller 1958, from memory). */
  normal(): number;
}

/** A seeded source of random numbers; the seed is taken as a 32-bit whole number. */
export function makeRandom(seed: number): Random {
  const generator = xoroshiro128plus(seed | 0);
  const next = () => {
    const high = generator.next() >>> 5;
    const low = generator.next() >>> 6;
    return (high * 2 ** 26 + low) / 2 ** 53;
  };
  return {
    next,
    whole: (lo, hi) => lo + Math.floor(next() * (hi - lo + 1)),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
