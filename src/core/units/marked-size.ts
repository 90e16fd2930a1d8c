import { formatLength, millimetresPerInch, type LengthSystem } from './format-length.ts';
import { formatNumber } from './format-number.ts';

/** Stand round a size in a text until it is shown; of the private use area of Unicode, which no text of a user's holds by chance. */
const marks = { open: '\uE000', close: '\uE001' } as const;

const sizes =
  /\uE000([^,\uE001]*),(\d+)\uE001(?: mm\b)?|-?\d+(?:\.\d+)?(?: × -?\d+(?:\.\d+)?)* mm\b(?![²³/])/g;

/** Under 1/16 in a fraction says little of a gap or a film: it is told in thousandths. */
const leastFraction = millimetresPerInch / 16;

/** A length in mm within a sentence, marked so that `sayLengths` tells it in the units of a project; throws when it is no number. */
export function markSize(length: number, decimals = 1): string {
  formatNumber(length, decimals);
  return `${marks.open}${length},${decimals}${marks.close}`;
}

/**
 * A text with its lengths told in these units: those marked (in mm without a unit, as on drawings), and plain figures
 * before `mm`. Inches go to 1/32, finer where two lengths of the text would else read alike. Texts in `names` are left as they are.
 */
export function sayLengths(text: string, system: LengthSystem, names: readonly string[] = []): string {
  if (system === 'mm') return text.includes(marks.open) ? text.replace(sizes, showMillimetres) : text;
  const kept = names.filter((name) => / ?mm\b/.test(name) && text.includes(name));
  if (kept.length === 0) return sayInches(text);
  return splitAt(text, kept)
    .map((part) => (kept.includes(part) ? part : sayInches(part)))
    .join('');
}

/** Data with all its texts told in these units; the very same object where nothing changes. Values of `skip` are passed by. */
export function sayLengthsWithin<T>(value: T, say: (text: string) => string, skip: ReadonlySet<string>): T {
  return walk(value, say, skip) as T;
}

function walk(value: unknown, say: (text: string) => string, skip: ReadonlySet<string>): unknown {
  if (typeof value === 'string') return say(value);
  if (Array.isArray(value)) {
    const mapped = value.map((each: unknown) => walk(each, say, skip));
    return mapped.some((each, i) => each !== value[i]) ? mapped : value;
  }
  if (!isPlain(value)) return value;
  let isChanged = false;
  const entries = Object.entries(value).map(([key, old]) => {
    const fresh = skip.has(key) ? old : walk(old, say, skip);
    isChanged ||= fresh !== old;
    return [key, fresh] as const;
  });
  return isChanged ? Object.fromEntries(entries) : value;
}

function isPlain(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}

function showMillimetres(found: string, value?: string, decimals?: string): string {
  if (value === undefined) return found;
  return `${formatNumber(Number(value), Number(decimals))}${found.endsWith(' mm') ? ' mm' : ''}`;
}

function sayInches(text: string): string {
  const found = [...text.matchAll(sizes)].flatMap((match) => lengthsOf(match[0], match[1]));
  if (found.length === 0) return text;
  const step = [1 / 32, 1 / 64].find((each) => tellApart(found, each)) ?? null;
  const said = text.replace(
    sizes,
    (match, value?: string) =>
      `${lengthsOf(match, value)
        .map((length) => showInches(length, step))
        .join(' × ')} in`,
  );
  return said.replaceAll(' in × ', ' × ');
}

function lengthsOf(match: string, value: string | undefined): readonly number[] {
  if (value !== undefined) return [Number(value)];
  return match.replace(/ mm$/, '').split(' × ').map(Number);
}

/** Whether lengths that differ to 0.1 mm read differently at this step. */
function tellApart(lengths: readonly number[], step: number): boolean {
  const distinct = new Set(lengths.map((length) => formatNumber(length, 1)));
  return new Set([...distinct].map((text) => showInches(Number(text), step))).size === distinct.size;
}

function showInches(length: number, step: number | null): string {
  if (step === null || Math.abs(length) < leastFraction) {
    const inches = length / millimetresPerInch;
    return formatNumber(inches, length !== 0 && Math.abs(inches) < 0.001 ? 4 : 3);
  }
  return formatLength(length, { system: 'inch', step });
}

function splitAt(text: string, names: readonly string[]): readonly string[] {
  const longestFirst = [...names].sort((a, b) => b.length - a.length);
  const pattern = longestFirst.map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|');
  return text.split(new RegExp(`(${pattern})`));
}
