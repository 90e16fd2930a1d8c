import * as v from 'valibot';

import { exact, someText, zeroOrMore } from '../basic-schemas.ts';
import { choice, count, flag, size } from './fields.ts';

const sizes = v.optional(v.array(zeroOrMore));

export const carcaseParameters = exact({
  width: size,
  height: size,
  foot: size,
  start: size,
  heights: sizes,
  left: sizes,
  right: sizes,
  clearance: size,
  frontThickness: size,
  thickness: size,
  shelfThickness: size,
  shelves: sizes,
  joint: choice('housing', 'butt', 'dowel', 'loose-tenon'),
  housing: size,
  cleats: flag,
  cleat: size,
  railWidth: size,
  railJoint: choice('butt', 'rebate', 'dowel', 'loose-tenon'),
  shelfBack: choice('square', 'bevelled'),
  endBack: choice('square', 'bevelled'),
  obstacles: sizes,
  vents: count,
  ventDiameter: size,
  load: size,
  materials: exact({ panel: someText, shelf: v.optional(someText), cleats: v.optional(someText) }),
});
