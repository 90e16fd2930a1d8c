import * as v from 'valibot';

import { exact, someText, wholeCount, zeroOrMore } from '../basic-schemas.ts';
import { flag, size } from './fields.ts';

const sizes = v.optional(v.array(zeroOrMore));
const numbers = v.optional(v.array(wholeCount));

export const countertopParameters = exact({
  width: size,
  depth: size,
  corners: sizes,
  overhang: size,
  openSides: numbers,
  wallGap: size,
  radius: size,
  radii: sizes,
  thickness: size,
  lipping: size,
  cutouts: sizes,
  cutoutRadius: size,
  cutoutClearance: size,
  bodyDepth: size,
  doubler: size,
  fiddleSides: numbers,
  fiddleHeight: size,
  fiddleThickness: size,
  cornerOpen: size,
  supports: sizes,
  railed: flag,
  laminate: flag,
  materials: exact({ top: someText, lipping: v.optional(someText), doubler: v.optional(someText) }),
});
