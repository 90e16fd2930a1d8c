import { exact, someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';
import { hungDoorEntries } from './hung-door.ts';

export const flatDoorParameters = exact({
  ...hungDoorEntries,
  thickness: size,
  lipping: size,
  hingeLipping: size,
  lockLipping: size,
  lipJoint: choice('butt', 'mitre', 'corner-block'),
  cornerRadius: size,
  // 0 for a door without slots.
  slots: count,
  slotsRun: choice('upright', 'across'),
  slotWidth: size,
  slotLength: size,
  slotZone: size,
  slotEdge: size,
  figure: choice('own', 'through'),
  battens: choice('auto', 'always', 'none'),
  materials: exact({ core: someText, lipping: someText }),
});
