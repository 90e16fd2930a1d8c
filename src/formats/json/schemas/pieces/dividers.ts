import * as v from 'valibot';

import { aboveZero, exact, someText } from '../basic-schemas.ts';
import { choice, count, flag, size } from './fields.ts';

export const dividersParameters = exact({
  insideWidth: aboveZero,
  insideDepth: aboveZero,
  height: size,
  form: choice('bins', 'cells'),
  binLength: size,
  binWidth: size,
  binHeight: size,
  binTaper: size,
  binWay: choice('auto', 'long-across', 'short-across'),
  clearance: size,
  headroom: size,
  frontRoom: size,
  columns: count,
  rows: count,
  strips: flag,
  walls: choice('none', 'box', 'rebate', 'butt'),
  materials: exact({ dividers: someText, strips: v.optional(someText) }),
});
