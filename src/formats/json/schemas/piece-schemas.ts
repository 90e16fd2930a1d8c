import * as v from 'valibot';

import { aboveZero, anyNumber, exact, someText, wholeCount, zeroOrMore } from './basic-schemas.ts';

const size = v.optional(zeroOrMore);
const count = v.optional(wholeCount);
const flag = v.optional(v.boolean());

function choice<const Choices extends readonly string[]>(...choices: Choices) {
  return v.optional(v.picklist(choices));
}

const doorFrameParameters = exact({
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

const drawerParameters = exact({
  openingWidth: aboveZero,
  openingHeight: aboveZero,
  clearDepth: aboveZero,
  openingVariation: size,
  sideThickness: size,
  frontThickness: size,
  backThickness: size,
  bottomThickness: size,
  grooveDepth: size,
  grooveUp: size,
  runner: choice('metal', 'side-rail', 'bottom-notch', 'bottom'),
  runnerLength: size,
  notch: size,
  railDepth: size,
  bottomStyle: choice('captured', 'slides-under-back'),
  corner: choice(
    'box',
    'through-dovetail',
    'lapped-dovetail',
    'rebate',
    'housed-back',
    'lock-rebate',
    'butt',
  ),
  front: choice('overlay', 'inset', 'none'),
  overlay: size,
  insetGap: size,
  falseFrontThickness: size,
  count,
  materials: exact({
    box: someText,
    bottom: someText,
    front: v.optional(someText),
    runners: v.optional(someText),
  }),
});

const cabinetFrontParameters = exact({
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

const flatDoorParameters = exact({
  frame: v.optional(someText),
  width: size,
  height: size,
  gapSide: size,
  gapTop: size,
  gapBottom: size,
  hinged: choice('left', 'right'),
  thickness: size,
  lipping: size,
  hingeLipping: size,
  lockLipping: size,
  lipJoint: choice('butt', 'mitre', 'corner-block'),
  cornerRadius: size,
  bevelDegrees: size,
  // 0 for a door without slots.
  slots: count,
  slotsRun: choice('upright', 'across'),
  slotWidth: size,
  slotLength: size,
  slotZone: size,
  slotEdge: size,
  pivotBeyond: size,
  pivotProud: size,
  hingeLength: size,
  lockDepth: size,
  battens: choice('auto', 'always', 'none'),
  materials: exact({ core: someText, lipping: someText }),
});

const commonEntries = { id: someText, letter: someText, name: v.string(), shape: v.optional(someText) };

export const pieceSchema = v.variant('kind', [
  exact({ ...commonEntries, kind: v.literal('door-frame'), parameters: doorFrameParameters }),
  exact({ ...commonEntries, kind: v.literal('drawer'), parameters: drawerParameters }),
  exact({ ...commonEntries, kind: v.literal('cabinet-front'), parameters: cabinetFrontParameters }),
  exact({ ...commonEntries, kind: v.literal('flat-door'), parameters: flatDoorParameters }),
]);
