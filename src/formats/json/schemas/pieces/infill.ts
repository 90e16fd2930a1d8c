import * as v from 'valibot';

import { exact, someText, zeroOrMore } from '../basic-schemas.ts';
import { choice, size } from './fields.ts';

const sizes = v.optional(v.array(zeroOrMore));

export const infillParameters = exact({
  height: size,
  gaps: sizes,
  heights: sizes,
  scribed: choice('left', 'right'),
  reveal: size,
  sigma: size,
  thickness: size,
  bevelDegrees: size,
  materials: exact({ filler: someText }),
});
