import * as v from 'valibot';

import { someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

/** How a door hangs, alike in every kind of door. */
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
  leaf: choice('whole', 'first', 'second'),
  meeting: choice('gap', 'rebate'),
  meetingGap: size,
  meetingRebate: size,
  lock: choice('face-latch', 'mortise-lock', 'rim-lock', 'turn-button', 'none'),
  lockHeight: size,
  lockBackset: size,
  lockDepth: size,
  lockCaseHeight: size,
  lockCaseThickness: size,
  forendHeight: size,
  forendWidth: size,
  forendThickness: size,
};
