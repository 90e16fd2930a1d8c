import { checkPlan, fillCosts, type CuttingJob, type CuttingPlan } from '#core/cutting';
import type { Part } from '#core/joinery';
import {
  applyCommand,
  type MadePart,
  type Project,
  type RackCommand,
  type StockLine,
  type TakenPlan,
} from '#core/project';

import { expandLayout } from './expand-layout.ts';
import { asMade } from './made-parts.ts';
import { stampPlan } from './taken-plans.ts';
import { understandProject } from './understand-project.ts';
import type { CuttingGroup, Understanding } from './types.ts';

/** What is known of a layout whose stock has just been sawn. */
export interface SawnLayout {
  readonly group: CuttingGroup;
  readonly plan: CuttingPlan;
  readonly index: number;
}

/**
 * The act of having sawn one piece of stock as a layout says: its parts are made, the line has one fewer, and the leftovers
 * worth keeping become offcuts of the rack. A plan that was chosen goes on with the rest. Null when there is no such layout.
 */
export function cutStockCommand(
  project: Project,
  understanding: Understanding,
  { group, plan, index }: SawnLayout,
): Extract<RackCommand, { kind: 'cut-stock' }> | null {
  const layout = plan.layouts[index];
  const line = project.stock.find(({ id }) => id === layout?.stock);
  if (!layout || !line) return null;
  const counts = new Map<string, number>();
  for (const { part } of expandLayout(group, layout)) counts.set(part, (counts.get(part) ?? 0) + 1);
  const parts = understanding.pieces.flatMap((piece) => piece.parts);
  const command: Extract<RackCommand, { kind: 'cut-stock' }> = {
    kind: 'cut-stock',
    stock: line.id,
    made: parts.flatMap((part) => {
      const count = counts.get(part.id);
      return count === undefined ? [] : [madeOf(project, part, count)];
    }),
    leftovers: layout.leftovers.map((left, i) => offcutOf(project, line, { ...left, number: i + 1 })),
  };
  return group.taken ? { ...command, taken: goOnTaken(project, { group, plan, index }, command) } : command;
}

/** The plans chosen as they hold afterwards: this one goes on with what it has left to cut, if that is what is left. */
function goOnTaken(
  project: Project,
  { group, plan, index }: SawnLayout,
  command: Extract<RackCommand, { kind: 'cut-stock' }>,
): readonly TakenPlan[] {
  const others = (project.taken ?? []).filter((taken) => taken.group !== group.id);
  const next = applyCommand(project, command);
  const rest = next.ok ? understandProject(next.value).groups.find(({ id }) => id === group.id) : undefined;
  if (!rest) return others;
  const left = planLeft(rest.job, plan, index);
  return checkPlan(rest.job, left).length > 0 ? others : [...others, stampPlan(rest, left)];
}

/** The plan without one piece of the stock of a layout, for the job that is left. What that must cost at least is not known yet. */
function planLeft(job: CuttingJob, plan: CuttingPlan, index: number): CuttingPlan {
  const sawn = plan.layouts[index]?.stock;
  const layouts = plan.layouts
    .map((layout, at) => (at === index ? { ...layout, times: layout.times - 1 } : layout))
    .filter(({ times }) => times > 0);
  const filled = fillCosts(job.stock, job.cuts?.style === 'length');
  const costs = new Map(job.stock.map(({ id }, at) => [id, filled[at]]));
  const cost = layouts.reduce((sum, { stock, times }) => sum + times * (costs.get(stock) ?? 0), 0);
  return {
    ...plan,
    cost,
    bound: 0,
    proven: cost <= 1e-6,
    stockUsed: plan.stockUsed
      .map((used) => (used.id === sawn ? { ...used, count: used.count - 1 } : used))
      .filter(({ count }) => count > 0),
    layouts,
    findings: [],
  };
}

/** What is made of a part by so many blanks; staves count as a part when there are enough to glue it up. */
function madeOf(project: Project, part: Part, blanks: number): MadePart {
  if (!part.staves) return asMade(part, blanks);
  const cut =
    blanks * (part.staves.leaves ?? 1) + (project.made?.find((each) => each.part === part.id)?.staves ?? 0);
  const staves = cut % part.staves.count;
  return { ...asMade(part, Math.floor(cut / part.staves.count)), ...(staves > 0 && { staves }) };
}

function offcutOf(
  project: Project,
  line: StockLine,
  left: { readonly length: number; readonly width?: number; readonly number: number },
): StockLine {
  return {
    id: freeId(project, `${line.id}-left`, left.number),
    material: line.material,
    form: 'offcut',
    length: left.length,
    width: left.width ?? line.width,
    thickness: line.thickness,
    count: 1,
    price: 0,
    owned: true,
  };
}

/** An id no stock line has: those of one sheet are counted on from those of the sheets before. */
function freeId(project: Project, stem: string, number: number): string {
  const taken = new Set(project.stock.map(({ id }) => id));
  const before = project.stock.filter(({ id }) => id.startsWith(stem)).length;
  let next = before + number;
  while (taken.has(`${stem}-${next}`)) next += 100;
  return `${stem}-${next}`;
}
