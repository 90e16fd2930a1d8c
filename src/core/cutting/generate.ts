import type { SolveLp } from '#core/numerics';
import { roundBound } from './bounds.ts';
import { addColumn } from './columns.ts';
import type { Pool } from './columns.ts';
import { dualBound, solveMaster } from './master.ts';
import type { MasterSolution } from './master.ts';
import type { Model } from './model.ts';
import { makePricer, priceBoards, priceFully, priceStrips } from './pricing.ts';
import type { Pricer, Pricing, Proposal } from './pricing.ts';

/** Column generation that can be run in portions. */
export interface Generation {
  readonly model: Model;
  readonly solveLp: SolveLp;
  readonly demand: Int32Array;
  readonly pool: Pool;
  readonly pricer: Pricer | null;
  /** Best bound so far, not yet on the grid of the costs. */
  bound: number;
  last: MasterSolution | null;
  rounds: number;
  done: boolean;
}

/** Sums one full pricing may make: about a tenth of a second. */
const pricingWork = 4e7;

/** Starts on a job with what patterns are known; `pricer` spares preparing one anew for a part of a job. */
export function startGeneration(
  model: Model,
  pool: Pool,
  solveLp: SolveLp,
  pricer?: Pricer | null,
): Generation {
  const flat = model.style === 'length';
  return {
    model,
    solveLp,
    demand: Int32Array.from(model.kinds, (kind) => kind.count),
    pool,
    pricer: pricer ?? (flat ? null : makePricer(model, pricingWork)),
    bound: 0,
    last: null,
    rounds: 0,
    done: false,
  };
}

/** One round: solve the master, price, add patterns; done when no pattern can help or the bound cannot rise any more. */
export function generateOnce(generation: Generation): void {
  const { model, pool, demand } = generation;
  const master = solveMaster(model, pool.columns, demand, generation.solveLp);
  generation.rounds++;
  if (!master) {
    generation.done = true;
    return;
  }
  generation.last = master;
  if (generation.pricer && !isCheap(generation.pricer) && addUseful(generation, priceStrips(model, master.prices), master) > 0) return;
  const pricing = priceExactly(generation, master);
  generation.bound = Math.max(generation.bound, dualBound(model, demand, master.prices, pricing.most));
  const settled =
    master.missing < 1e-6 && roundBound(model, generation.bound) >= roundBound(model, master.value) - 1e-9;
  if (settled || addUseful(generation, pricing.proposals, master) === 0) generation.done = true;
}

/** A pricing so small that quicker ways are not worth trying first. */
function isCheap(pricer: Pricer): boolean {
  return pricer.step === 1 && (pricer.xs.at.length * pricer.ys.at.length * (pricer.xs.at.length + pricer.ys.at.length)) / 4 < 2e6;
}

function priceExactly(generation: Generation, master: MasterSolution): Pricing {
  return generation.pricer
    ? priceFully(generation.pricer, master.prices)
    : priceBoards(generation.model, master.prices);
}

/** Adds the proposals that would lower the master's cost; answers how many were new. */
function addUseful(generation: Generation, proposals: readonly Proposal[], master: MasterSolution): number {
  const { model, pool } = generation;
  let added = 0;
  for (const proposal of proposals) {
    const priceOfStock = proposal.bin.cost;
    const isUseful = proposal.value > priceOfStock + 1e-7 * Math.max(1, priceOfStock) || master.missing > 1e-6;
    if (isUseful && addColumn(model, pool, proposal)) added++;
  }
  return added;
}
