import type { AskedLine } from './types.ts';

/** A line that asks for numbers. */
export function ask(
  key: string,
  text: string,
  where: string,
  more: Partial<Omit<AskedLine, 'key' | 'text' | 'where'>> = {},
): AskedLine {
  return { key, stage: 'readings', text, where, blanks: 1, unit: 'mm', ...more };
}

/** A line that is only ticked off. */
export function look(key: string, text: string, where: string, more: Partial<AskedLine> = {}): AskedLine {
  return ask(key, text, where, { blanks: 0, unit: '', ...more });
}
