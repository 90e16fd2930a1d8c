import type { Random } from '#core/numerics';
import { byBulk, layPart } from './first-fit.ts';
import { chooseBin, listParts } from './lay-columns.ts';
import { makeLoad, readNest } from './load.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { emptyPlace, layDown, makeNest } from './nest.ts';
import type { Nest } from './nest.ts';
import { usedLength } from './used-length.ts';

/** Places tried for a part on the newest sheet and on each older one. */
const tries = { newest: 120, older: 24 } as const;

/** Sheets being filled, with the slots of parts kept for their keep-outs. */
interface Filling {
  readonly model: Model;
  readonly nest: Nest;
  readonly bins: number[];
  nextZone: number;
}

/** Parts from the bulkiest down, each where it fits first; null when time ends before the last. */
export function layOneByOne(model: Model, random: Random, isOver: () => boolean): Load | null {
  const parts = listParts(model);
  const mostSheets = Math.max(1, parts.length);
  const zones = Math.max(0, ...model.bins.map((bin) => bin.zones.length)) * mostSheets;
  const nest = makeNest({
    shapes: model.shapes,
    clash: model.clash,
    random,
    source: Int32Array.from([...parts, ...new Array<number>(zones).fill(0)]),
    fixed: zones,
    mostSheets,
    searched: false,
  });
  const filling: Filling = { model, nest, bins: [], nextZone: nest.count };
  const left: number[] = [];
  for (const i of byBulk(nest)) {
    if (isOver()) return null;
    if (!layOnOpen(filling, i) && !layOnNew(filling, i)) left.push(nest.source[i]!);
  }
  const laid = readNest(nest).filter((part) => part.sheet >= 0);
  return makeLoad(model, filling.bins, laid, left);
}

function layOnOpen({ nest }: Filling, i: number): boolean {
  for (let sheet = 0; sheet < nest.sheets; sheet++) {
    const isNewest = sheet >= nest.sheets - 2;
    if (layPart(nest, i, sheet, isNewest ? tries.newest : tries.older)) return true;
  }
  return false;
}

/** Opens a sheet, or makes the strip longer, and lays the part there. */
function layOnNew(filling: Filling, i: number): boolean {
  const { model, nest, bins } = filling;
  if (model.strip !== null && nest.sheets === 1) return extendStrip(nest, i);
  const bin = chooseBin(model, nest.source[i]!, bins);
  if (!bin) return false;
  const sheet = nest.sheets++;
  bins.push(bin.index);
  nest.sheetLength[sheet] = model.strip === null ? bin.length : 0;
  nest.sheetWidth[sheet] = bin.width;
  for (const zone of bin.zones) {
    nest.source[filling.nextZone] = zone.source;
    const pose = nest.shapes.firstPose[zone.source]!;
    layDown(nest, filling.nextZone++, { ...emptyPlace(), sheet, pose, x: zone.x, y: zone.y });
  }
  if (model.strip !== null) return extendStrip(nest, i);
  return layPart(nest, i, sheet, tries.newest);
}

/** Makes the strip longer by the shortest way the part can lie, and lays it there. */
function extendStrip(nest: Nest, i: number): boolean {
  const { shapes, source } = nest;
  let best = -1;
  for (let p = shapes.firstPose[source[i]!]!; p < shapes.firstPose[source[i]! + 1]!; p++) {
    if (shapes.height[p]! > nest.sheetWidth[0]!) continue;
    if (best < 0 || shapes.width[p]! < shapes.width[best]!) best = p;
  }
  if (best < 0) return false;
  let end = 0;
  for (let j = 0; j < nest.count; j++) if (nest.sheet[j] === 0) end = Math.max(end, nest.lies[4 * j + 2]!);
  const x = Math.max(0, end - shapes.box[4 * best]!);
  layDown(nest, i, { ...emptyPlace(), pose: best, sheet: 0, x, y: 0 });
  nest.sheetLength[0] = usedLength(nest, 0);
  return true;
}
