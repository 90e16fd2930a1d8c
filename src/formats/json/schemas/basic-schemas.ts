import * as v from 'valibot';

/**
 * An object with exactly these keys. What the schema library calls its message is here the list of known keys, from
 * which the sentence about an unknown key is made.
 */
export function exact<Entries extends v.ObjectEntries>(entries: Entries) {
  return v.strictObject(entries, Object.keys(entries).join(' '));
}

/** Any finite number: JSON can hold 1e999, we cannot. */
export const anyNumber = v.pipe(v.number(), v.finite());
export const zeroOrMore = v.pipe(v.number(), v.finite(), v.minValue(0));
export const aboveZero = v.pipe(v.number(), v.finite(), v.gtValue(0));
export const share = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1));
/** A size of something in the rack or on site, mm: above a hundred metres it is a slip of the keys. */
export const siteSize = v.pipe(v.number(), v.finite(), v.gtValue(0), v.maxValue(100_000));
export const wholeCount = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
export const someText = v.pipe(v.string(), v.nonEmpty());

export const problemSchema = exact({
  severity: v.picklist(['stop', 'warn', 'note']),
  code: someText,
  about: v.optional(v.string()),
  message: someText,
  remedy: v.optional(v.string()),
  source: v.optional(v.string()),
});

export const findingsSchema = v.array(problemSchema);
