import type { NestStock } from '#core/nesting';
import * as v from 'valibot';

import {
  aboveZero,
  anyNumber,
  exact,
  findingsSchema,
  share,
  someText,
  wholeCount,
  zeroOrMore,
} from './basic-schemas.ts';
import { rectangleSchema } from './cutting-schemas.ts';

const cornerSchema = v.strictTuple([anyNumber, anyNumber]);

const sheetSchema = exact({
  id: someText,
  length: aboveZero,
  width: aboveZero,
  cost: v.optional(zeroOrMore),
  count: v.optional(v.nullable(wholeCount)),
  keepOut: v.optional(v.array(rectangleSchema)),
});
const stripSchema = exact({ strip: aboveZero });

/** A sheet size or a strip; which of them it is shows by its keys. */
const stockSchema: v.GenericSchema<NestStock> = v.lazy((input) => {
  const keys = typeof input === 'object' && input !== null ? Object.keys(input) : [];
  if (keys.includes('strip')) return stripSchema;
  return keys.length > 0 ? sheetSchema : v.union([sheetSchema, stripSchema]);
});

/** Input of `joggle nest`. */
export const nestJobSchema = exact({
  gap: v.optional(zeroOrMore),
  margin: v.optional(zeroOrMore),
  stock: v.array(stockSchema),
  parts: v.array(
    exact({
      id: someText,
      outline: v.array(cornerSchema),
      holes: v.optional(v.array(v.array(cornerSchema))),
      angles: v.optional(v.array(anyNumber)),
      count: v.optional(wholeCount),
    }),
  ),
});

const countedSchema = exact({ id: someText, count: wholeCount });

/** Answer of `joggle nest`. */
export const nestPlanSchema = exact({
  sheets: v.array(exact({ stock: someText })),
  placements: v.array(
    exact({ id: someText, sheet: wholeCount, angle: anyNumber, x: anyNumber, y: anyNumber }),
  ),
  stockUsed: v.array(countedSchema),
  length: v.nullable(zeroOrMore),
  cost: zeroOrMore,
  bound: v.nullable(anyNumber),
  proven: v.boolean(),
  density: share,
  unplaced: v.array(countedSchema),
  seconds: zeroOrMore,
  findings: findingsSchema,
});
