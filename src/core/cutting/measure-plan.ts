import { collectSettings } from './collect-settings.ts';
import type { CuttingJob, CuttingPlan } from './types.ts';

/** What a plan comes to, for choosing between plans. */
export interface PlanFigures {
  readonly cost: number;
  /** Pieces of stock to cut, and how many different ones they are. */
  readonly pieces: number;
  readonly sizes: number;
  /** Different settings of the fence, and passes of the saw; 0 for `free`. */
  readonly settings: number;
  readonly passes: number;
  /** Leftovers worth keeping, and the largest of them by area; in one dimension without a width. */
  readonly leftovers: number;
  readonly largest: { readonly length: number; readonly width?: number } | null;
}

/** Counts what tells plans apart besides what is on them. */
export function measurePlan(job: CuttingJob, plan: CuttingPlan): PlanFigures {
  const settings = collectSettings(plan.layouts, job.kerf ?? 0);
  const all = plan.layouts.flatMap(({ leftovers, times }) =>
    leftovers.map((leftover) => ({ leftover, times })),
  );
  const [largest] = all.map(({ leftover }) => leftover).sort((a, b) => areaOf(b) - areaOf(a));
  return {
    cost: plan.cost,
    pieces: plan.stockUsed.reduce((sum, { count }) => sum + count, 0),
    sizes: plan.stockUsed.length,
    settings: settings.length,
    passes: settings.reduce((sum, { passes }) => sum + passes, 0),
    leftovers: all.reduce((sum, { times }) => sum + times, 0),
    largest: largest ? sizeOf(largest) : null,
  };
}

interface Size {
  readonly length: number;
  readonly width?: number;
}

/** mm2; in one dimension the length. */
export function areaOf({ length, width }: Size): number {
  return length * (width ?? 1);
}

function sizeOf({ length, width }: Size): Size {
  return width === undefined ? { length } : { length, width };
}
