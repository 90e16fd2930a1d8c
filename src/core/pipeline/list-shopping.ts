import type { Project, StockLine } from '#core/project';

import { listSundries } from './list-sundries.ts';
import { noPrice, priceOfStock, type PriceSum } from './stock-prices.ts';
import type { Table } from './table.ts';
import type { CuttingGroup, PlannedGroup, PlannedRouting, Understanding } from './types.ts';
import { countWords, describeThings, showSizeIn } from './words.ts';

/** One line of the shopping list. `each` null: price not known. */
export interface ShoppingLine {
  readonly kind: 'sheet' | 'board' | 'batten' | 'offcut' | 'fixing';
  readonly item: string;
  readonly size: string;
  readonly count: number;
  readonly from: 'to buy' | 'from the rack';
  readonly each: number | null;
  readonly use: string;
}

/** What to bring home and what to take from the rack, by the plan: stock first, then fixings by name, finish and sundries. */
export function listShopping(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
  routed: readonly PlannedRouting[] = [],
): readonly ShoppingLine[] {
  return [
    ...listStock(project, planned, routed),
    ...listFixings(project, understanding),
    ...listSundries(project, understanding.pieces).map((sundry): ShoppingLine => ({
      ...{ kind: 'fixing', size: '', from: 'to buy', ...sundry },
      each: priceOf(project, sundry.item),
    })),
  ];
}

/** What saw and router take of each stock line, added up. */
function listStock(
  project: Project,
  planned: readonly PlannedGroup[],
  routed: readonly PlannedRouting[],
): readonly ShoppingLine[] {
  const uses = [
    ...planned.map(({ group, plan }) => ({ used: plan.stockUsed, parts: partsOf(group) })),
    ...routed.map(({ plan }) => ({
      used: plan.stockUsed,
      parts: plan.placements.map(({ id }) => id).filter(isFirst),
    })),
  ];
  const ids = uses.flatMap(({ used }) => used.filter(({ count }) => count > 0).map(({ id }) => id));
  return ids.filter(isFirst).flatMap((id): ShoppingLine[] => {
    const line = project.stock.find((each) => each.id === id);
    if (!line) return [];
    const of = uses.filter(({ used }) => used.some((each) => each.id === id && each.count > 0));
    const count = of.reduce((sum, { used }) => sum + (used.find((each) => each.id === id)?.count ?? 0), 0);
    return [
      {
        kind: line.form,
        item: materialName(project, line),
        size: showSizeIn(project.units, line.length, line.width, line.thickness),
        count,
        from: line.owned === true ? 'from the rack' : 'to buy',
        each: priceOfStock(line),
        use: describeThings(of.flatMap(({ parts }) => parts).filter(isFirst)),
      },
    ];
  });
}

function partsOf(group: CuttingGroup): readonly string[] {
  return group.blanks.flatMap((blank) => blank.parts.map((part) => part.part)).filter(isFirst);
}

function isFirst<T>(item: T, index: number, list: readonly T[]): boolean {
  return list.indexOf(item) === index;
}

function materialName(project: Project, line: StockLine): string {
  return project.materials.find((material) => material.id === line.material)?.name ?? line.material;
}

/** The fixings of all pieces, the same item added up. */
function listFixings(project: Project, understanding: Understanding): readonly ShoppingLine[] {
  const sums = new Map<string, { readonly count: number; readonly uses: readonly string[] }>();
  for (const piece of understanding.pieces)
    for (const fixing of piece.fixings) {
      const sum = sums.get(fixing.item);
      sums.set(fixing.item, {
        count: (sum?.count ?? 0) + fixing.quantity,
        uses: [...(sum?.uses ?? []), `${piece.letter}: ${fixing.use}`],
      });
    }
  return [...sums].map(([item, sum]) => ({
    kind: 'fixing',
    item,
    size: '',
    count: sum.count,
    from: 'to buy',
    each: priceOf(project, item),
    use: sum.uses.filter(isFirst).join('; '),
  }));
}

function priceOf(project: Project, item: string): number | null {
  return project.fixingPrices?.find((price) => price.item === item)?.price ?? null;
}

/** What is known of the cost: the sum of the lines that have a price, and how many have none. */
export function sumShopping(lines: readonly ShoppingLine[]): PriceSum {
  return {
    total: lines.reduce((sum, line) => sum + line.count * (line.each ?? 0), 0),
    unpriced: lines.filter((line) => line.each === null).length,
  };
}

/** The shopping list as a table with its total; the heading names the currency. */
export function tableOfShopping(project: Project, lines: readonly ShoppingLine[]): Table {
  const { total, unpriced } = sumShopping(lines);
  const tax = project.pricesIncludeTax ? 'tax included' : 'tax not included';
  const note = unpriced > 0 ? `${tax}; ${countWords(unpriced, 'thing')} without a price` : tax;
  const amount = (value: number): number => Math.round(value * 100) / 100;
  return {
    header: [
      'kind',
      'item',
      project.units === 'inch' ? 'size in' : 'size mm',
      'count',
      'from',
      `price each ${project.currency}`,
      `price ${project.currency}`,
      'for',
    ],
    rows: [
      ...lines.map((line) => [
        line.kind,
        line.item,
        line.size,
        line.count,
        line.from,
        line.each === null ? noPrice : amount(line.each),
        line.each === null ? '' : amount(line.count * line.each),
        line.use,
      ]),
      ['total', '', '', '', '', '', total === 0 && unpriced > 0 ? '' : amount(total), note],
    ],
  };
}
