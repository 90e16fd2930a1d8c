import type { CutNode } from '#core/cutting';
import * as v from 'valibot';

import {
  aboveZero,
  anyNumber,
  exact,
  findingsSchema,
  someText,
  wholeCount,
  zeroOrMore,
} from './basic-schemas.ts';

export const rectangleEntries = { x: anyNumber, y: anyNumber, length: aboveZero, width: aboveZero };
export const rectangleSchema = exact(rectangleEntries);

export const trimSchema = exact({
  left: v.optional(zeroOrMore),
  right: v.optional(zeroOrMore),
  bottom: v.optional(zeroOrMore),
  top: v.optional(zeroOrMore),
});

export const cutRulesSchema = exact({
  style: v.optional(v.picklist(['guillotine', 'free', 'length'])),
  maxStages: v.optional(v.nullable(v.pipe(v.number(), v.safeInteger(), v.minValue(1)))),
  exact: v.optional(v.boolean()),
  firstCut: v.optional(v.picklist(['along', 'across', 'either'])),
  maxRip: v.optional(v.nullable(aboveZero)),
  maxCut: v.optional(v.nullable(aboveZero)),
});

/** Input of `joggle cut`. */
export const cuttingJobSchema = exact({
  kerf: v.optional(zeroOrMore),
  trim: v.optional(trimSchema),
  turn: v.optional(v.boolean()),
  cuts: v.optional(cutRulesSchema),
  stock: v.array(
    exact({
      id: someText,
      length: aboveZero,
      width: v.optional(aboveZero),
      cost: v.optional(zeroOrMore),
      count: v.optional(v.nullable(wholeCount)),
      keepOut: v.optional(v.array(rectangleSchema)),
    }),
  ),
  parts: v.array(
    exact({
      id: someText,
      length: aboveZero,
      width: v.optional(aboveZero),
      count: v.optional(wholeCount),
      turn: v.optional(v.boolean()),
    }),
  ),
  keepLeftover: v.optional(exact({ minLength: zeroOrMore, minWidth: v.optional(zeroOrMore) })),
});

/** A node of the tree of cuts; which of the four it is shows by its keys. */
const cutNodeSchema: v.GenericSchema<CutNode> = v.lazy((input) => {
  const keys = typeof input === 'object' && input !== null ? Object.keys(input) : [];
  if (keys.includes('cut') || keys.includes('children')) return cutSchema;
  if (keys.includes('part')) return partLeafSchema;
  if (keys.includes('leftover')) return leftoverLeafSchema;
  if (keys.includes('waste')) return wasteLeafSchema;
  return v.union([cutSchema, partLeafSchema, leftoverLeafSchema, wasteLeafSchema]);
});

/** Rectangles of a plan may be as thin as nothing where a kerf takes all. */
const nodeEntries = { x: anyNumber, y: anyNumber, length: zeroOrMore, width: zeroOrMore };
const cutSchema = exact({
  ...nodeEntries,
  cut: v.picklist(['along', 'across']),
  at: anyNumber,
  children: v.strictTuple([cutNodeSchema, cutNodeSchema]),
});
const partLeafSchema = exact({ ...nodeEntries, part: someText });
const leftoverLeafSchema = exact({ ...nodeEntries, leftover: v.literal(true) });
const wasteLeafSchema = exact({ ...nodeEntries, waste: v.literal(true) });

const countedSchema = exact({ id: someText, count: wholeCount });

/** Answer of `joggle cut`. */
export const cuttingPlanSchema = exact({
  cost: zeroOrMore,
  bound: v.nullable(anyNumber),
  proven: v.boolean(),
  seconds: zeroOrMore,
  stockUsed: v.array(countedSchema),
  unplaced: v.array(countedSchema),
  findings: findingsSchema,
  layouts: v.array(
    exact({
      stock: someText,
      times: wholeCount,
      placed: v.array(
        exact({
          id: someText,
          x: anyNumber,
          y: v.optional(anyNumber),
          length: aboveZero,
          width: v.optional(aboveZero),
          turned: v.boolean(),
        }),
      ),
      cuts: v.nullable(cutNodeSchema),
      leftovers: v.array(
        exact({
          x: anyNumber,
          y: v.optional(anyNumber),
          length: zeroOrMore,
          width: v.optional(zeroOrMore),
        }),
      ),
    }),
  ),
});
