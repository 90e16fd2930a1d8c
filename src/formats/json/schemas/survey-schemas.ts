import * as v from 'valibot';

import { aboveZero, anyNumber, exact, findingsSchema, share, someText, wholeCount } from './basic-schemas.ts';

const pair = v.strictTuple([someText, someText]);

export const methodSchema = v.picklist([
  ...(['M1', 'M2', 'M3', 'M4', 'M5', 'M6', 'M7'] as const),
  ...(['M8', 'M9', 'M10', 'M11', 'M12', 'M13', 'M14'] as const),
]);

const commonEntries = {
  id: someText,
  sigma: v.optional(aboveZero),
  method: v.optional(methodSchema),
  repeats: v.optional(v.array(anyNumber)),
  toFace: v.optional(v.string()),
  note: v.optional(v.string()),
  toConfirm: v.optional(anyNumber),
};

export const readingSchema = v.variant('kind', [
  exact({ ...commonEntries, kind: v.literal('distance'), from: someText, to: someText, value: aboveZero }),
  exact({ ...commonEntries, kind: v.literal('width'), left: pair, right: pair, at: share, value: aboveZero }),
  exact({ ...commonEntries, kind: v.literal('plumb'), from: someText, to: someText, value: anyNumber }),
  exact({ ...commonEntries, kind: v.literal('level'), from: someText, to: someText, value: anyNumber }),
  exact({
    ...commonEntries,
    kind: v.literal('offset'),
    point: someText,
    from: someText,
    to: someText,
    value: anyNumber,
  }),
  exact({
    ...commonEntries,
    kind: v.literal('angle'),
    at: someText,
    from: someText,
    to: someText,
    value: anyNumber,
  }),
  exact({ ...commonEntries, kind: v.literal('bow'), from: someText, to: someText, value: anyNumber }),
  exact({
    ...commonEntries,
    kind: v.literal('ordinate'),
    point: someText,
    from: someText,
    to: someText,
    station: anyNumber,
    value: anyNumber,
  }),
  exact({
    ...commonEntries,
    kind: v.literal('tick'),
    board: someText,
    point: someText,
    station: anyNumber,
    value: anyNumber,
    reach: v.optional(anyNumber),
  }),
  exact({ ...commonEntries, kind: v.literal('twist'), first: pair, second: pair, value: anyNumber }),
  exact({ ...commonEntries, kind: v.literal('thickness'), place: someText, value: aboveZero }),
]);

/** Input of `joggle measure`. */
export const surveySchema = exact({
  seenFrom: someText,
  readings: v.array(readingSchema),
  corners: v.optional(v.array(someText)),
  fixed: v.optional(v.array(exact({ id: someText, x: anyNumber, y: anyNumber }))),
  datum: v.optional(v.picklist(['first', 'free'])),
});

const numberEntries = {
  value: anyNumber,
  sigma: aboveZero,
  adjusted: anyNumber,
  residual: anyNumber,
  redundancy: anyNumber,
  normalised: v.nullable(anyNumber),
  smallestSlip: v.nullable(anyNumber),
};

/** Answer of `joggle measure`. */
export const adjustmentSchema = exact({
  seenFrom: v.string(),
  points: v.array(exact({ id: someText, x: anyNumber, y: anyNumber, sx: anyNumber, sy: anyNumber })),
  tilt: v.nullable(anyNumber),
  readings: v.array(exact({ id: someText, ...numberEntries, station: v.optional(exact(numberEntries)) })),
  dof: wholeCount,
  chi2: anyNumber,
  suspects: v.array(
    exact({
      id: someText,
      slip: anyNumber,
      cause: v.string(),
      mistake: v.optional(v.string()),
      part: v.optional(v.literal('station')),
    }),
  ),
  undetermined: v.array(v.string()),
  advice: v.nullable(v.string()),
  findings: findingsSchema,
  twist: v.optional(exact({ value: anyNumber, u95: anyNumber })),
  thickness: v.optional(
    exact({ count: wholeCount, least: anyNumber, most: anyNumber, mean: anyNumber, u95: anyNumber }),
  ),
});
