import { measureAll } from './losses.ts';
import { emptyPlace, layDown } from './nest.ts';
import type { Nest } from './nest.ts';

/** Where every part lies, to come back to. */
export interface Snapshot {
  readonly pose: Int32Array;
  readonly sheet: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

export function takeSnapshot(nest: Nest): Snapshot {
  return { pose: nest.pose.slice(), sheet: nest.sheet.slice(), x: nest.x.slice(), y: nest.y.slice() };
}

export function restore(nest: Nest, snapshot: Snapshot): void {
  const place = emptyPlace();
  for (let i = 0; i < nest.all; i++) {
    place.pose = snapshot.pose[i]!;
    place.sheet = snapshot.sheet[i]!;
    place.x = snapshot.x[i]!;
    place.y = snapshot.y[i]!;
    layDown(nest, i, place);
  }
  measureAll(nest);
}
