import type { Hand, Mate, News } from './types.ts';

/** How often the hands meet in a run by work, and the least they do in between: less is not worth the packing. */
const meetings = 24;
const leastSteps = 2000;

/** The steps from one meeting to the next. */
export function stepsOfTurn(work: number): number {
  return Math.max(leastSteps, Math.ceil(work / meetings));
}

/** Both work the same number of steps, tell each other and go on, until neither has anything new or the job is settled. */
export async function workInStep<N extends News, Plan>(crew: {
  readonly lead: Hand<N, Plan>;
  readonly mate: Mate<N>;
  readonly first: N;
  readonly steps: number;
}): Promise<void> {
  const { lead, mate, steps } = crew;
  let toMate = crew.first;
  let toLead: N | null = null;
  for (;;) {
    const mateWork = mate.work({ heard: toMate, steps });
    // settled by the lead alone: what the mate does meanwhile is of no interest, its failing neither
    mateWork.catch(() => undefined);
    toMate = await lead.work({ heard: toLead, steps });
    if (toMate.state === 'settled') return;
    toLead = await mateWork;
    const isStill = toMate.state !== 'working' && toLead.state !== 'working';
    const isNew = toMate.found !== null || toLead.found !== null;
    if (toLead.state === 'settled' || (isStill && !isNew)) break;
  }
  await lead.work({ heard: toLead, steps: 0 });
}
