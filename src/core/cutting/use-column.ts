import type { Random } from '#core/numerics';
import type { Column } from './columns.ts';
import { startHunt, worthOf } from './insert.ts';
import { leavePart, takePart } from './load.ts';
import type { Load } from './load.ts';
import type { Bin, Model } from './model.ts';
import { listNodes, noRoom, tidySheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';
import { cloneNode, setFree } from './tree.ts';
import type { Node } from './tree.ts';

/** How often a pattern can be cut without cutting a part too often or lacking stock. */
export function fitsTimes(column: Column, load: Load): number {
  let times = column.bin.count - (load.used[column.bin.index] as number);
  column.kinds.forEach((kind, k) => {
    times = Math.min(times, Math.floor((load.left[kind] as number) / (column.counts[k] as number)));
  });
  return times;
}

/** Lays one sheet by a pattern; parts of which enough are cut stay out. Answers 1, or 0 when nothing came of it. */
export function useColumn(model: Model, load: Load, column: Column): number {
  const bin = model.bins[column.bin.index] as Bin;
  if ((load.used[bin.index] as number) >= bin.count) return 0;
  const sheet: Sheet = {
    bin,
    way: column.way,
    owner: load.mark,
    roots: column.roots.map(copyOut),
    free: [],
    parts: [],
    worth: 0,
    usedArea: 0,
    refused: [],
    ...noRoom,
  };
  const hunt = startHunt(model, neverDrawn);
  const worth = (node: { length: number; width: number }) => worthOf(hunt, node.length, node.width);
  listNodes(sheet, worth);
  const out = sheet.parts.filter((node) => !takeWanted(load, node.kind));
  if (out.length === sheet.parts.length) return 0;
  if (out.length > 0) {
    out.forEach(setFree);
    const kept = tidySheet(model, sheet);
    listNodes(sheet, worth);
    if (!kept) return giveBack(load, sheet);
  }
  load.sheets.push(sheet);
  load.used[bin.index] = (load.used[bin.index] as number) + 1;
  load.cost += bin.cost;
  return 1;
}

/** A copy that the original knows nothing of: a column stays, and would keep all that is made of its copies. */
function copyOut(root: Node): Node {
  const copy = cloneNode(root, null);
  forgetCopies(root);
  return copy;
}

function forgetCopies(node: Node): void {
  node.copy = null;
  for (const kid of node.kids) forgetCopies(kid);
}

/** For what asks for chance but draws none. */
export const neverDrawn: Random = { next: () => 0, whole: (lo) => lo, normal: () => 0 };

function takeWanted(load: Load, kind: number): boolean {
  if ((load.left[kind] as number) === 0) return false;
  takePart(load, kind);
  return true;
}

function giveBack(load: Load, sheet: Sheet): 0 {
  for (const node of sheet.parts) leavePart(load, node.kind);
  return 0;
}
