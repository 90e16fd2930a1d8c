import { fail, succeed, type Problem, type Result } from '#core/problems';

import { millimetresPerInch, type LengthSystem } from './format-length.ts';

/** Millimetres in each unit, by every spelling that is read. */
const unitSizes: ReadonlyMap<string, number> = new Map([
  ['mm', 1],
  ['cm', 10],
  ['m', 1000],
  ...['in', 'inch', 'inches', '"', '″', '”', "''"].map((unit) => [unit, millimetresPerInch] as const),
  ...['ft', 'foot', 'feet', "'", '′', '’'].map((unit) => [unit, 12 * millimetresPerInch] as const),
]);

const feet = /^(ft|foot|feet|'(?!')|′|’)/;
const unicodeFractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};
/** Longer than any number a tape or a file can mean; keeps the value finite. */
const mostDigits = 12;

/**
 * Millimetres from what was typed: `842`, `84.2 cm`, `33 1/8 in`, `2' 9-1/8"`, `33⅛`, `84,2`. A bare number is in the
 * unit of `system`. Fails with a sentence when it is empty, not understood or could mean two things.
 */
export function parseLength(text: string, system: LengthSystem): Result<number> {
  const plain = simplify(text);
  if (plain === '')
    return fail(problem('length-empty', 'No length was typed.', 'Type a number, as 842 or 33 1/8 in.'));
  const sign = /^[-+]/.exec(plain)?.[0] ?? '';
  const body = plain.slice(sign.length).trim();
  const doubt = findDoubt(body, text);
  if (doubt) return fail(doubt);
  const length = readBody(body, system);
  if (length === null) return fail(notUnderstood(text));
  return succeed((sign === '-' ? -length : length) + 0);
}

function simplify(text: string): string {
  return text
    .replace(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .replace(/[−–]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (fraction) => ` ${unicodeFractions[fraction]}`)
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}

function findDoubt(body: string, text: string): Problem | null {
  if (/\d,\d{3}(?!\d)|,.*[.,]|\..*,/.test(body))
    return problem(
      'length-ambiguous',
      `"${text.trim()}" can be read in two ways: the comma may mark thousands or decimals.`,
      'Type thousands without a mark and decimals with a point, as 1234 or 1.234.',
    );
  const fraction = /(\d+)\s*\/\s*(\d+)/.exec(body);
  if (fraction && Number(fraction[2]) === 0)
    return problem(
      'length-fraction',
      `"${text.trim()}" has a fraction over zero.`,
      'Type the fraction as on the tape, as 1/8.',
    );
  return null;
}

function readBody(body: string, system: LengthSystem): number | null {
  const first = takeNumber(body);
  if (!first) return null;
  if (first.rest === '') return first.value * (system === 'mm' ? 1 : millimetresPerInch);
  const mark = feet.exec(first.rest)?.[0];
  if (mark !== undefined) return readFeetAndInches(first.value, first.rest.slice(mark.length).trim());
  const size = unitSizes.get(first.rest);
  return size === undefined ? null : first.value * size;
}

function readFeetAndInches(count: number, rest: string): number | null {
  const whole = count * 12 * millimetresPerInch;
  if (rest === '') return whole;
  const inches = takeNumber(rest.replace(/^-\s*/, ''));
  if (!inches || inches.value >= 12) return null;
  if (inches.rest !== '' && unitSizes.get(inches.rest) !== millimetresPerInch) return null;
  return whole + inches.value * millimetresPerInch;
}

/** A mixed number, fraction, decimal or whole number at the start, and what follows it. */
function takeNumber(text: string): { readonly value: number; readonly rest: string } | null {
  const mixed = /^(?:(\d+)(?: -? ?|- ?))?(\d+) ?\/ ?(\d+)/.exec(text);
  if (mixed) {
    const [all, whole = '0', top = '0', bottom = '1'] = mixed;
    if (tooLong(whole, top, bottom) || (mixed[1] !== undefined && Number(top) >= Number(bottom))) return null;
    return { value: Number(whole) + Number(top) / Number(bottom), rest: text.slice(all.length).trim() };
  }
  const plain = /^(?:\d{1,3}(?: \d{3})+(?!\d)|\d+)(?:[.,]\d+)?|^[.,]\d+/.exec(text);
  if (!plain || tooLong(...plain[0].split(/[.,]/))) return null;
  return {
    value: Number(plain[0].replaceAll(' ', '').replace(',', '.')),
    rest: text.slice(plain[0].length).trim(),
  };
}

function tooLong(...digits: readonly string[]): boolean {
  return digits.some((run) => run.replaceAll(' ', '').length > mostDigits);
}

function notUnderstood(text: string): Problem {
  return problem(
    'length-not-understood',
    `"${text.trim().slice(0, 40)}" is not a length.`,
    'Type a number with or without its unit, as 842, 84.2 cm, 33 1/8 in or 2\' 9-1/8".',
  );
}

function problem(code: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, message, remedy };
}
