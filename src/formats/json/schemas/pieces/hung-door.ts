import * as v from 'valibot';

import { someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

/** How a door hangs, alike in every kind of door made of members. */
export const hungDoorEntries = {
  frame: v.optional(someText),
  cabinetFront: v.optional(someText),
  row: count,
  column: count,
  width: size,
  height: size,
  gapSide: size,
  gapTop: size,
  gapBottom: size,
  hinged: choice('left', 'right'),
  bevelDegrees: size,
  pivotBeyond: size,
  pivotProud: size,
  hingeLength: size,
};
