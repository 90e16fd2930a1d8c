import * as v from 'valibot';

import {
  aboveZero,
  exact,
  findingsSchema,
  siteSize,
  someText,
  wholeCount,
  zeroOrMore,
  anyNumber,
} from './basic-schemas.ts';
import {
  cuttingJobSchema,
  cuttingPlanSchema,
  cutRulesSchema,
  rectangleSchema,
  trimSchema,
} from './cutting-schemas.ts';
import { nestJobSchema, nestPlanSchema } from './nest-schemas.ts';
import { pieceSchema } from './piece-schemas.ts';
import { shapeSchema } from './shape-schemas.ts';

const percent = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(30));
const density = v.optional(aboveZero);

const materialSchema = v.variant('kind', [
  exact({ id: someText, kind: v.literal('sheet'), name: v.string(), thickness: siteSize, density }),
  exact({
    id: someText,
    kind: v.literal('solid'),
    name: v.string(),
    species: v.optional(v.string()),
    state: v.picklist(['sawn', 'planed']),
    density,
  }),
]);

const stockLineSchema = exact({
  id: someText,
  material: someText,
  form: v.picklist(['sheet', 'board', 'batten', 'offcut']),
  length: siteSize,
  width: siteSize,
  thickness: siteSize,
  count: v.nullable(wholeCount),
  price: v.optional(zeroOrMore),
  owned: v.optional(v.boolean()),
  keepOut: v.optional(v.array(rectangleSchema)),
  note: v.optional(v.string()),
});

/** No cutter and no pass is finer or coarser. */
const routerSize = v.pipe(v.number(), v.finite(), v.minValue(0.1), v.maxValue(100));

const sawSchema = exact({
  id: someText,
  name: v.string(),
  kerf: v.pipe(zeroOrMore, v.maxValue(20)),
  trim: trimSchema,
  cuts: cutRulesSchema,
});

const partSizeSchema = exact({ length: aboveZero, width: aboveZero, thickness: aboveZero });

const gate = { id: someText, name: v.string() };
const gateSchema = v.variant('kind', [
  exact({
    ...gate,
    kind: v.literal('opening'),
    width: siteSize,
    height: siteSize,
    cornerRadius: v.optional(zeroOrMore),
  }),
  exact({ ...gate, kind: v.literal('corner'), before: siteSize, after: siteSize, depth: siteSize }),
  exact({ ...gate, kind: v.literal('space'), length: siteSize, width: siteSize, height: siteSize }),
]);

/** The saved document, version 1. */
export const projectSchema = exact({
  version: v.literal(1),
  name: v.string(),
  currency: v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'the three capitals of ISO 4217, as EUR')),
  pricesIncludeTax: v.boolean(),
  paper: v.picklist(['A4', 'Letter']),
  units: v.picklist(['mm', 'inch']),
  settings: exact({
    film: zeroOrMore,
    moistureNow: percent,
    moistureLow: percent,
    moistureHigh: percent,
    arris: zeroOrMore,
    finish: v.optional(
      v.picklist([
        ...(['oil-varnish', 'polyurethane', 'two-pack'] as const),
        ...(['water-borne', 'hard-wax-oil', 'oil', 'epoxy'] as const),
      ]),
    ),
    coatsShown: v.optional(zeroOrMore),
    coatsHidden: v.optional(zeroOrMore),
    widestFlat: v.optional(aboveZero),
    spares: v.optional(v.picklist(['none', 'boards', 'all'])),
    glue: v.optional(v.picklist(['usual', 'epoxy', 'pva', 'polyurethane'])),
    wet: v.optional(v.boolean()),
  }),
  shapes: v.array(shapeSchema),
  pieces: v.array(pieceSchema),
  materials: v.array(materialSchema),
  stock: v.array(stockLineSchema),
  tools: exact({
    sheetSaw: sawSchema,
    boardSaw: sawSchema,
    router: exact({ cutter: routerSize, passDepth: routerSize }),
    keepLeftover: exact({ minLength: zeroOrMore, minWidth: zeroOrMore }),
  }),
  fixingPrices: v.optional(v.array(exact({ item: someText, price: zeroOrMore }))),
  done: v.array(someText),
  made: v.optional(
    v.array(
      exact({
        part: someText,
        count: wholeCount,
        staves: v.optional(wholeCount),
        finished: partSizeSchema,
        form: someText,
      }),
    ),
  ),
  routed: v.optional(v.array(someText)),
  taken: v.optional(v.array(exact({ group: someText, job: someText, plan: cuttingPlanSchema }))),
  route: v.optional(v.array(gateSchema)),
});

/** `plan.json`. */
export const planFileSchema = exact({
  version: v.literal(1),
  project: v.string(),
  currency: v.string(),
  groups: v.array(
    exact({
      id: someText,
      title: v.string(),
      material: someText,
      form: v.picklist(['sheet', 'board', 'batten']),
      job: cuttingJobSchema,
      blanks: v.array(
        exact({
          id: someText,
          set: v.optional(someText),
          parts: v.array(
            exact({
              part: someText,
              x: anyNumber,
              y: anyNumber,
              length: aboveZero,
              width: aboveZero,
              outline: v.optional(
                v.array(exact({ x: anyNumber, y: anyNumber, bulge: v.optional(anyNumber) })),
              ),
            }),
          ),
        }),
      ),
      plan: cuttingPlanSchema,
    }),
  ),
  routing: v.optional(
    v.array(
      exact({
        id: someText,
        title: v.string(),
        material: someText,
        job: nestJobSchema,
        plan: nestPlanSchema,
      }),
    ),
  ),
  parts: v.array(
    exact({
      id: someText,
      piece: someText,
      name: v.string(),
      quantity: wholeCount,
      hand: v.picklist(['left', 'right', 'none']),
      material: someText,
      finished: partSizeSchema,
      cut: partSizeSchema,
      rough: partSizeSchema,
      staves: v.optional(wholeCount),
      spare: v.optional(someText),
    }),
  ),
  findings: findingsSchema,
});
