import * as v from 'valibot';

import { exact, someText, zeroOrMore } from '../basic-schemas.ts';
import { choice, size } from './fields.ts';

const sizes = v.optional(v.array(zeroOrMore));

export const freeFrameParameters = exact({
  width: size,
  height: size,
  corners: sizes,
  gap: size,
  gaps: sizes,
  memberWidth: size,
  widths: sizes,
  thickness: size,
  joint: choice('mitre', 'spline', 'butt', 'loose-tenon', 'half-lap', 'bridle'),
  through: choice('upright', 'level', 'round'),
  jointDepth: size,
  jointThickness: size,
  materials: exact({ frame: someText }),
});
