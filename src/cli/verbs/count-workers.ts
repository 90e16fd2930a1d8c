import { availableParallelism } from 'node:os';

import type { Arguments } from '../arguments.ts';

/** How many threads search: two where there are two cores, and always in a run by work, whose answer is the same everywhere. */
export function countWorkers({ workers, work }: Arguments): 1 | 2 {
  if (workers !== undefined) return workers === 1 ? 1 : 2;
  return work !== undefined || availableParallelism() > 1 ? 2 : 1;
}
