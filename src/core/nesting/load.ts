import type { Random } from '#core/numerics';
import type { Model } from './model.ts';
import { measureAll } from './losses.ts';
import { emptyPlace, layDown, makeNest } from './nest.ts';
import type { Nest } from './nest.ts';
import { spreadLines } from './whereabouts.ts';

/** A part as it lies: kind, sheet of the load, pose, corner inside the margin. */
export interface Lying {
  readonly source: number;
  readonly sheet: number;
  readonly pose: number;
  readonly x: number;
  readonly y: number;
}

/** Sheets, by their bin, with the parts on them; `left` are kinds of parts that lie nowhere. */
export interface Load {
  readonly bins: readonly number[];
  readonly parts: readonly Lying[];
  readonly left: readonly number[];
  readonly cost: number;
  /** What the parts take of the least used sheet, along its length: the rest stays in one piece. */
  readonly reach: number;
}

/** A load of these parts; sheets without any are left out, the least used one comes last. */
export function makeLoad(
  model: Model,
  bins: readonly number[],
  parts: readonly Lying[],
  left: readonly number[],
): Load {
  const reaches = bins.map(() => 0);
  for (const part of parts) {
    const end = part.x + model.shapes.width[part.pose]!;
    if (end > reaches[part.sheet]!) reaches[part.sheet] = end;
  }
  const used = bins
    .map((bin, sheet) => ({ bin, sheet, share: reaches[sheet]! / model.bins[bin]!.length }))
    .filter(({ sheet }) => reaches[sheet]! > 0)
    .sort((a, b) => b.share - a.share || a.sheet - b.sheet);
  const places = new Map(used.map(({ sheet }, at) => [sheet, at]));
  return {
    bins: used.map(({ bin }) => bin),
    parts: parts.map((part) => ({ ...part, sheet: places.get(part.sheet)! })),
    left,
    cost: used.reduce((sum, { bin }) => sum + model.bins[bin]!.cost, 0),
    reach: used.length > 0 ? reaches[used.at(-1)!.sheet]! : 0,
  };
}

/** Fewer parts left out, then less cost, then a longer rest of the last sheet. */
export function isBetterLoad(a: Load, b: Load): boolean {
  if (a.left.length !== b.left.length) return a.left.length < b.left.length;
  const near = 1e-9 * Math.max(1, b.cost);
  if (Math.abs(a.cost - b.cost) > near) return a.cost < b.cost;
  return a.reach < b.reach - 1e-6;
}

/** Lays out sheets and parts; parts without a place have sheet -1. */
export function openNest(
  model: Model,
  random: Random,
  bins: readonly number[],
  parts: readonly Lying[],
): Nest {
  const zones = bins.flatMap((bin, sheet) => model.bins[bin]!.zones.map((zone) => ({ ...zone, sheet })));
  const source = Int32Array.from([...parts, ...zones], (each) => each.source);
  const nest = makeNest({
    shapes: model.shapes,
    clash: model.clash,
    random,
    source,
    fixed: zones.length,
    mostSheets: Math.max(1, bins.length),
    searched: true,
  });
  nest.sheets = bins.length;
  bins.forEach((bin, sheet) => {
    nest.sheetLength[sheet] = model.bins[bin]!.length;
    nest.sheetWidth[sheet] = model.bins[bin]!.width;
    if (nest.where) spreadLines(nest.where, sheet, lengthOf(model, bin, parts), model.bins[bin]!.width);
  });
  const place = emptyPlace();
  [...parts, ...zones].forEach((each, i) => {
    place.pose = 'pose' in each ? each.pose : model.shapes.firstPose[each.source]!;
    place.sheet = each.sheet;
    place.x = each.x;
    place.y = each.y;
    layDown(nest, i, place);
  });
  measureAll(nest);
  return nest;
}

/** Of a sheet; of a strip, what the parts take. */
function lengthOf({ bins, shapes }: Model, bin: number, parts: readonly Lying[]): number {
  const { length } = bins[bin]!;
  if (length < Infinity) return length;
  return Math.max(...parts.map(({ pose, x }) => x + shapes.width[pose]!));
}

/** The parts of a nest as they lie. */
export function readNest(nest: Nest): Lying[] {
  return Array.from({ length: nest.count }, (_, i) => ({
    source: nest.source[i]!,
    sheet: nest.sheet[i]!,
    pose: nest.pose[i]!,
    x: nest.x[i]!,
    y: nest.y[i]!,
  }));
}
