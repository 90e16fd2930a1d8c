import type { Reading } from '#core/measuring';
import type { Draft } from './draft.ts';
import type { SiteTask } from './task.ts';

/** Between these a gap can be packed, mm. Source: joinery A11, packing. */
export const packing = { least: 2, most: 18 } as const;
/** The gap that is usual beside a frame, mm (the table of the door frame). */
export const usualGap = 5;

/** The task of a reading that is advised, where the list has it. */
export function taskOfReading(tasks: readonly SiteTask[], reading: Reading): SiteTask | null {
  return tasks.find(({ place }) => place !== null && isSamePlace(place, reading)) ?? null;
}

function isSamePlace(place: NonNullable<SiteTask['place']>, reading: Reading): boolean {
  if (place.kind === 'distance' && reading.kind === 'distance') {
    const ends = [place.from, place.to];
    return ends.includes(reading.from) && ends.includes(reading.to);
  }
  if (place.kind === 'width' && reading.kind === 'width')
    return place.left.join() === reading.left.join() && Math.abs(place.at - reading.at) < sameHeight;
  return false;
}

/** Shares of an edge nearer than this are the same height. */
const sameHeight = 0.02;

/** A reading that is advised and not in the list, as one to be entered; null for kinds that are never advised. */
export function draftOfReading(reading: Reading): Draft | null {
  if (reading.kind === 'distance')
    return { kind: 'distance', points: [reading.from, reading.to], at: null, name: '' };
  if (reading.kind === 'width')
    return { kind: 'width', points: [...reading.left, ...reading.right], at: reading.at, name: '' };
  return null;
}
