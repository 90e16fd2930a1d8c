import { markSize } from '#core/units';
import type { HungChoices } from './hung-choices.ts';
import { isLetIn, lockOf } from './lock.ts';
import { isPaired } from './pair.ts';
import type { StepDraft } from '../step-chain.ts';
import type { Part } from '../types.ts';
import type { WorkingBook } from '../working.ts';

const show = markSize;

/** Steps at the bench for the meeting edge and the lock; minutes are common practice, no source. */
export function lockSteps(
  book: WorkingBook,
  choices: HungChoices,
  parts: readonly Part[],
): readonly StepDraft[] {
  const work = { place: 'workshop', parts } as const;
  const v = book.value;
  const rebate: StepDraft = {
    ...work,
    id: 'meeting-rebate',
    text: `Rebate the meeting edge on its ${choices.leaf === 'first' ? 'back' : 'face'}, ${book.has('lap') ? `${show(v('lap'))} wide and ${show(v('lap_D'), 2)} deep` : ''}; try it with the other door.`,
    minutes: 25,
  };
  const bolts: StepDraft = {
    ...work,
    id: 'bolts',
    text: 'Let the flush bolts into the meeting edge, one at the top, one at the foot; take them out for the finish.',
    minutes: 40,
    take: ['flush bolts'],
  };
  return [
    ...(book.has('lap') ? [rebate] : []),
    ...(choices.leaf === 'second' ? [bolts] : []),
    ...cutLockStep(book, choices).map((step) => ({ ...work, ...step })),
  ];
}

function cutLockStep(book: WorkingBook, choices: HungChoices) {
  if (!book.has('lock_at')) return [];
  const v = book.value;
  const at = `${show(v('lock_at'))} above the foot, ${show(v('backset'))} from the lock edge`;
  if (lockOf(choices) === 'turn-button') {
    return [
      {
        id: 'finger-hole',
        text: `Bore the finger hole, ${show(v('finger_D'))} across, ${at}; round both its edges ${show(3)}.`,
        minutes: 10,
      },
    ];
  }
  const holes = `Bore for the handle ${at}, and for the key ${show(v('key_at'))} above the foot, from both faces.`;
  const mortise = isLetIn(choices)
    ? `Mortise the lock edge ${show(v('case_D'))} deep, ${show(v('case_T'))} wide and ${show(v('case_H'))} long about ${show(v('case_mid'))} above the foot, then let the forend in flush. `
    : '';
  return [
    {
      id: 'lock',
      text: `${mortise}${holes} Try the lock, then take it out.`,
      minutes: mortise ? 60 : 25,
      take: ['lock'],
    },
  ];
}

/** What is fitted last that holds the door shut. */
export function wordLatch(choices: HungChoices): string {
  if (choices.leaf === 'second') return 'Fit the bolts and their keeps and the rubber stop.';
  const into = isPaired(choices) ? 'the other door' : 'the jamb';
  switch (lockOf(choices)) {
    case 'none':
      return 'Fit the rubber stop and what is to hold the door shut.';
    case 'face-latch':
      return 'Fit the latch with its strike and the rubber stop.';
    case 'mortise-lock':
      return `Fit the lock, its strike let into ${into}, and the rubber stop.`;
    case 'rim-lock':
      return `Screw the lock to the face, its keep to ${into}, and fit the rubber stop.`;
    case 'turn-button':
      return `Screw the turn button to ${into} so that it turns over the door, and fit the rubber stop.`;
  }
}

/** What to take for it. */
export function latchKit(choices: HungChoices): readonly string[] {
  if (choices.leaf === 'second') return ['flush bolts'];
  switch (lockOf(choices)) {
    case 'none':
      return [];
    case 'face-latch':
      return ['latch'];
    case 'mortise-lock':
    case 'rim-lock':
      return ['lock'];
    case 'turn-button':
      return ['turn button'];
  }
}
