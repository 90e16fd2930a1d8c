import type { Bin, Model } from './model.ts';
import { cloneSheet, openSheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';

/** Sheets with parts in them, and how many parts of each kind lie in none. */
export interface Load {
  readonly sheets: Sheet[];
  /** Whether a sheet belongs to this load alone and may be changed. */
  readonly own: boolean[];
  readonly left: Int32Array;
  leftCount: number;
  readonly used: Int32Array;
  cost: number;
}

export function emptyLoad(model: Model): Load {
  const left = Int32Array.from(model.kinds, (kind) => kind.count);
  return {
    sheets: [],
    own: [],
    left,
    leftCount: left.reduce((a, b) => a + b, 0),
    used: new Int32Array(model.bins.length),
    cost: 0,
  };
}

/** A load to try changes on: sheets are copied when first changed. */
export function draftOf(load: Load): Load {
  return {
    sheets: load.sheets.slice(),
    own: new Array<boolean>(load.sheets.length).fill(false),
    left: load.left.slice(),
    leftCount: load.leftCount,
    used: load.used.slice(),
    cost: load.cost,
  };
}

/** The sheet at a place, made the load's own. */
export function ownSheet(load: Load, at: number): Sheet {
  const sheet = load.sheets[at] as Sheet;
  if (load.own[at]) return sheet;
  const copy = cloneSheet(sheet);
  load.sheets[at] = copy;
  load.own[at] = true;
  return copy;
}

export function addSheet(load: Load, bin: Bin, way: number): Sheet {
  const sheet = openSheet(bin, way);
  load.sheets.push(sheet);
  load.own.push(true);
  load.used[bin.index] = (load.used[bin.index] ?? 0) + 1;
  load.cost = costOf(load.sheets);
  return sheet;
}

/** Takes a sheet out; the parts in it are left. */
export function dropSheet(load: Load, at: number): void {
  const sheet = load.sheets[at] as Sheet;
  for (const node of sheet.parts) {
    load.left[node.kind] = (load.left[node.kind] ?? 0) + 1;
    load.leftCount++;
  }
  load.used[sheet.bin.index] = (load.used[sheet.bin.index] ?? 0) - 1;
  load.sheets.splice(at, 1);
  load.own.splice(at, 1);
  load.cost = costOf(load.sheets);
}

function costOf(sheets: readonly Sheet[]): number {
  let cost = 0;
  for (const sheet of sheets) cost += sheet.bin.cost;
  return cost;
}
