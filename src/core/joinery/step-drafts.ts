import type { StepDraft } from './step-chain.ts';

type More = Pick<StepDraft, 'parts' | 'take'>;

/** A step done in the workshop. */
export function inWorkshop(id: string, minutes: number, text: string, more: More = {}): StepDraft {
  return { id, text, place: 'workshop', minutes, ...more };
}

/** A step done aboard, with what to take along. */
export function aboard(id: string, minutes: number, text: string, more: More = {}): StepDraft {
  return { id, text, place: 'boat', minutes, ...more };
}
