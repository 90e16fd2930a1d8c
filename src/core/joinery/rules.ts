import type { JoinerySettings } from './piece-types.ts';

/** Defaults of a project (joinery 0.6). */
export const defaultSettings: JoinerySettings = {
  film: 0.15,
  moistureNow: 10,
  moistureLow: 9,
  moistureHigh: 16,
  arris: 1,
};

/** What a straight part leaves free at each end between two sides as measured, so that it goes in; mm (common practice, no source). */
export const freeAtEnds = 1;

/** Rough allowances, mm (joinery D4). */
export const roughAllowance = {
  sawn: { length: 25, width: 6 },
  planed: { length: 20, width: 4 },
  horns: 40,
  shortestBlank: 300,
  sheetTrimmed: 10,
  thickness: { usual: 4, long: 5, short: 3, longFrom: 1200, wideFrom: 150, shortBelow: 600 },
} as const;

/**
 * Edge-glued panels, mm (joinery D4, C16): allowances on length, width, for each joint, and on sawn thickness; the widest
 * flat-sawn board where flatness matters (D3); staves narrower than `narrow` make more joints than panel (common practice).
 */
export const glueUp = {
  length: 25,
  width: 6,
  joint: 2,
  thickness: 5,
  widestFlat: 120,
  narrow: 40,
  caul: 20,
} as const;

/** Spares (joinery D3): a length to try a setting on, mm, two for a corner of fingers, a share more of lippings. */
export const spareRule = { length: 300, corner: 2, lippingShare: 0.1 } as const;

/** Least visible gap left by the finish on both faces of anything that opens, mm (joinery 0.7, G6). */
export const leastFinishedGap = 1.2;

/** Largest single gap to pack; beyond it the opening is furred out, mm (joinery A11, B1.1). */
export const largestPacking = 18;

/** Scribe allowance, mm (joinery A11): clamped between these; a deviation asking for more wants a template first. */
export const scribe = { least: 5, most: 25, margin: 2 } as const;

/** Lean to the nearest upright line that the eye sees, mm per m (joinery B1.2). */
export const visibleLean = 2;

/** Clear opening of a passage door below which it is awkward, mm (joinery B1.4, common practice). */
export const comfortableOpening = { width: 450, height: 1500 } as const;

/** Wood left behind a housing in a jamb, mm (joinery B1.5). */
export const leastBehindHousing = 10;

/** Wood between a housing and the end of its member, mm (joinery B1.10). */
export const leastBeyondHousing = 15;

/** Overlap of a cover on the bulkhead, mm: below `good` doubtful, below `least` it will not hide the gap (joinery B1). */
export const coverOverlap = { good: 8, least: 4 } as const;

/** Variation of a bulkhead's thickness that a lining swallows, mm (joinery B1.7). */
export const bulkheadVariation = 2;

/** Narrowest stop a door can rest on, mm (joinery B1.11). */
export const narrowestStop = 10;

/** Thinnest wall left by a joint, mm and as a part of the thickness (joinery C0.2). */
export const thinnestWall = { hard: 5, share: 1 / 4 } as const;

/** A web along the grain shorter than this many times its thickness breaks off (joinery C0.3). */
export const shortGrainRatio = 2;

/** A housing stays square to its own member up to this much off square, degrees (joinery B1, fitted mode). */
export const squareHousingDegrees = 2;

/** A slope or addition below this is not sawn, mm: a pencil line is wider. */
export const sawable = 0.1;

/** Least distance between two neighbours that a saw parts, mm: the widest kerf there is (joinery 0.6). */
export const sawnApart = 5;

/** Difference in moisture between workshop and the middle aboard that moves the wood, percent points (joinery D2). */
export const moistureStep = 3;

/** Screws and wedges: largest spacing, and furthest from an end, mm (joinery A11, common practice). */
export const fixingSpacing = { most: 450, fromEnd: 150 } as const;

/** Smallest solid piece for planer and jointer without a carrier, mm (joinery D5, common practice). */
export const machineLeast = { length: 300, width: 20, thickness: 12 } as const;
