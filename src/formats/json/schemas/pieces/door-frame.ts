import * as v from 'valibot';

import { anyNumber, exact, someText, zeroOrMore } from '../basic-schemas.ts';
import { choice, flag, size } from './fields.ts';

export const doorFrameParameters = exact({
  datum: choice('mean', 'left', 'right', 'boat'),
  mode: choice('auto', 'square', 'fitted'),
  packingSides: size,
  packingHead: size,
  packingSill: size,
  jambThickness: size,
  headThickness: size,
  sill: flag,
  sillThickness: size,
  sillNosing: size,
  sillJoint: choice('tongue', 'butt'),
  bulkheadMax: size,
  bulkheadMin: size,
  corner: choice(
    'rebate',
    'tongue',
    'housing-over',
    'housing-between',
    'half-lap',
    'bridle',
    'mitre',
    'butt',
  ),
  jointDepth: size,
  tongueThickness: size,
  horn: size,
  stop: choice('planted', 'rebated', 'cover', 'none'),
  stopThickness: size,
  stopRebate: size,
  covers: choice('both', 'near', 'far', 'none'),
  coverWidth: size,
  coverThickness: size,
  // Negative where the cover of the far face is the stop (joinery B1.11).
  reveal: v.optional(anyNumber),
  doorThickness: size,
  doorGapSide: size,
  doorGapTop: size,
  doorGapBottom: size,
  infill: flag,
  infillOrdinates: v.optional(v.array(zeroOrMore)),
  materials: exact({ frame: someText, covers: v.optional(someText), infill: v.optional(someText) }),
});
