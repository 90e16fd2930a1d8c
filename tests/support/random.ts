/** Numbers for tests from a seed: the same seed gives the same row of them (mulberry32, public domain). */
export interface Dice {
  /** From `low` up to but not `high`. */
  readonly between: (low: number, high: number) => number;
  /** A whole number, both ends included. */
  readonly whole: (low: number, high: number) => number;
  readonly pick: <const T>(choices: readonly [T, ...T[]]) => T;
  readonly chance: (share: number) => boolean;
  /** Normally distributed, mean 0, standard deviation 1 (Box-Muller). */
  readonly normal: () => number;
}

export function rollDice(seed: number): Dice {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  return {
    between,
    whole,
    pick: (choices) => choices[whole(0, choices.length - 1)] ?? choices[0],
    chance: (share) => next() < share,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
