import { suspectLimit } from '#core/numerics';
import { largestDoubt, refit } from './doubt.ts';
import type { Doubt, Named } from './doubt.ts';
import type { Reading } from './types.ts';

/** Diagonals (E12), or diagonals and heights together (E11), that fit when they change places. */
export function findExchange(doubt: Doubt): Named | null {
  if (doubt.fit.dof < 2) return null;
  const diagonals = pairOf(doubt.readings, ['BL', 'TR'], ['BR', 'TL']);
  if (!diagonals) return null;
  if (passesExchanged(doubt, [diagonals]))
    return exchanged(doubt, diagonals, 'E12', 'the two diagonals are exchanged');
  const heights = pairOf(doubt.readings, ['BL', 'TL'], ['BR', 'TR']);
  if (!heights || !passesExchanged(doubt, [diagonals, heights])) return null;
  return exchanged(doubt, [...diagonals, ...heights], 'E11', 'left and right are exchanged throughout');
}

/** Ids of the distances between two pairs of points; null when either is missing. */
function pairOf(
  readings: readonly Reading[],
  first: readonly [string, string],
  second: readonly [string, string],
): readonly [string, string] | null {
  const find = (ends: readonly string[]) =>
    readings.find(
      (r) => r.kind === 'distance' && ends.includes(r.from) && ends.includes(r.to) && r.from !== r.to,
    );
  const [a, b] = [find(first), find(second)];
  return a && b ? [a.id, b.id] : null;
}

function passesExchanged(doubt: Doubt, pairs: readonly (readonly [string, string])[]): boolean {
  const partner = new Map(pairs.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));
  const { observations } = doubt.fit.network;
  const values = new Map(observations.map((seen) => [seen.id, seen.value]));
  const swapped = observations.map((seen) => ({
    ...seen,
    value: values.get(partner.get(seen.id) ?? '') ?? seen.value,
  }));
  return largestDoubt(refit(doubt, swapped)).size <= suspectLimit;
}

function exchanged(doubt: Doubt, ids: readonly string[], mistake: string, cause: string): Named {
  const seen = doubt.fit.network.observations;
  const value = (id: string) => seen.find((o) => o.id === id)?.value ?? 0;
  const suspects = ids.map((id, k) => ({
    id,
    slip: value(id) - value(ids[k % 2 === 0 ? k + 1 : k - 1] ?? id),
    cause,
    mistake,
  }));
  return { kind: 'exchanged', suspects };
}
