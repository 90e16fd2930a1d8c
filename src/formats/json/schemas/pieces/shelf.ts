import * as v from 'valibot';

import { exact, someText } from '../basic-schemas.ts';
import { choice, size } from './fields.ts';

export const shelfParameters = exact({
  length: size,
  depth: size,
  height: size,
  start: size,
  clearance: size,
  thickness: size,
  fiddle: choice('edge', 'rebate', 'top', 'none'),
  fiddleHeight: size,
  fiddleThickness: size,
  cornerOpen: size,
  endFiddles: choice('none', 'left', 'right', 'both'),
  backHeld: choice('cleat', 'tabs', 'no'),
  cleat: size,
  load: size,
  itemWidth: size,
  itemCentre: size,
  itemHeight: size,
  angle: size,
  room: size,
  materials: exact({ shelf: someText, fiddle: v.optional(someText), cleats: v.optional(someText) }),
});
