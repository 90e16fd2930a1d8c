import * as v from 'valibot';

import { exact, someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

export const flatDoorParameters = exact({
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
  thickness: size,
  lipping: size,
  hingeLipping: size,
  lockLipping: size,
  lipJoint: choice('butt', 'mitre', 'corner-block'),
  cornerRadius: size,
  bevelDegrees: size,
  // 0 for a door without slots.
  slots: count,
  slotsRun: choice('upright', 'across'),
  slotWidth: size,
  slotLength: size,
  slotZone: size,
  slotEdge: size,
  pivotBeyond: size,
  pivotProud: size,
  hingeLength: size,
  lockDepth: size,
  battens: choice('auto', 'always', 'none'),
  materials: exact({ core: someText, lipping: someText }),
});
