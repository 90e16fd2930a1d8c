import * as v from 'valibot';

import { aboveZero, anyNumber, exact, someText, zeroOrMore } from '../basic-schemas.ts';
import { choice, count, flag, size } from './fields.ts';

const sizes = v.optional(v.array(zeroOrMore));

export const runParameters = exact({
  width: size,
  height: size,
  columns: count,
  rows: count,
  cells: v.optional(v.array(v.array(v.picklist(['drawer', 'door', 'open'])))),
  grading: choice('equal', 'arithmetic', 'geometric', 'given'),
  // Negative where the lower openings are the smaller ones.
  step: v.optional(anyNumber),
  ratio: v.optional(aboveZero),
  heights: v.optional(v.array(aboveZero)),
  stileWidth: size,
  topRail: size,
  midRail: size,
  bottomRail: size,
  thickness: size,
  joint: choice('loose-tenon', 'stub-tenon', 'half-lap', 'dowel', 'butt'),
  overlay: size,
  notch: size,
  continuous: choice('none', 'tight', 'true'),
  foot: size,
  start: size,
  clearance: size,
  load: size,
  obstacles: sizes,
  overhang: size,
  radius: size,
  lipping: size,
  cutouts: sizes,
  cutoutRadius: size,
  bodyDepth: size,
  fiddleHeight: size,
  corner: choice(
    'box',
    'through-dovetail',
    'lapped-dovetail',
    'rebate',
    'housed-back',
    'lock-rebate',
    'butt',
  ),
  hullHeights: sizes,
  hullLeft: sizes,
  hullRight: sizes,
  doorShelf: flag,
  doors: choice('lipped', 'plain'),
  top: flag,
  openEnds: choice('none', 'left', 'right', 'both'),
  materials: exact({
    frame: someText,
    fronts: someText,
    panel: someText,
    box: someText,
    bottom: someText,
    top: v.optional(someText),
  }),
});
