import type { HungChoices } from './hung-choices.ts';
import { cutLock } from './lock.ts';
import { cutMeeting } from './pair.ts';
import type { Part } from '../types.ts';
import type { WorkingBook } from '../working.ts';

/** The parts of a door with the edge where it meets another, its bolts and its lock cut. */
export function fitLock(parts: readonly Part[], book: WorkingBook, choices: HungChoices): readonly Part[] {
  return cutLock(cutMeeting(parts, book, choices), book, choices);
}
