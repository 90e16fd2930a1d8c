import { across, along } from './direction.ts';
import type { Direction } from './direction.ts';
import { makeLoad } from './load.ts';
import type { Load } from './load.ts';
import { findMergedKind } from './merge-kinds.ts';
import type { Bin, Model } from './model.ts';
import { startHunt, worthOf } from './insert.ts';
import { listNodes, noRoom, tidySheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';
import { makeFree } from './tree.ts';
import type { Node } from './tree.ts';
import { neverDrawn } from './use-column.ts';
import type { CutNode, CuttingPlan, Layout } from './types.ts';

/**
 * A plan as a load to go on from. Null when it is not one this search could have made: for another job, sawn around
 * keep-outs, or with parts beside each other without a tree of cuts.
 */
export function resumeLoad(model: Model, merged: Model, plan: CuttingPlan): Load | null {
  const sheets: Sheet[] = [];
  const left = Int32Array.from(merged.kinds, (kind) => kind.count);
  for (const layout of plan.layouts) {
    for (let i = 0; i < layout.times; i++) {
      const sheet = resumeSheet({ model, merged }, layout);
      if (!sheet) return null;
      for (const { kind } of sheet.parts) left[kind] = (left[kind] as number) - 1;
      sheets.push(sheet);
    }
  }
  const load = makeLoad(merged, sheets, left);
  const fits =
    left.every((count) => count >= 0) && merged.bins.every((bin) => usedOf(load, bin) <= bin.count);
  return fits ? load : null;
}

function usedOf(load: Load, bin: Bin): number {
  return load.used[bin.index] as number;
}

interface Models {
  readonly model: Model;
  /** The same with equal parts as one kind. */
  readonly merged: Model;
}

function resumeSheet(models: Models, layout: Layout): Sheet | null {
  const { merged } = models;
  const bin = merged.bins.find((each) => each.id === layout.stock);
  if (!bin || bin.hasKeepOut) return null;
  const host = makeFree(bin.length, bin.width, 0, 0);
  const root =
    merged.style === 'length'
      ? resumeRow(models, layout, host)
      : layout.cuts && resumeNode(models, layout.cuts, host);
  if (!root) return null;
  const sheet: Sheet = {
    bin,
    way: 0,
    owner: null,
    roots: [root],
    free: [],
    parts: [],
    worth: 0,
    usedArea: 0,
    refused: [],
    ...noRoom,
  };
  if (!tidySheet(merged, sheet)) return null;
  const hunt = startHunt(merged, neverDrawn);
  listNodes(sheet, (node) => worthOf(hunt, node.length, node.width));
  return sheet.parts.length > 0 ? sheet : null;
}

function resumeRow(models: Models, layout: Layout, host: Node): Node | null {
  host.direction = across;
  host.kids = layout.placed.map(({ id }) => {
    const kind = findMergedKind(models.model, id);
    const part = makeFree(models.merged.kinds[kind]?.length ?? 0, 1, across, 1);
    part.kind = kind;
    part.parent = host;
    return part;
  });
  return host.kids.every(({ kind }) => kind >= 0) ? host : null;
}

/** Lets a free node become what a node of the plan is; null when the plan names a part the job has not. */
function resumeNode(models: Models, cut: CutNode, node: Node): Node | null {
  if ('part' in cut) return resumePart(models, cut, node);
  if (!('cut' in cut)) return node;
  const direction: Direction = cut.cut === 'along' ? along : across;
  const { unit, kerfX, kerfY } = models.merged;
  const take =
    direction === along
      ? Math.round((cut.at - cut.y) / unit) + kerfY
      : Math.round((cut.at - cut.x) / unit) + kerfX;
  const [low, high] =
    direction === along
      ? [makeFree(node.length, take, 0, 0), makeFree(node.length, node.width - take, 0, 0)]
      : [makeFree(take, node.width, 0, 0), makeFree(node.length - take, node.width, 0, 0)];
  const kids = [resumeNode(models, cut.children[0], low), resumeNode(models, cut.children[1], high)];
  node.direction = direction;
  node.kids = kids.filter((kid) => kid !== null);
  for (const kid of node.kids) kid.parent = node;
  return node.kids.length === 2 ? node : null;
}

function resumePart(models: Models, cut: CutNode & { readonly part: string }, node: Node): Node | null {
  const index = findMergedKind(models.model, cut.part);
  const kind = models.merged.kinds[index];
  if (!kind) return null;
  const straight = kind.length === node.length && kind.width === node.width;
  const turned = kind.turn && kind.length === node.width && kind.width === node.length;
  if (!straight && !turned) return null;
  node.kind = index;
  node.turned = !straight;
  return node;
}
