import type { LengthSystem } from '#core/units';

export interface PadKey {
  /** What it adds: a character, a fraction, or `back`, `clear`, `sign`. */
  readonly type: string;
  readonly label: string;
  readonly spoken: string;
}

const digit = (type: string): PadKey => ({ type, label: type, spoken: type });
const half: PadKey = { type: '.5', label: '.5', spoken: 'and a half' };
const back: PadKey = { type: 'back', label: '⌫', spoken: 'Take back the last figure' };
const clear: PadKey = { type: 'clear', label: 'C', spoken: 'Clear' };
const sign: PadKey = { type: 'sign', label: '±', spoken: 'Change the sign' };
const point: PadKey = { type: '.', label: '.', spoken: 'Decimal point' };
const fractions: readonly PadKey[] = ['1/2', '1/4', '3/4', '1/8', '3/8', '5/8', '7/8', '1/16'].map(
  (type) => ({
    type,
    label: type,
    spoken: `${type} inch`,
  }),
);

/**
 * The keys of the pad before the one that enters, row by row of four, for the tape in use. The row of the nought has two
 * places left for that one; fractions of an inch come above the figures.
 */
export function padKeys(system: LengthSystem, signed: boolean): readonly PadKey[] {
  const rows = ['7', '8', '9', 'back', '4', '5', '6', 'turn', '1', '2', '3', '.', '0', '.5'];
  const named: Readonly<Record<string, PadKey>> = {
    back,
    turn: signed ? sign : clear,
    '.': point,
    '.5': half,
  };
  const keys = rows.map((type) => named[type] ?? digit(type));
  return system === 'mm' ? keys : [...fractions, ...keys.slice(0, -1)];
}

/** The text after a key of the pad. A fraction is put after whole inches with a space, and replaces an earlier one. */
export function typeKey(text: string, type: string): string {
  if (type === 'back') return text.slice(0, -1).trimEnd();
  if (type === 'clear') return '';
  if (type === 'sign') return text.startsWith('-') ? text.slice(1) : `-${text}`;
  if (type.includes('/'))
    return `${text.replace(/\s*\d*\/\d*$/, '').trim()} ${type}`.trim().replace(/^- /, '-');
  if (type.startsWith('.') && text.includes('.')) return text;
  return text + type;
}
