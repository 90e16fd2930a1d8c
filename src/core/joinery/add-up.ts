import type { Fixing } from './types.ts';

/** Fixings with the same thing for the same use once, the quantities added up. */
export function addUp(fixings: readonly Fixing[]): readonly Fixing[] {
  const sums = new Map<string, Fixing>();
  for (const one of fixings) {
    const key = `${one.item} ${one.use}`;
    const before = sums.get(key);
    sums.set(key, { ...one, quantity: one.quantity + (before?.quantity ?? 0) });
  }
  return [...sums.values()];
}
