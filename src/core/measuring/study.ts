import type { Found } from './adjust-network.ts';
import { pointsOf } from './datum.ts';
import type { Datum } from './datum.ts';
import { edgeKey, observe } from './network.ts';
import type { Network } from './network.ts';
import type { Verdict } from './doubt.ts';
import type { Reading, Survey } from './types.ts';
import type { Loose } from './undetermined.ts';

/** What the steps after the adjustment know. */
export interface Study {
  readonly survey: Survey;
  readonly readings: readonly Reading[];
  readonly found: Found;
  readonly datum: Datum;
  readonly loose: Loose;
  readonly verdict: Verdict;
  readonly advice: string | null;
}

/** The network of some readings hung on a datum. */
export function networkOf(readings: readonly Reading[], datum: Datum): Network {
  return {
    points: pointsOf(readings),
    held: { [datum.origin]: { x: 0, y: 0 }, [datum.along]: { y: 0 } },
    observations: readings.map((reading) => observe(reading, readings)),
    bows: [...new Set(readings.flatMap((reading) => (reading.kind === 'bow' ? [edgeKey(reading)] : [])))],
    tiltFree: readings.some((reading) => reading.kind === 'plumb' || reading.kind === 'level'),
  };
}
