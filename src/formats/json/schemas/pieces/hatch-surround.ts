import * as v from 'valibot';

import { exact, someText, zeroOrMore } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

export const hatchSurroundParameters = exact({
  width: size,
  height: size,
  cornerRadius: size,
  depths: v.optional(v.array(zeroOrMore)),
  form: choice('segments', 'one-piece'),
  segments: count,
  ringWidth: size,
  thickness: size,
  reveal: size,
  tenonDepth: size,
  joint: choice('loose-tenon', 'mitre-and-spline', 'half-lap'),
  lapLength: size,
  lining: choice('solid', 'none'),
  liningThickness: size,
  materials: exact({ ring: someText, lining: v.optional(someText) }),
});
