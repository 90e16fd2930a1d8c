import type { NestJob, NestPart, NestPlan } from '#core/nesting';
import { solveNesting } from '#core/nesting';

/** The worked example of the command-line contract. */
export const contractJob: NestJob = {
  gap: 8,
  margin: 10,
  stock: [{ id: 'ply', length: 2440, width: 1220, cost: 78, count: null }],
  parts: [
    {
      id: 'p1',
      outline: [
        [0, 0],
        [400, 0],
        [380, 260],
        [0, 300],
      ],
      holes: [],
      angles: [0, 180],
      count: 2,
    },
  ],
};

/** A plan after so many parts moved; time does not count. */
export function planOf(job: NestJob, work = 300, seed = 1): NestPlan {
  return solveNesting(job, { clock: () => 0, work, seed });
}

export function rectangle(id: string, length: number, width: number, more: Partial<NestPart> = {}): NestPart {
  return {
    id,
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
    ...more,
  };
}
