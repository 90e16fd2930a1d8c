import { formatLength, formatNumber, roundNearest, type LengthSystem } from '#core/units';
import type { Reading } from './types.ts';

/** A length for a sentence: to 0.1 mm, without unit. */
export function showMm(length: number): string {
  // beyond this a double has no tenths left, and a long row of figures tells nobody anything
  return Math.abs(length) > 1e15 ? String(length) : formatNumber(roundNearest(length, 0.1), 1);
}

/** A length for a sentence in the units of a project, without unit: inches to 1/32. */
export function showLength(length: number, units: LengthSystem): string {
  return units === 'mm' ? showMm(length) : formatLength(length, { system: units, step: 1 / 32 });
}

/** The name of a unit as it stands after a figure. */
export const unitWords: Readonly<Record<LengthSystem, string>> = { mm: 'mm', inch: 'in' };

/** A value in the unit of a reading: mm to 0.1 without unit, an angle to 0.01 with its sign. */
export function showReading({ kind }: { readonly kind: Reading['kind'] }, value: number): string {
  return kind === 'angle' ? `${formatNumber(roundNearest(value, 0.01), 2)}°` : showMm(value);
}

/** A value of a reading with its unit, for where no unit stands beside it. */
export function sayReading(reading: { readonly kind: Reading['kind'] }, value: number): string {
  return reading.kind === 'angle' ? showReading(reading, value) : `${showMm(value)} mm`;
}

/** `a`, `a and b`, `a, b and c`. */
export function joinWords(words: readonly string[], last = 'and'): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1] ?? ''}`;
}

/** First letter large. */
export function startSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
