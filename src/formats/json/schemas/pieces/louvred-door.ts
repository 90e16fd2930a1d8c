import { exact, someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';
import { hungDoorEntries } from './hung-door.ts';

export const louvredDoorParameters = exact({
  ...hungDoorEntries,
  thickness: size,
  stile: size,
  topRail: size,
  bottomRail: size,
  midRails: count,
  midRail: size,
  joint: choice('stub-tenon', 'loose-tenon'),
  tenon: size,
  section: choice('square', 'flush'),
  angleDegrees: size,
  slatThickness: size,
  slatWidth: size,
  setback: size,
  overlap: size,
  slats: count,
  housing: size,
  materials: exact({ frame: someText, slats: someText }),
});
