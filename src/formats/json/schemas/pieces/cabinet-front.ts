import * as v from 'valibot';

import { aboveZero, anyNumber, exact, someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

export const cabinetFrontParameters = exact({
  width: size,
  height: size,
  columns: count,
  rows: count,
  stileWidth: size,
  topRail: size,
  midRail: size,
  bottomRail: size,
  thickness: size,
  grading: choice('equal', 'arithmetic', 'geometric', 'given'),
  // Negative where the lower openings are the smaller ones.
  step: v.optional(anyNumber),
  ratio: v.optional(aboveZero),
  heights: v.optional(v.array(aboveZero)),
  joint: choice('loose-tenon', 'stub-tenon', 'half-lap', 'dowel', 'butt'),
  jointLength: size,
  fronts: choice('inset', 'overlay'),
  gap: size,
  overlay: size,
  frontThickness: size,
  cells: v.optional(v.array(v.array(v.picklist(['drawer', 'door', 'open'])))),
  grain: choice('vertical', 'horizontal'),
  continuous: choice('none', 'tight', 'true'),
  kerf: size,
  notch: size,
  fittingGap: size,
  scribe: size,
  materials: exact({ frame: someText, fronts: someText }),
});
