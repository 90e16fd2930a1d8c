import type { Material } from '#core/joinery';
import { noPrice } from '#core/pipeline';
import type { StockLine } from '#core/project';
import { formatLength, formatMoney, type LengthSystem } from '#core/units';

export const formWords: Readonly<Record<StockLine['form'], string>> = {
  sheet: 'Sheet',
  board: 'Board',
  batten: 'Batten',
  offcut: 'Offcut',
};

/** `2440 × 1220 × 12`, along the grain first. */
export function sizeWords(
  size: { readonly length: number; readonly width: number; readonly thickness: number },
  system: LengthSystem,
): string {
  return [size.length, size.width, size.thickness].map((each) => formatLength(each, { system })).join(' × ');
}

/** The size of a line as the rack shows it: the thickness only where it is not that of the material. */
export function lineWords(line: StockLine, material: Material, system: LengthSystem): string {
  if (material.kind === 'solid' || line.thickness !== material.thickness) return sizeWords(line, system);
  return `${formatLength(line.length, { system })} × ${formatLength(line.width, { system })}`;
}

/** How many there are, and whose: `3 owned`, `at most 2`, `as many as needed`. */
export function countWords(line: StockLine): string {
  if (line.owned) return line.count === null ? 'owned' : `${line.count} owned`;
  return line.count === null ? 'as many as needed' : `at most ${line.count}`;
}

/** What one costs, or whose it is: `78.00 EUR`, `no price known`, `on the rack`. */
export function priceWords(line: StockLine, currency: string): string {
  if (line.owned) return 'on the rack';
  return line.price === undefined ? noPrice : formatMoney(line.price, currency);
}

/** What a material is, in a few words. */
export function materialWords(material: Material, system: LengthSystem): string {
  if (material.kind === 'sheet')
    return `Sheet, measured ${formatLength(material.thickness, { system, unit: true })} thick`;
  const state = material.state === 'sawn' ? 'rough sawn' : 'planed all round';
  return `Solid timber, ${state}${material.species ? `, ${material.species}` : ''}`;
}

/** Forms a material can be bought in. */
export function formsOf(material: Material): readonly StockLine['form'][] {
  return material.kind === 'sheet' ? ['sheet', 'offcut'] : ['board', 'batten', 'offcut'];
}

/** A line to begin with, of a size the trade sells; its price is not known yet. */
export function firstLine(material: Material, id: string): StockLine {
  const common = { id, material: material.id, count: null };
  return material.kind === 'sheet'
    ? { ...common, form: 'sheet', length: 2440, width: 1220, thickness: material.thickness }
    : { ...common, form: 'board', length: 2400, width: 150, thickness: 27 };
}

/** The corners of a little picture of the piece, longest side `side` px; at least 3 px wide. */
export function pictureOf(
  line: StockLine,
  longest: number,
  side: number,
): { readonly width: number; readonly height: number; readonly scale: number } {
  const scale = side / longest;
  return { width: Math.max(3, line.length * scale), height: Math.max(3, line.width * scale), scale };
}
