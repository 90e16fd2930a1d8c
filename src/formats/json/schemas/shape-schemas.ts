import { longestImage } from '#core/project';
import * as v from 'valibot';

import {
  aboveZero,
  anyNumber,
  exact,
  share,
  siteSize,
  someText,
  wholeCount,
  zeroOrMore,
} from './basic-schemas.ts';
import { methodSchema, readingSchema } from './survey-schemas.ts';

const sigma = v.optional(aboveZero);
/** A place on site, mm: further than a hundred metres is a slip of the keys. */
const sitePlace = v.pipe(v.number(), v.finite(), v.minValue(-100_000), v.maxValue(100_000));
const bevel = v.pipe(v.number(), v.finite(), v.minValue(-89), v.maxValue(89));
const turn = v.pipe(v.number(), v.finite(), v.gtValue(0), v.ltValue(360));

const photoSchema = exact({
  id: someText,
  caption: v.string(),
  image: v.pipe(v.string(), v.maxLength(longestImage), v.regex(/^data:image\/(?:png|jpeg|webp|gif);base64,/)),
  strokes: v.array(exact({ points: v.array(exact({ x: share, y: share })) })),
});

const obstructionSchema = exact({
  id: someText,
  name: v.string(),
  x: sitePlace,
  y: sitePlace,
  width: siteSize,
  height: siteSize,
  section: v.optional(someText),
});

const curveSchema = exact({
  id: someText,
  from: someText,
  to: someText,
  ordinates: v.array(exact({ at: zeroOrMore, value: sitePlace })),
  sigma,
});

const barSchema = exact({ drawn: siteSize, real: siteSize });

const tracedSchema = exact({
  points: v.array(exact({ x: anyNumber, y: anyNumber, bulge: v.optional(anyNumber) })),
  cornersAt: v.array(wholeCount),
  bars: v.optional(exact({ x: v.optional(barSchema), y: v.optional(barSchema) })),
  sigma,
  source: v.optional(v.string()),
});

const sectionSchema = exact({
  id: someText,
  name: v.string(),
  at: sitePlace,
  ordinates: v.array(exact({ height: sitePlace, depth: sitePlace })),
  bevels: v.optional(v.array(exact({ height: sitePlace, degrees: bevel }))),
  sigma,
});

const wallSchema = exact({
  id: someText,
  name: v.string(),
  length: siteSize,
  bow: v.optional(sitePlace),
  method: v.optional(methodSchema),
  sigma,
  corner: v.optional(exact({ degrees: turn, sigma })),
});

const commonEntries = {
  id: someText,
  name: v.string(),
  seenFrom: someText,
  readings: v.array(readingSchema),
  note: v.optional(v.string()),
  photos: v.optional(v.array(photoSchema)),
};
const obstructions = v.optional(v.array(obstructionSchema));

/** A measured shape of a project. */
export const shapeSchema = v.variant('kind', [
  exact({ ...commonEntries, kind: v.literal('opening'), obstructions }),
  exact({
    ...commonEntries,
    kind: v.literal('outline'),
    corners: v.array(someText),
    curves: v.optional(v.array(curveSchema)),
    obstructions,
    traced: v.optional(tracedSchema),
  }),
  exact({ ...commonEntries, kind: v.literal('sections'), sections: v.array(sectionSchema), obstructions }),
  exact({
    ...commonEntries,
    kind: v.literal('walls'),
    walls: v.array(wallSchema),
    closed: v.optional(v.boolean()),
  }),
]);
