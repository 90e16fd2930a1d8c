import type { Problem } from '#core/problems';
import type { Corner, NestJob, NestPlan, NestSheet } from './types.ts';

/** Shares and sums may differ by this from what the plan says. */
const sumSlack = 1e-6;

/** What is wrong with the counts, costs and figures of a plan. */
export function checkNestTotals(job: NestJob, plan: NestPlan): readonly Problem[] {
  return [
    ...checkCounts(job, plan),
    ...checkSheets(job, plan),
    ...checkCost(job, plan),
    ...checkBound(plan),
    ...checkDensity(job, plan),
  ];
}

function stop(code: string, about: string, message: string): Problem {
  return { severity: 'stop', code, about, message };
}

function checkCounts(job: NestJob, plan: NestPlan): readonly Problem[] {
  return job.parts.flatMap((part) => {
    const wanted = part.count ?? 1;
    const laid = plan.placements.filter((each) => each.id === part.id).length;
    const left = plan.unplaced
      .filter((each) => each.id === part.id)
      .reduce((sum, each) => sum + each.count, 0);
    if (laid + left === wanted) return [];
    return [
      stop(
        'nest-count',
        part.id,
        `Part "${part.id}" is wanted ${wanted} times; ${laid} are laid and ${left} said to be left.`,
      ),
    ];
  });
}

function sheetsOf(job: NestJob): readonly NestSheet[] {
  return job.stock.filter((each): each is NestSheet => !('strip' in each));
}

function stripOf(job: NestJob): number | null {
  const stock = job.stock[0];
  return stock && 'strip' in stock ? stock.strip : null;
}

function checkSheets(job: NestJob, plan: NestPlan): readonly Problem[] {
  const used = new Map<string, number>();
  for (const { stock } of plan.sheets) used.set(stock, (used.get(stock) ?? 0) + 1);
  const said = new Map(plan.stockUsed.map(({ id, count }) => [id, count]));
  const ids = new Set([...used.keys(), ...said.keys()]);
  const isStrip = stripOf(job) !== null;
  return [...ids].flatMap((id) => {
    const stock = sheetsOf(job).find((each) => each.id === id);
    const count = used.get(id) ?? 0;
    const problems: Problem[] = [];
    if (count !== (said.get(id) ?? 0))
      problems.push(
        stop(
          'nest-stock-count',
          id,
          `"stockUsed" says ${said.get(id) ?? 0} of "${id}"; there are ${count} sheets of it.`,
        ),
      );
    if (!stock && !isStrip) problems.push(stop('nest-stock-unknown', id, `"${id}" is no stock of the job.`));
    const most = isStrip ? 1 : (stock?.count ?? Infinity);
    if (count > most)
      problems.push(stop('nest-stock-short', id, `${count} of "${id}" are used; there are ${most}.`));
    return problems;
  });
}

function checkCost(job: NestJob, plan: NestPlan): readonly Problem[] {
  const sheets = sheetsOf(job);
  const area = (sheet: NestSheet) => sheet.length * sheet.width;
  const rates = sheets.flatMap((sheet) => (sheet.cost === undefined ? [] : [sheet.cost / area(sheet)]));
  const rate = rates.some((each) => each > 0) ? Math.max(...rates) : 1;
  const priceOf = (id: string) => {
    const sheet = sheets.find((each) => each.id === id);
    return sheet ? (sheet.cost ?? area(sheet) * rate) : 0;
  };
  const isStrip = stripOf(job) !== null;
  const cost = isStrip ? (plan.length ?? 0) : plan.sheets.reduce((sum, { stock }) => sum + priceOf(stock), 0);
  const problems: Problem[] = [];
  if (!(Math.abs(cost - plan.cost) <= sumSlack * Math.max(1, cost)))
    problems.push(
      stop('nest-cost', 'cost', `The plan says it costs ${plan.cost}; its sheets come to ${cost}.`),
    );
  if (!isStrip && plan.length !== null)
    problems.push(stop('nest-length', 'length', 'A plan on sheets has no length.'));
  return problems;
}

function checkBound({ bound, cost, unplaced, proven }: NestPlan): readonly Problem[] {
  const slack = sumSlack * Math.max(1, cost);
  if (bound === null)
    return unplaced.length > 0 && !proven
      ? []
      : [
          stop(
            'nest-bound',
            'bound',
            'Nothing is left unplaced, and there is no bound; or it is called proven without.',
          ),
        ];
  if (!(bound <= cost + slack))
    return [stop('nest-bound', 'bound', `The bound ${bound} is above the cost ${cost}.`)];
  if (proven !== cost - bound <= slack)
    return [
      stop('nest-proven', 'proven', `Cost ${cost} and bound ${bound} do not go with proven ${proven}.`),
    ];
  return [];
}

function checkDensity(job: NestJob, plan: NestPlan): readonly Problem[] {
  const net = plan.placements.reduce((sum, { id }) => {
    const part = job.parts.find((each) => each.id === id);
    if (!part) return sum;
    const holes = (part.holes ?? []).reduce((holed, hole) => holed + areaOf(hole), 0);
    return sum + areaOf(part.outline) - holes;
  }, 0);
  const strip = stripOf(job);
  const full =
    strip === null
      ? plan.sheets.reduce((sum, { stock }) => {
          const sheet = sheetsOf(job).find((each) => each.id === stock);
          return sum + (sheet ? sheet.length * sheet.width : 0);
        }, 0)
      : strip * (plan.length ?? 0);
  const density = full > 0 ? net / full : 0;
  if (Math.abs(density - plan.density) <= sumSlack) return [];
  return [
    stop('nest-density', 'density', `The plan says ${plan.density} of the area is used; it is ${density}.`),
  ];
}

function areaOf(ring: readonly Corner[]): number {
  const twice = ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    return sum + x * v - y * u;
  }, 0);
  return Math.abs(twice) / 2;
}
