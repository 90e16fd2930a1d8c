import { blink, worthOf } from './insert.ts';
import type { Hunt } from './insert.ts';
import { leavePart, takePart } from './load.ts';
import type { Load } from './load.ts';
import { cloneSheet, isRefused, listNodes, measureNodes, refuse, tidySheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';
import { findSqueeze, squeezeIn } from './squeeze.ts';
import type { Squeeze } from './squeeze.ts';
import type { Node, PartSize } from './tree.ts';

/** In a load of more sheets than this only free rectangles are looked at. */
const mostChanged = 60;

/** Puts a part where it fits once the cuts around it are moved; false when no such place was found. */
export function squeezePart(hunt: Hunt, load: Load, kind: number): boolean {
  const { sheets } = load;
  if (sheets.length > mostChanged) return false;
  let best: Squeeze | null = null;
  let at = -1;
  for (let i = 0; i < sheets.length; i++) {
    const sheet = sheets[i] as Sheet;
    if (sheet.parts.length === 0 || isRefused(sheet, kind)) continue;
    const found = lookInto(hunt, sheet, kind);
    if (!found) refuse(sheet, kind);
    else if (--hunt.untilBlink <= 0) blink(hunt);
    else if (!best || found.loss < best.loss) [best, at] = [found, i];
  }
  if (!best) return false;
  const { node } = best;
  const sheet = sheets[at] as Sheet;
  // with limits the change may have to be dropped
  const isOwn = sheet.owner === load.mark && !hunt.limited;
  const copy = isOwn ? sheet : cloneSheet(sheet, load.mark);
  squeezeIn(best, isOwn ? node : (node.copy as Node));
  if (!settle(hunt, load, copy, at)) {
    refuse(sheet, kind);
    return false;
  }
  takePart(load, kind);
  return true;
}

function lookInto(hunt: Hunt, sheet: Sheet, kind: number): Squeeze | null {
  const sizes = hunt.sizes[kind] as readonly PartSize[];
  const { length, width } = sizes[0] as PartSize;
  return sheet.bin.area - sheet.usedArea < length * width ? null : findSqueeze(sheet, sizes);
}

/** Tidies a changed copy and puts it in place of the sheet; false when a limit of the job breaks. */
function settle(hunt: Hunt, load: Load, copy: Sheet, at: number): boolean {
  if (!tidySheet(hunt.model, copy)) return false;
  listNodes(copy, (node) => worthOf(hunt, node.length, node.width));
  load.sheets[at] = copy;
  return true;
}

/**
 * Puts a left part in the place of one that is laid, moving the cuts around it; which of all places it may be is drawn
 * by lot. False when there is none.
 */
export function swapPart(hunt: Hunt, load: Load): boolean {
  const kind = drawLeft(hunt, load);
  if (kind < 0 || load.sheets.length > mostChanged) return false;
  const larger = hunt.random.next() < largerShare ? 1.5 : 1;
  const swap: Swap = {
    at: 0,
    seen: 0,
    most: (load.areas[kind] as number) * larger,
    sheet: -1,
    node: null,
    size: null,
  };
  for (; swap.at < load.sheets.length; swap.at++) seekIn(hunt, load, kind, swap);
  const { node, size } = swap;
  if (!node || !size) return false;
  const copy = cloneSheet(load.sheets[swap.sheet] as Sheet, load.mark);
  const { kind: out } = node;
  const { length, width, turned } = size;
  Object.assign(node.copy as Node, { kind, turned, length, width });
  if (!settle(hunt, load, copy, swap.sheet)) return false;
  leavePart(load, out);
  takePart(load, kind);
  return true;
}

/** How often a part may go that is larger than the one that comes. */
const largerShare = 0.2;

interface Swap {
  /** Sheet being looked at, and places seen so far. */
  at: number;
  seen: number;
  /** Area of a part that may go. */
  readonly most: number;
  sheet: number;
  node: Node | null;
  size: PartSize | null;
}

function drawLeft({ random }: Hunt, { left, leftCount }: Load): number {
  if (leftCount === 0) return -1;
  let at = random.whole(0, leftCount - 1);
  for (let kind = 0; kind < left.length; kind++) {
    at -= left[kind] as number;
    if (at < 0) return kind;
  }
  return -1;
}

function seekIn({ random, sizes }: Hunt, load: Load, kind: number, swap: Swap): void {
  const sheet = load.sheets[swap.at] as Sheet;
  const { parts } = sheet;
  measureNodes(sheet);
  for (let i = 0; i < parts.length; i++) {
    const node = parts[i] as Node;
    if (node.kind === kind || !node.parent || (load.areas[node.kind] as number) > swap.most) continue;
    for (const size of sizes[kind] as readonly PartSize[]) {
      if (size.length > node.reachLength || size.width > node.reachWidth) continue;
      swap.seen++;
      if (random.next() * swap.seen >= 1) continue;
      swap.sheet = swap.at;
      swap.node = node;
      swap.size = size;
    }
  }
}
