import { formatLength, formatNumber, millimetresPerInch } from '#core/units';
import type { LengthSystem } from '#core/units';

// Steps between those of ISO 5455 (1:1, 1:2, 1:5, 1:10, 1:20, 1:50; from memory) keep drawings large on small paper.
const divisors = [1, 2, 2.5, 3, 4, 5, 6, 7.5, 8, 10, 12.5, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000];

/** Paper to fill, mm. Height left out: 1.35 of the width, about a standing page. */
export interface PaperRoom {
  readonly width: number;
  readonly height?: number;
}

/** Paper to fill, and the unit of the sizes on it; mm when left out. */
export interface SizedRoom extends PaperRoom {
  readonly units?: LengthSystem;
}

/** The height a drawing may take, mm of paper. */
export function heightFor({ width, height }: PaperRoom): number {
  return height ?? width * 1.35;
}

/** The largest usual scale at which something `size` mm long fits into `room` mm of paper; never larger than life. */
export function chooseScale(size: number, room: number): number {
  const needed = size / Math.max(room, 1);
  const divisor = divisors.find((step) => step >= needed - 1e-9) ?? Math.ceil(needed);
  return 1 / divisor;
}

/** The next smaller usual scale. */
export function nextScale(scale: number): number {
  return chooseScale(1 / scale + 1e-6, 1);
}

/** `1:10`; `about 1:12.6` when it is none of the usual scales. */
export function formatScale(scale: number): string {
  const divisor = Math.round((1 / scale) * 1000) / 1000;
  if (divisors.includes(divisor)) return `1:${divisor}`;
  return `about 1:${Math.round(divisor * 10) / 10}`;
}

/** Millimetres as drawings show them: to 0.1, without a trailing zero. */
export function formatMm(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return String(rounded === 0 ? 0 : rounded);
}

const inchStep = 1 / 32; // as fine as a rule in inches is read

/** A length as drawings show it: mm to 0.1, or inches to 1/32; the unit is stated once on the drawing. */
export function formatSize(value: number, units: LengthSystem = 'mm'): string {
  return units === 'mm' ? formatMm(value) : formatLength(value, { system: units, step: inchStep });
}

/** What a drawing says about its unit: nothing in mm, which is understood. */
export function unitNote(units: LengthSystem = 'mm'): string {
  return units === 'mm' ? '' : ' · sizes in inches';
}

/** A small difference as drawings show it: mm to 0.1, or hundredths of an inch, as a rule has none so fine. */
export function formatFine(value: number, units: LengthSystem = 'mm'): string {
  if (units === 'mm') return formatMm(value);
  return formatNumber(value / millimetresPerInch, 2);
}

/** A small difference with its sign: `+0.4`. */
export function formatSignedFine(value: number, units: LengthSystem = 'mm'): string {
  const shown = formatFine(value, units);
  return value > 0 && shown !== '0' ? `+${shown}` : shown.replace('-', '\u2212');
}

/** A length with its sign, mm to 0.1 or inches to 1/32: `+0.4`. */
export function formatSigned(value: number, units: LengthSystem = 'mm'): string {
  const shown = formatSize(value, units);
  return value > 0 && shown !== '0' ? `+${shown}` : shown.replace('-', '\u2212');
}
