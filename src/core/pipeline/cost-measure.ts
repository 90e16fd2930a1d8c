import { formatCost, type CostUnit, type CuttingJob } from '#core/cutting';
import type { NestJob } from '#core/nesting';
import type { Project, StockLine } from '#core/project';
import type { LengthSystem } from '#core/units';

import { nameStock } from './stock-names.ts';
import { listWords } from './words.ts';

/** What the costs of a job mean. */
export interface CostMeasure {
  readonly unit: CostUnit;
  /** Nothing can be bought for it: costs are the worth of what is taken from the rack. */
  readonly isRack: boolean;
  /** Ids of the stock to buy that has no price and counts by its size. */
  readonly unpriced: readonly string[];
}

/** What the costs of a job are told in: money, or where no stock has a price as much of it as is used. */
export function measureCost(project: Project, job: CuttingJob | NestJob): CostMeasure {
  const stock = job.stock.flatMap((each) => ('strip' in each ? [] : [each]));
  const lines = project.stock.filter((line) => stock.some(({ id }) => id === line.id));
  const isFlat = 'cuts' in job && job.cuts?.style === 'length';
  const money: CostUnit = { kind: 'money', currency: project.currency };
  if (lines.every((line) => line.owned === true)) {
    const unit = isWorthMoney(lines) ? money : unitOfStock(project.units, false, 1);
    return { unit, isRack: true, unpriced: [] };
  }
  const unpriced = stock.filter(({ cost }) => cost === undefined).map(({ id }) => id);
  const isPriced = unpriced.length === 0 || stock.some(({ cost }) => (cost ?? 0) > 0);
  const unit = isPriced ? money : unitOfStock(project.units, isFlat, isFlat ? 1e-3 : 1e-6);
  return { unit, isRack: false, unpriced };
}

/** Whether stock of the rack counts at its price where nothing is bought; else its area counts, in m². */
export function isWorthMoney(lines: readonly StockLine[]): boolean {
  return lines.every(({ price = 0 }) => price > 0);
}

/** Square feet of a square metre, and feet of a metre: a foot is 0.3048 m exactly. */
const feet = 1 / 0.3048;

function unitOfStock(units: LengthSystem, isFlat: boolean, toMetres: number): CostUnit {
  if (units === 'mm') return { kind: 'stock', unit: isFlat ? 'm' : 'm²', scale: toMetres };
  return { kind: 'stock', unit: isFlat ? 'ft' : 'ft²', scale: toMetres * (isFlat ? feet : feet * feet) };
}

/** A cost as it is told: `78.00 EUR`, `2.98 m² to buy`, `12.00 EUR in worth of the rack`, `1.2 m² of the rack`. */
export function sayCost(cost: number, { unit, isRack }: CostMeasure): string {
  const amount = formatCost(cost, unit);
  if (unit.kind === 'money') return isRack ? `${amount} in worth of the rack` : amount;
  return `${amount} ${isRack ? 'of the rack' : 'to buy'}`;
}

/** How stock without a price counts, as a sentence; empty where all of it has one. */
export function describeUnpriced(project: Project, { unit, unpriced }: CostMeasure): string {
  if (unpriced.length === 0) return '';
  if (unit.kind === 'stock') {
    const isLength = unit.unit === 'm' || unit.unit === 'ft';
    return `No price is known: the plan is made for the least ${isLength ? 'length' : 'area'} of stock to buy.`;
  }
  const names = listWords(unpriced.map((id) => nameStock(project, id)));
  return unpriced.length === 1
    ? `${names} has no price: it is reckoned at the dearest rate of the others for its size.`
    : `${names} have no price: they are reckoned at the dearest rate of the others for their size.`;
}
