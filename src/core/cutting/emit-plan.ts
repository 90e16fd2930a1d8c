import type { Problem } from '#core/problems';
import type { Bin, Model } from './model.ts';
import type { CuttingPlan, Layout } from './types.ts';

/** A whole answer of the search: each piece of stock as it is cut, and the parts that found no place. */
export interface Answer {
  readonly sheets: readonly { readonly bin: Bin; readonly layout: Layout }[];
  readonly left: ArrayLike<number>;
  readonly cost: number;
}

export interface Outcome {
  readonly bound: number;
  readonly seconds: number;
  readonly findings: readonly Problem[];
}

/** Slack when cost and bound, both sums of prices, are compared. */
export const costSlack = 1e-6;

/** The answer as the contract has it (DESIGN section 6). */
export function emitPlan(model: Model, answer: Answer, outcome: Outcome): CuttingPlan {
  const unplaced = model.kinds
    .map((kind) => ({ id: kind.id, count: answer.left[kind.index] ?? 0 }))
    .filter((each) => each.count > 0);
  const used = dropEmpty(answer);
  const cost = tidyCost(used.cost);
  const bound = unplaced.length > 0 ? null : Math.min(cost, tidyCost(outcome.bound));
  const proven = bound !== null && cost - bound <= costSlack * Math.max(1, cost);
  return {
    cost,
    bound: proven ? cost : bound,
    proven,
    seconds: outcome.seconds,
    stockUsed: countStock(model, used),
    unplaced,
    findings: outcome.findings,
    layouts: mergeLayouts(used),
  };
}

/** Without stock that nothing lies on, which the search may leave behind where it costs nothing. */
function dropEmpty(answer: Answer): Answer {
  const sheets = answer.sheets.filter(({ layout }) => layout.placed.length > 0);
  if (sheets.length === answer.sheets.length) return answer;
  return { ...answer, sheets, cost: sheets.reduce((sum, { bin }) => sum + bin.cost, 0) };
}

/** A sum of prices without the tail of binary fractions. */
export function tidyCost(cost: number): number {
  return Number(cost.toFixed(9));
}

function countStock(model: Model, answer: Answer): CuttingPlan['stockUsed'] {
  return model.bins
    .map((bin) => ({
      id: bin.id,
      count: answer.sheets.filter((sheet) => sheet.bin.index === bin.index).length,
    }))
    .filter((each) => each.count > 0);
}

/** Equal layouts once, with how often they are cut; in the order of the stock, the most frequent first. */
function mergeLayouts(answer: Answer): readonly Layout[] {
  const merged = new Map<string, { layout: Layout; times: number; bin: number }>();
  for (const { bin, layout } of answer.sheets) {
    const key = JSON.stringify(layout);
    const known = merged.get(key);
    if (known) known.times++;
    else merged.set(key, { layout, times: 1, bin: bin.index });
  }
  return [...merged.values()]
    .sort((a, b) => a.bin - b.bin || b.times - a.times)
    .map(({ layout, times }) => ({ ...layout, times }));
}
