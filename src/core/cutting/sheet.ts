import type { Bin, Model } from './model.ts';
import { measureReach } from './reach.ts';
import { cloneNode, isFree, makeFree, tidyTree } from './tree.ts';
import type { Node } from './tree.ts';
import { hasLimits, keepsLimits } from './limits.ts';

/** One piece of stock under search: the trees of its pieces, and what is free in them. Replaced, never shared. */
export interface Sheet {
  readonly bin: Bin;
  readonly way: number;
  /** The mark of the load that may change it; null: none. */
  readonly owner: object | null;
  readonly roots: Node[];
  /** Free nodes. */
  free: Node[];
  /** Nodes with a part. */
  parts: Node[];
  /** Sum of the worth of what is free. */
  worth: number;
  usedArea: number;
  /** No free node is longer, wider or larger than this: what does not fit need not look. */
  roomLength: number;
  roomWidth: number;
  roomArea: number;
  /** Kinds known to have no place here, a bit for each. */
  refused: number[];
  /** Whether the nodes know how far they reach. */
  isMeasured: boolean;
}

export function isRefused({ refused }: Sheet, kind: number): boolean {
  return ((refused[kind >> 5] ?? 0) & (1 << (kind & 31))) !== 0;
}

/** Notes that a kind has no place on a sheet, until something is taken out of it. */
export function refuse({ refused }: Sheet, kind: number): void {
  while (refused.length <= kind >> 5) refused.push(0);
  refused[kind >> 5] = (refused[kind >> 5] as number) | (1 << (kind & 31));
}

/** Makes sure that the nodes know how far they reach. */
export function measureNodes(sheet: Sheet): void {
  if (sheet.isMeasured) return;
  for (let r = 0; r < sheet.roots.length; r++) measureReach(sheet.roots[r] as Node);
  sheet.isMeasured = true;
}

/** Measures anew what the free nodes have room for at most. */
export function measureRoom(sheet: Sheet): void {
  sheet.roomLength = sheet.roomWidth = sheet.roomArea = 0;
  for (const { length, width } of sheet.free) {
    sheet.roomLength = Math.max(sheet.roomLength, length);
    sheet.roomWidth = Math.max(sheet.roomWidth, width);
    sheet.roomArea = Math.max(sheet.roomArea, length * width);
  }
}

export function openSheet(bin: Bin, way: number, owner: object | null): Sheet {
  const plan = bin.pieces[way];
  const roots = (plan?.pieces ?? []).map((piece) =>
    makeFree(piece.length, piece.width, piece.direction, piece.stage),
  );
  const sheet = {
    bin,
    way,
    owner,
    roots,
    free: [...roots],
    parts: [],
    worth: 0,
    usedArea: 0,
    refused: [],
    ...noRoom,
  };
  measureRoom(sheet);
  return sheet;
}

/** Of a sheet not yet measured. */
export const noRoom = { roomLength: 0, roomWidth: 0, roomArea: 0, isMeasured: false };

/** A copy whose nodes are its own; the nodes of the original point to theirs. */
export function cloneSheet(sheet: Sheet, owner: object | null): Sheet {
  const copy: Sheet = {
    bin: sheet.bin,
    way: sheet.way,
    owner,
    roots: sheet.roots.map((root) => cloneNode(root, null)),
    free: [],
    parts: [],
    worth: sheet.worth,
    usedArea: sheet.usedArea,
    roomLength: sheet.roomLength,
    roomWidth: sheet.roomWidth,
    roomArea: sheet.roomArea,
    refused: [],
    isMeasured: sheet.isMeasured,
  };
  for (const node of sheet.free) copy.free.push(node.copy as Node);
  for (const node of sheet.parts) copy.parts.push(node.copy as Node);
  return copy;
}

/** Gathers free nodes and parts anew after the tree changed. */
export function listNodes(sheet: Sheet, worthOf: (node: Node) => number): void {
  sheet.free = [];
  sheet.parts = [];
  sheet.worth = 0;
  sheet.usedArea = 0;
  sheet.refused = [];
  sheet.isMeasured = false;
  for (const root of sheet.roots) visit(root, sheet, worthOf);
  measureRoom(sheet);
}

function visit(node: Node, sheet: Sheet, worthOf: (node: Node) => number): void {
  if (node.direction !== 0) {
    for (const kid of node.kids) visit(kid, sheet, worthOf);
  } else if (isFree(node)) {
    node.worth = worthOf(node);
    sheet.worth += node.worth;
    sheet.free.push(node);
  } else {
    sheet.parts.push(node);
    sheet.usedArea += node.length * node.width;
  }
}

/** Tidies all trees of a sheet. False when the tidied sheet breaks a limit of the job: then it must be emptied. */
export function tidySheet(model: Model, sheet: Sheet): boolean {
  for (const root of sheet.roots) {
    tidyTree(
      root,
      root.stage === 0 && model.limits.firstCut !== null ? model.limits.firstCut : 0,
      !hasLimits(model),
    );
  }
  return !hasLimits(model) || sheet.roots.every((root) => keepsLimits(model, root));
}
