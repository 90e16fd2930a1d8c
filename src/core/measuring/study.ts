import type { Found } from './adjust-network.ts';
import { pointsOf } from './datum.ts';
import type { Datum } from './datum.ts';
import { edgeKey, observe } from './network.ts';
import type { Network } from './network.ts';
import type { Verdict } from './doubt.ts';
import type { KnownPoint, Reading, Survey } from './types.ts';
import type { Loose } from './undetermined.ts';

/** What the steps after the adjustment know. */
export interface Study {
  readonly survey: Survey;
  readonly readings: readonly Reading[];
  readonly found: Found;
  /** Null where points are held instead. */
  readonly datum: Datum | null;
  readonly loose: Loose;
  readonly verdict: Verdict;
  readonly advice: string | null;
}

/** The network of some readings hung on a datum, or on points whose place is known; `corners` where their order is known. */
export function networkOf(
  readings: readonly Reading[],
  hung: Datum | readonly KnownPoint[],
  corners?: readonly string[],
): Network {
  const held = 'origin' in hung ? [] : hung.map(({ id, x, y }) => [id, { x, y }] as const);
  return {
    points: pointsOf(readings),
    held:
      'origin' in hung ? { [hung.origin]: { x: 0, y: 0 }, [hung.along]: { y: 0 } } : Object.fromEntries(held),
    observations: readings.flatMap((reading) => observe(reading, readings)),
    boards: [...new Set(readings.flatMap((reading) => (reading.kind === 'tick' ? [reading.board] : [])))],
    bows: [...new Set(readings.flatMap((reading) => (reading.kind === 'bow' ? [edgeKey(reading)] : [])))],
    ...(corners && { corners }),
    tiltFree: readings.some((reading) => reading.kind === 'plumb' || reading.kind === 'level'),
  };
}
