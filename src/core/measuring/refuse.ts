import type { Problem } from '#core/problems';
import type { Reading } from './types.ts';

/** A reading, or the whole survey, that cannot be used as it is: the rest of the sentence after the name of the reading. */
export function refuse(code: string, reading: Reading | undefined, rest: string, remedy: string): Problem {
  if (!reading) return { severity: 'stop', code, message: rest, remedy };
  return { severity: 'stop', code, about: reading.id, message: `Reading ${reading.id} ${rest}`, remedy };
}
