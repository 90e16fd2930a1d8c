import * as v from 'valibot';

import { exact, someText, zeroOrMore } from '../basic-schemas.ts';
import { choice, size } from './fields.ts';

const sizes = v.optional(v.array(zeroOrMore));

export const trimRunParameters = exact({
  wallLengths: sizes,
  cornerAngles: sizes,
  leftEnd: choice('square', 'return'),
  rightEnd: choice('square', 'return'),
  width: size,
  thickness: size,
  tiltDegrees: size,
  touches: choice('lower', 'upper'),
  outside: choice('mitre', 'post'),
  postRadius: size,
  stick: size,
  materials: exact({ trim: someText }),
});
