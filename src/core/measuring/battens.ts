import type { Problem } from '#core/problems';
import { sigmaOf } from './methods.ts';
import { findOrdinateSlips } from './ordinate-slips.ts';
import type { Reading } from './types.ts';

/** Fewer ordinates than this from one batten may be corners rather than a curve. */
const enough = 8; // joinery A6: eight at least for naming

/**
 * Slips among the ordinates taken from one batten, by the curve that the others make: where the points hang by nothing but
 * their own ordinates, nothing else would show one. Source: joinery A6.
 */
export function findBattens(readings: readonly Reading[]): readonly Problem[] {
  const battens = new Map<string, Ordinate[]>();
  for (const reading of readings)
    if (reading.kind === 'ordinate') {
      const name = JSON.stringify([reading.from, reading.to]);
      battens.set(name, [...(battens.get(name) ?? []), reading]);
    }
  return [...battens.values()].flatMap(findOnBatten);
}

type Ordinate = Extract<Reading, { kind: 'ordinate' }>;

function findOnBatten(given: readonly Ordinate[]): readonly Problem[] {
  const along = [...given].sort((a, b) => a.station - b.station);
  const rising = along.every(({ station }, i) => i === 0 || station > (along[i - 1]?.station ?? station));
  if (along.length < enough || !rising) return [];
  const set = {
    stations: along.map(({ station }) => station),
    ordinates: along.map(({ value }) => value),
    sigma: Math.max(...along.map((reading) => sigmaOf(reading))),
  };
  return findOrdinateSlips(set).map(({ at, problem }) => {
    const first = along[at[0] ?? 0];
    return { ...problem, ...(first && { about: first.id }) };
  });
}
