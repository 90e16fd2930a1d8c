import * as v from 'valibot';

import { wholeCount, zeroOrMore } from '../basic-schemas.ts';

/** A size that may be left out, mm. */
export const size = v.optional(zeroOrMore);
export const count = v.optional(wholeCount);
export const flag = v.optional(v.boolean());

/** One of these words, or left out. */
export function choice<const Choices extends readonly string[]>(...choices: Choices) {
  return v.optional(v.picklist(choices));
}

/** What all glued pieces may say of their glue. */
export const glueEntries = {
  glue: choice('project', 'epoxy', 'pva', 'polyurethane'),
  wet: choice('project', 'dry', 'wet'),
};
