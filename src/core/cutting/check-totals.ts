import type { Problem } from '#core/problems';
import { say, stop } from './check-words.ts';
import type { CuttingJob, CuttingPlan, CuttingStock } from './types.ts';

/** Slack when sums of prices are compared. */
const moneySlack = 1e-6;

/** Counts of parts and stock, cost, bound and proof. */
export function checkTotals(job: CuttingJob, plan: CuttingPlan): readonly Problem[] {
  return [
    ...checkTimes(plan),
    ...checkCounts(job, plan),
    ...checkStock(job, plan),
    ...checkCost(job, plan),
    ...checkBound(plan),
    ...checkUnplaced(plan),
  ];
}

function checkTimes(plan: CuttingPlan): readonly Problem[] {
  return plan.layouts.flatMap((layout, i) =>
    Number.isInteger(layout.times) && layout.times >= 1
      ? []
      : [
          stop(
            'plan-times',
            `layouts[${i}].times`,
            `A layout is cut ${layout.times} times; it must be a whole number from 1.`,
          ),
        ],
  );
}

function checkCounts(job: CuttingJob, plan: CuttingPlan): readonly Problem[] {
  const cut = new Map<string, number>();
  for (const layout of plan.layouts) {
    for (const { id } of layout.placed) cut.set(id, (cut.get(id) ?? 0) + layout.times);
  }
  const left = new Map(plan.unplaced.map((each) => [each.id, each.count]));
  return job.parts.flatMap((part) => {
    const wanted = part.count ?? 1;
    const has = (cut.get(part.id) ?? 0) + (left.get(part.id) ?? 0);
    return has === wanted
      ? []
      : [
          stop(
            'plan-part-count',
            part.id,
            `Part "${part.id}" is cut or listed as unplaced ${has} times, wanted ${wanted} times.`,
          ),
        ];
  });
}

function checkStock(job: CuttingJob, plan: CuttingPlan): readonly Problem[] {
  const listed = new Map(plan.stockUsed.map((each) => [each.id, each.count]));
  const known = job.stock.flatMap((stock) => {
    const used = countUsed(plan, stock.id);
    const problems: Problem[] = [];
    if (used > (stock.count ?? Infinity)) {
      problems.push(
        stop(
          'plan-stock-count',
          stock.id,
          `Stock "${stock.id}" is cut ${used} times; there are ${stock.count}.`,
        ),
      );
    }
    if ((listed.get(stock.id) ?? 0) !== used) {
      problems.push(
        stop(
          'plan-stock-listed',
          stock.id,
          `Stock "${stock.id}" is cut ${used} times but listed ${listed.get(stock.id) ?? 0} times.`,
        ),
      );
    }
    return problems;
  });
  const unknown = plan.stockUsed.filter((each) => !job.stock.some((stock) => stock.id === each.id));
  return [
    ...known,
    ...unknown.map((each) => stop('plan-stock-unknown', each.id, `The job has no stock "${each.id}".`)),
  ];
}

function countUsed(plan: CuttingPlan, id: string): number {
  return plan.layouts.reduce((sum, layout) => sum + (layout.stock === id ? layout.times : 0), 0);
}

/** Price of each stock; where none costs anything its size, and one missing beside others at the dearest rate (see `CuttingStock.cost`). */
function priceOf(job: CuttingJob, stock: CuttingStock): number {
  if (stock.cost !== undefined) return stock.cost;
  const size = (each: CuttingStock) =>
    job.cuts?.style === 'length' ? each.length : each.length * (each.width ?? NaN);
  const rates = job.stock.flatMap((each) => (each.cost === undefined ? [] : [each.cost / size(each)]));
  return size(stock) * (rates.some((rate) => rate > 0) ? Math.max(...rates) : 1);
}

/** Where areas stand for prices, a share of them could be whole units: never more than a half. */
function slackOf(cost: number): number {
  return Math.min(0.5, moneySlack * Math.max(1, cost));
}

function checkCost(job: CuttingJob, plan: CuttingPlan): readonly Problem[] {
  let cost = 0;
  for (const stock of job.stock) cost += countUsed(plan, stock.id) * priceOf(job, stock);
  return Math.abs(cost - plan.cost) <= slackOf(cost)
    ? []
    : [stop('plan-cost', 'cost', `The cost is given as ${plan.cost}; the stock used costs ${say(cost)}.`)];
}

function checkBound(plan: CuttingPlan): readonly Problem[] {
  const left = plan.unplaced.length > 0;
  if (left || plan.bound === null) {
    return left && plan.bound === null && !plan.proven
      ? []
      : [
          stop(
            'plan-bound',
            'bound',
            `Bound ${plan.bound} and proven ${plan.proven} do not go with ${plan.unplaced.length} unplaced parts.`,
          ),
        ];
  }
  const slack = slackOf(plan.cost);
  if (!(plan.bound >= 0 && plan.bound <= plan.cost + slack)) {
    return [stop('plan-bound', 'bound', `The bound ${plan.bound} is above the cost ${plan.cost}.`)];
  }
  const met = plan.cost - plan.bound <= slack;
  return met === plan.proven
    ? []
    : [
        stop(
          'plan-proven',
          'proven',
          `Proven is ${plan.proven}, but the bound ${plan.bound} ${met ? 'meets' : 'does not meet'} the cost ${plan.cost}.`,
        ),
      ];
}

function checkUnplaced(plan: CuttingPlan): readonly Problem[] {
  const told = plan.findings.some((finding) => finding.severity === 'stop');
  return plan.unplaced.length > 0 && !told
    ? [
        stop(
          'plan-unplaced-silent',
          'unplaced',
          `${plan.unplaced.length} kinds of parts are not placed and no finding says so.`,
        ),
      ]
    : [];
}
