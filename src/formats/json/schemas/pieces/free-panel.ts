import * as v from 'valibot';

import { exact, someText, wholeCount, zeroOrMore } from '../basic-schemas.ts';
import { choice, size } from './fields.ts';

const sizes = v.optional(v.array(zeroOrMore));

export const freePanelParameters = exact({
  width: size,
  height: size,
  corners: sizes,
  gap: size,
  gaps: sizes,
  radius: size,
  radii: sizes,
  holes: sizes,
  cutouts: sizes,
  cutoutRadius: size,
  lippedSides: v.optional(v.array(wholeCount)),
  scribedSides: v.optional(v.array(wholeCount)),
  lipping: size,
  scribe: size,
  thickness: size,
  grain: choice('up', 'across', 'any'),
  match: choice('plain', 'book'),
  fixed: choice('glued', 'screwed', 'loose'),
  materials: exact({ panel: someText, lipping: v.optional(someText) }),
});
