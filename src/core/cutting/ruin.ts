import { squeezePart } from './change-sheet.ts';
import { insertPart, openFor, worthOf } from './insert.ts';
import type { Hunt } from './insert.ts';
import { dropSheet, leavePart, ownSheet } from './load.ts';
import type { Load } from './load.ts';
import type { Kind } from './model.ts';
import { setFree } from './tree.ts';
import type { Node } from './tree.ts';
import { listNodes, tidySheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';

/**
 * Takes some parts out of some sheets, alone or with what they were cut with; about `count` of them. Where there are
 * several sizes of stock, now and then whole sheets instead: only so can one size take the place of another.
 */
export function ruin(hunt: Hunt, load: Load, count: number): void {
  const { random, model } = hunt;
  if (model.bins.length > 1 && random.next() < sheetShare) return dropSome(hunt, load);
  const touched: number[] = [];
  const few = 1 + random.whole(0, 2);
  let taken = 0;
  for (let tries = 0; taken < count && tries < 4 * count && load.sheets.length > 0; tries++) {
    const fresh = touched.length < few;
    const at = fresh
      ? random.whole(0, load.sheets.length - 1)
      : (touched[random.whole(0, touched.length - 1)] as number);
    const sheet = ownSheet(load, at);
    if (sheet.parts.length === 0) continue;
    if (!touched.includes(at)) touched.push(at);
    const node = climb(hunt, sheet.parts[random.whole(0, sheet.parts.length - 1)] as Node);
    if (isGone(node)) continue;
    taken += takeOut(load, node);
  }
  touched.sort((a, b) => b - a);
  for (const at of touched) mend(hunt, load, at);
}

const sheetShare = 0.1;

function dropSome({ random }: Hunt, load: Load): void {
  const count = Math.min(load.sheets.length, 1 + random.whole(0, 2));
  for (let i = 0; i < count; i++) dropSheet(load, random.whole(0, load.sheets.length - 1));
}

function climb(hunt: Hunt, part: Node): Node {
  let node = part;
  while (node.parent && hunt.random.next() < 0.35) node = node.parent;
  return node;
}

function isGone(node: Node): boolean {
  if (node.direction === 0 && node.kind < 0) return true;
  for (let up = node.parent; up; up = up.parent) if (up.direction === 0) return true;
  return false;
}

/** Frees a node and notes its parts as left; answers how many. */
function takeOut(load: Load, node: Node): number {
  const taken = collect(load, node);
  setFree(node);
  return taken;
}

function collect(load: Load, node: Node): number {
  if (node.direction !== 0) {
    let sum = 0;
    for (const kid of node.kids) sum += collect(load, kid);
    return sum;
  }
  if (node.kind < 0) return 0;
  leavePart(load, node.kind);
  return 1;
}

/** Tidies a sheet after parts were taken out; empties it when its limits no longer hold; drops it when empty. */
function mend(hunt: Hunt, load: Load, at: number): void {
  const sheet = load.sheets[at] as Sheet;
  const kept = tidySheet(hunt.model, sheet);
  listNodes(sheet, (node) => worthOf(hunt, node.length, node.width));
  if (!kept || sheet.parts.length === 0) dropSheet(load, at);
}

/** Puts what is left back in, in an order drawn by lot, by prices if given; opens sheets as the budget allows. */
export function recreate(hunt: Hunt, load: Load, budget: number, prices?: Float64Array): void {
  const order = orderLeft(hunt, load, prices);
  hunt.starts.fill(0);
  for (const kind of order) {
    while ((load.left[kind] as number) > 0) {
      if (insertPart(hunt, load, kind) || squeezePart(hunt, load, kind)) continue;
      if (!openFor(hunt, load, kind, budget)) break;
      if (insertPart(hunt, load, kind)) continue;
      dropSheet(load, load.sheets.length - 1);
      break;
    }
  }
}

function orderLeft(hunt: Hunt, load: Load, prices?: Float64Array): readonly number[] {
  const { random, order, keys } = hunt;
  const { left } = load;
  order.length = 0;
  const rule = random.whole(0, 5);
  const noise = random.next() * 0.4;
  for (let k = 0; k < left.length; k++) {
    if (left[k] === 0) continue;
    order.push(k);
    const base = prices ? (prices[k] as number) : keyOf(hunt.model.kinds[k] as Kind, rule);
    keys[k] = base * (1 + noise * (random.next() - 0.5));
  }
  sortByKey(order, keys);
  return order;
}

function keyOf({ area, length, width }: Kind, rule: number): number {
  switch (rule) {
    case 1:
      return length;
    case 2:
      return width;
    case 3:
      return Math.max(length, width);
    case 5:
      return length + width;
    default:
      return area;
  }
}

/** Largest key first. Few are sorted by insertion, which makes nothing new. */
function sortByKey(order: number[], keys: Float64Array): void {
  if (order.length > 30) {
    order.sort((a, b) => (keys[b] as number) - (keys[a] as number));
    return;
  }
  for (let i = 1; i < order.length; i++) {
    const kind = order[i] as number;
    const key = keys[kind] as number;
    let j = i - 1;
    for (; j >= 0 && (keys[order[j] as number] as number) < key; j--) order[j + 1] = order[j] as number;
    order[j + 1] = kind;
  }
}
