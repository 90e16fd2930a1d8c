import { workByClock } from './by-clock.ts';
import { stepsOfTurn, workInStep } from './in-step.ts';
import type { Crew, News } from './types.ts';

/** As long as this the lead works alone: what is proven by then is not worth a second thread. */
const aloneFor = 150;

/**
 * Runs a job to its end and answers the plan. By the clock both hands tell each other what they have whenever a turn of
 * theirs ends; by work they meet after so many steps, so that the answer is always the same.
 */
export async function runCrew<N extends News, Plan>(crew: Crew<N, Plan>): Promise<Plan> {
  const { lead, callMate, work } = crew;
  if (callMate === null) {
    await lead.work({});
    return lead.finish();
  }
  const first = await lead.work(work === null ? { milliseconds: aloneFor } : { steps: stepsOfTurn(work) });
  if (first.state === 'settled' || first.state === 'out') return lead.finish();
  const mate = callMate();
  try {
    if (work === null) await workByClock(lead, mate, first);
    else await workInStep({ lead, mate, first, steps: stepsOfTurn(work) });
    return await lead.finish();
  } finally {
    mate.dismiss();
  }
}
