import { offeredArea } from './bounds.ts';
import type { Engine } from './engine.ts';

/** Sheets of the best load to take away, by their place in it, and bins to bring in instead. */
export interface Exchange {
  readonly remove: readonly number[];
  readonly add: readonly number[];
  /** Area offered over area taken, afterwards. */
  readonly spare: number;
}

/**
 * Exchanges of up to two sheets for up to two others that would cost less and still offer the area taken, the roomiest
 * first. Where parts are left out: the sheets that could be added, or the same sheets again.
 */
export function listExchanges(engine: Engine): readonly Exchange[] {
  const { model, best, areas } = engine;
  const offered = best.bins.reduce((sum, bin) => sum + offeredArea(model, model.bins[bin]!), 0);
  const taken = [...best.parts.map((part) => part.source), ...best.left].reduce(
    (sum, k) => sum + areas[k]!,
    0,
  );
  const isShort = best.left.length > 0;
  const found: Exchange[] = [];
  for (const remove of removals(best.bins)) {
    for (const add of additions(model.bins.length)) {
      const cost = (bins: readonly number[]) => bins.reduce((sum, bin) => sum + model.bins[bin]!.cost, 0);
      const room = (bins: readonly number[]) =>
        bins.reduce((sum, bin) => sum + offeredArea(model, model.bins[bin]!), 0);
      const gone = remove.map((sheet) => best.bins[sheet]!);
      if (!isShort && cost(add) >= cost(gone) - 1e-9) continue;
      if (isShort && gone.length > 0 && room(add) <= room(gone)) continue;
      if (!isThere(engine, gone, add)) continue;
      const spare = (offered - room(gone) + room(add)) / taken;
      if (spare >= 1 - 1e-9) found.push({ remove, add, spare });
    }
  }
  return found.sort((a, b) => b.spare - a.spare);
}

/** None, the last sheet of each bin, and pairs of these. */
function removals(bins: readonly number[]): readonly (readonly number[])[] {
  const lasts = [...new Set(bins)].map((bin) => bins.lastIndexOf(bin));
  const pairs = lasts.flatMap((a, i) => {
    const twin = bins.lastIndexOf(bins[a]!, a - 1);
    const others = lasts.slice(i + 1).map((b) => [a, b]);
    return a > 0 && twin >= 0 ? [[a, twin], ...others] : others;
  });
  return [[], ...lasts.map((a) => [a]), ...pairs];
}

function additions(bins: number): readonly (readonly number[])[] {
  const all = Array.from({ length: bins }, (_, bin) => bin);
  return [[], ...all.map((bin) => [bin]), ...all.flatMap((a) => all.slice(a).map((b) => [a, b]))];
}

/** Whether the stock has that many. */
function isThere({ model, best }: Engine, gone: readonly number[], add: readonly number[]): boolean {
  const count = (bins: readonly number[], bin: number) => bins.filter((each) => each === bin).length;
  return add.every(
    (bin) => count(best.bins, bin) - count(gone, bin) + count(add, bin) <= model.bins[bin]!.count,
  );
}
