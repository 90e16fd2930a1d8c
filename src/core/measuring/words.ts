import { formatNumber, roundNearest } from '#core/units';

/** A length for a sentence: to 0.1 mm, without unit. */
export function showMm(length: number): string {
  return formatNumber(roundNearest(length, 0.1), 1);
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
