import type { Bin, Model } from './model.ts';
import { cloneSheet, openSheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';

/** Sheets with parts in them, and how many parts of each kind lie in none. */
export interface Load {
  readonly sheets: Sheet[];
  /** Sheets that carry this mark belong to this load alone and may be changed. */
  readonly mark: object;
  readonly left: Int32Array;
  leftCount: number;
  /** Area of what is left, by `areas`. */
  leftArea: number;
  /** What one part of each kind weighs: its area, more where it was left over again and again. */
  readonly areas: Float64Array;
  readonly used: Int32Array;
  cost: number;
}

export function emptyLoad(model: Model): Load {
  const left = Int32Array.from(model.kinds, (kind) => kind.count);
  return makeLoad(model, [], left);
}

/** A load of given sheets and what they leave. */
export function makeLoad(model: Model, sheets: Sheet[], left: Int32Array): Load {
  const areas = Float64Array.from(model.kinds, (kind) => kind.area);
  const used = new Int32Array(model.bins.length);
  for (const { bin } of sheets) used[bin.index] = (used[bin.index] as number) + 1;
  return {
    sheets,
    mark: {},
    left,
    leftCount: left.reduce((sum, count) => sum + count, 0),
    leftArea: areas.reduce((sum, area, kind) => sum + area * (left[kind] as number), 0),
    areas,
    used,
    cost: costOf(sheets),
  };
}

/** A load to try changes on: sheets are copied when first changed. */
export function draftOf(load: Load): Load {
  return {
    sheets: load.sheets.slice(),
    mark: {},
    left: load.left.slice(),
    leftCount: load.leftCount,
    leftArea: load.leftArea,
    areas: load.areas,
    used: load.used.slice(),
    cost: load.cost,
  };
}

/** The same load with the parts it leaves heavier, by a tenth of their area; its sheets are no longer its own. */
export function weighLeft(model: Model, load: Load): Load {
  const areas = load.areas.slice();
  let leftArea = 0;
  for (const { index, area } of model.kinds) {
    const count = load.left[index] as number;
    if (count === 0) continue;
    areas[index] = (areas[index] as number) + Math.ceil(weighing * area);
    leftArea += (areas[index] as number) * count;
  }
  return { ...draftOf(load), areas, leftArea };
}

const weighing = 0.1;

/** Notes one part of a kind as lying in no sheet. */
export function leavePart(load: Load, kind: number): void {
  load.left[kind] = (load.left[kind] as number) + 1;
  load.leftCount++;
  load.leftArea += load.areas[kind] as number;
}

/** Notes one left part of a kind as placed. */
export function takePart(load: Load, kind: number): void {
  load.left[kind] = (load.left[kind] as number) - 1;
  load.leftCount--;
  load.leftArea -= load.areas[kind] as number;
}

/** The sheet at a place, made the load's own. */
export function ownSheet(load: Load, at: number): Sheet {
  const sheet = load.sheets[at] as Sheet;
  if (sheet.owner === load.mark) return sheet;
  const copy = cloneSheet(sheet, load.mark);
  load.sheets[at] = copy;
  return copy;
}

export function addSheet(load: Load, bin: Bin, way: number): Sheet {
  const sheet = openSheet(bin, way, load.mark);
  load.sheets.push(sheet);
  load.used[bin.index] = (load.used[bin.index] ?? 0) + 1;
  load.cost = costOf(load.sheets);
  return sheet;
}

/** Takes a sheet out; the parts in it are left. */
export function dropSheet(load: Load, at: number): void {
  const sheet = load.sheets[at] as Sheet;
  for (const node of sheet.parts) leavePart(load, node.kind);
  load.used[sheet.bin.index] = (load.used[sheet.bin.index] ?? 0) - 1;
  load.sheets.splice(at, 1);
  load.cost = costOf(load.sheets);
}

function costOf(sheets: readonly Sheet[]): number {
  let cost = 0;
  for (let i = 0; i < sheets.length; i++) cost += (sheets[i] as Sheet).bin.cost;
  return cost;
}
