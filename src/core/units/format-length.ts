import { formatNumber } from './format-number.ts';
import { roundNearest } from './round.ts';

export type LengthSystem = 'mm' | 'inch';

/** Exact by the international yard and pound agreement of 1959. */
export const millimetresPerInch = 25.4;

export interface LengthFormat {
  readonly system: LengthSystem;
  /** Shown to the nearest: mm (default 0.1, at finest 0.001), or inches as 1/16 (default), 1/32, 1/64. */
  readonly step?: number;
  /** Put the unit after it; on drawings it is stated once instead. */
  readonly unit?: boolean;
}

/** A length in mm as text: `842.5`, or `33 1/8` in inches with the fraction in lowest terms. */
export function formatLength(length: number, format: LengthFormat): string {
  if (!Number.isFinite(length)) throw new Error(`not a length to show: ${length}`);
  const text =
    format.system === 'mm'
      ? formatMillimetres(length, format.step ?? 0.1)
      : formatInches(length, format.step ?? 1 / 16);
  if (format.unit !== true) return text;
  return `${text} ${format.system === 'mm' ? 'mm' : 'in'}`;
}

function formatMillimetres(length: number, step: number): string {
  const decimals = Math.min(3, Math.max(0, Math.ceil(-Math.log10(step))));
  return formatNumber(roundNearest(length, step), decimals);
}

function formatInches(length: number, step: number): string {
  const parts = Math.round(1 / step);
  const count = Math.round((Math.abs(length) / millimetresPerInch) * parts);
  const whole = Math.floor(count / parts);
  const sign = length < 0 && count > 0 ? '-' : '';
  const rest = count - whole * parts;
  if (rest === 0) return `${sign}${whole}`;
  const shared = greatestDivisor(rest, parts);
  const fraction = `${rest / shared}/${parts / shared}`;
  return whole === 0 ? `${sign}${fraction}` : `${sign}${whole} ${fraction}`;
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
