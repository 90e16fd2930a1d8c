import type { SolveLp } from '#core/numerics';
import { roundBound } from './bounds.ts';
import { addColumn, countKinds } from './columns.ts';
import type { Pool } from './columns.ts';
import { dualBound, solveMaster } from './master.ts';
import type { MasterSolution } from './master.ts';
import type { Model } from './model.ts';
import { makePricer, priceBoards, priceFully, priceStrips, priceThinly } from './pricing.ts';
import type { Pricer, Pricing, Proposal } from './pricing.ts';

/** Column generation that can be run in portions. */
export interface Generation {
  readonly model: Model;
  readonly solveLp: SolveLp;
  readonly demand: Int32Array;
  readonly pool: Pool;
  pricer: Pricer | null;
  /** Best bound so far, not yet on the grid of the costs. */
  bound: number;
  last: MasterSolution | null;
  rounds: number;
  done: boolean;
}

/** Starts on a job with what patterns are known. Boards need no pricer. */
export function startGeneration(
  model: Model,
  pool: Pool,
  solveLp: SolveLp,
  pricer: Pricer | null,
): Generation {
  return {
    model,
    solveLp,
    demand: Int32Array.from(model.kinds, (kind) => kind.count),
    pool,
    pricer,
    bound: 0,
    last: null,
    rounds: 0,
    done: false,
  };
}

/** Starts anew with a finer pricer, for a better bound. False when the pricer at hand is exact already. */
export function refineGeneration(generation: Generation, work: number): boolean {
  const { model, pricer } = generation;
  if (!pricer || pricer.step === 1) return false;
  const finer = makePricer(model, work);
  if (finer.step >= pricer.step) return false;
  generation.pricer = finer;
  generation.done = false;
  return true;
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
  if (generation.pricer && !isCheap(generation.pricer)) {
    const strips = varyPrices(master.prices, 4, (prices) => priceStrips(model, prices));
    if (addUseful(generation, strips, master) > 0) return;
    const { pricer } = generation;
    const thin = varyPrices(master.prices, pricer.thin ? 2 : 0, (prices) => priceThinly(pricer, prices));
    if (addUseful(generation, thin, master) > 0) return;
  }
  const pricing = priceExactly(generation, master);
  generation.bound = Math.max(generation.bound, dualBound(model, demand, master.prices, pricing.most));
  const settled =
    master.missing < 1e-6 && roundBound(model, generation.bound) >= roundBound(model, master.value) - 1e-9;
  if (settled || addUseful(generation, pricing.proposals, master) === 0) generation.done = true;
  else addUseful(generation, furtherProposals(generation, master, pricing), master);
}

/** More patterns for the same prices, unlike the best ones: fewer rounds are needed. */
function furtherProposals(
  generation: Generation,
  master: MasterSolution,
  first: Pricing,
): readonly Proposal[] {
  const { model, pricer } = generation;
  if (pricer && !isCheap(pricer)) return [];
  const price = (prices: Float64Array) =>
    pricer ? priceFully(pricer, prices).proposals : priceBoards(model, prices).proposals;
  const fine = model.bins.some((bin) => bin.length > 50_000);
  return varyPrices(lowerPrices(master.prices, first.proposals), pricer ? 3 : fine ? 1 : 8, price);
}

/** Prices again and again, each time with what was just used made cheaper. */
function varyPrices(
  prices: Float64Array,
  times: number,
  price: (prices: Float64Array) => readonly Proposal[],
): readonly Proposal[] {
  const all: Proposal[] = [];
  let current = prices;
  for (let i = 0; i < times; i++) {
    const proposals = price(current);
    all.push(...proposals);
    current = lowerPrices(current, proposals);
  }
  return all;
}

function lowerPrices(prices: Float64Array, proposals: readonly Proposal[]): Float64Array {
  const lower = prices.slice();
  for (const { roots } of proposals) {
    for (const kind of countKinds(roots).keys()) lower[kind] = (prices[kind] as number) * 0.7;
  }
  return lower;
}

/** A pricing so small that quicker ways are not worth trying first. */
function isCheap(pricer: Pricer): boolean {
  return (
    pricer.step === 1 &&
    (pricer.xs.at.length * pricer.ys.at.length * (pricer.xs.at.length + pricer.ys.at.length)) / 4 < 2e6
  );
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
    const { cost } = proposal.bin;
    let value = 0;
    for (const [kind, count] of countKinds(proposal.roots)) value += (master.prices[kind] as number) * count;
    const isUseful = value > cost + 1e-7 * Math.max(1, cost) || master.missing > 1e-6;
    if (isUseful && addColumn(model, pool, proposal)) added++;
  }
  return added;
}
