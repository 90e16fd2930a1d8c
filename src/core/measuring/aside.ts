import type { Problem } from '#core/problems';
import { sigmaOf } from './methods.ts';
import { repeatedValue } from './repeats.ts';
import type { Reading, Thickness, Twist } from './types.ts';
import { showMm } from './words.ts';

/** What the readings say that tell nothing of points. */
export interface Aside {
  readonly twist?: Twist;
  readonly thickness?: Thickness;
}

/** Strings that miss each other by a gap at their crossing show twice that at the fourth corner (joinery A4, M8). */
const twistPerGap = 2;

/** The largest twist and the thickness that were read; each left out where nothing was. Source: joinery A1, A4. */
export function summariseAside(readings: readonly Reading[]): Aside {
  const twists = readings.flatMap((reading) => (reading.kind === 'twist' ? [twistOf(reading)] : []));
  const largest = [...twists].sort((a, b) => Math.abs(b.value) - Math.abs(a.value))[0];
  const thickness = thicknessOf(readings.filter(({ kind }) => kind === 'thickness'));
  return { ...(largest && { twist: largest }), ...(thickness && { thickness }) };
}

function twistOf(reading: Reading): Twist {
  const { value, sigma } = lookAt(reading);
  return { value: twistPerGap * value, u95: 2 * twistPerGap * sigma };
}

function lookAt(reading: Reading): { readonly value: number; readonly sigma: number } {
  const single = sigmaOf(reading);
  const { value, count } = repeatedValue(reading, single);
  return { value, sigma: single / Math.sqrt(count) };
}

function thicknessOf(readings: readonly Reading[]): Thickness | null {
  if (readings.length === 0) return null;
  const looks = readings.map(lookAt);
  const values = looks.map(({ value }) => value);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const byReading = Math.hypot(...looks.map(({ sigma }) => sigma)) / looks.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  // The places differ more than the caliper errs: their scatter decides how well the mean is known.
  const byPlace = values.length > 1 ? Math.sqrt(square / (values.length - 1) / values.length) : 0;
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return { count: values.length, least, most, mean, u95: 2 * Math.max(byReading, byPlace) };
}

/** Twist beyond these shows, mm (joinery A4). */
const twistLimits = { framedDoor: 6, plyDoor: 3 } as const;
/** A bulkhead may differ by this much from place to place, mm (joinery B1.7). */
const thicknessLimit = 2;

/** What twist and thickness mean for what is fitted; empty when both are small. Source: joinery A4, B1.7. */
export function findAside({ twist, thickness }: Aside): readonly Problem[] {
  const findings: Problem[] = [];
  if (twist && Math.abs(twist.value) > twistLimits.plyDoor) {
    const framed = Math.abs(twist.value) > twistLimits.framedDoor;
    findings.push({
      severity: 'warn',
      code: 'opening-twisted',
      message:
        `The opening is twisted: its fourth corner stands ${showMm(Math.abs(twist.value))} mm (±${showMm(twist.u95)}) out of the plane of the others. ` +
        `An inset ply door allows ${showMm(twistLimits.plyDoor)}, a framed door ${showMm(twistLimits.framedDoor)}: ` +
        (framed
          ? 'either would touch its stop at one corner only.'
          : 'a ply door would touch its stop at one corner only.'),
      remedy: framed
        ? 'Pack the frame flat, fit the stops to the closed door, or plane the door to the twist.'
        : 'Pack the frame flat, or fit the stops to the closed door.',
      source: 'joinery A4, B1.3',
    });
  }
  if (thickness && thickness.most - thickness.least > thicknessLimit)
    findings.push({
      severity: 'warn',
      code: 'thickness-varies',
      message: `The thickness differs from ${showMm(thickness.least)} to ${showMm(thickness.most)} mm over ${thickness.count} places, more than ${showMm(thicknessLimit)} mm.`,
      remedy: 'Scribe the lining to it, or make the lining in two parts.',
      source: 'joinery B1.7',
    });
  return findings;
}
