import { across, along } from './direction.ts';
import type { Direction } from './direction.ts';

/**
 * A rectangle of a sheet under search, kerf added to its extents. A node with a direction is cut into its `kids`, whose
 * extents in that direction sum to its own; one with a `kind` is a part; the rest is free. Directions alternate.
 */
export interface Node {
  length: number;
  width: number;
  direction: Direction | 0;
  kind: number;
  turned: boolean;
  kids: Node[];
  parent: Node | null;
  /** Direction and stage of the cut that freed this node; 0 for a whole sheet. */
  outer: Direction | 0;
  stage: number;
  /** What a free node is worth to the search. */
  worth: number;
  /** As `measureReach` noted last. */
  needLength: number;
  needWidth: number;
  reachLength: number;
  reachWidth: number;
  /** Where `cloneNode` put it last. */
  copy: Node | null;
}

/** What a node without kids has; replaced, never filled. */
const noKids: Node[] = [];

/** A node not yet used. */
export function makeFree(length: number, width: number, outer: Direction | 0, stage: number): Node {
  return {
    length,
    width,
    direction: 0,
    kind: -1,
    turned: false,
    kids: noKids,
    parent: null,
    outer,
    stage,
    worth: 0,
    needLength: 0,
    needWidth: 0,
    reachLength: 0,
    reachWidth: 0,
    copy: null,
  };
}

export function isFree(node: Node): boolean {
  return node.direction === 0 && node.kind < 0;
}

/** The stage of a node's own cuts. */
export function stageOf(node: Node): number {
  return node.direction === node.outer ? node.stage : node.stage + 1;
}

export function other(direction: Direction): Direction {
  return direction === along ? across : along;
}

/** A copy that shares nothing; each original remembers its copy. */
export function cloneNode(node: Node, parent: Node | null): Node {
  const copy: Node = {
    length: node.length,
    width: node.width,
    direction: node.direction,
    kind: node.kind,
    turned: node.turned,
    kids: noKids,
    parent,
    outer: node.outer,
    stage: node.stage,
    worth: node.worth,
    needLength: node.needLength,
    needWidth: node.needWidth,
    reachLength: node.reachLength,
    reachWidth: node.reachWidth,
    copy: null,
  };
  node.copy = copy;
  const { kids } = node;
  if (kids.length > 0) {
    copy.kids = new Array<Node>(kids.length);
    for (let i = 0; i < kids.length; i++) copy.kids[i] = cloneNode(kids[i] as Node, copy);
  }
  return copy;
}

export function setFree(node: Node): void {
  node.direction = 0;
  node.kind = -1;
  node.turned = false;
  node.kids = noKids;
}

/**
 * Cuts a part out of a free node from its low corner, first in direction `first`. The rest stays free: beside the part
 * under the same parent where that is cut the same way. Answers the new free nodes.
 */
export function placePart(leaf: Node, part: PartSize, first: Direction): Node[] {
  const rests: Node[] = [];
  const inner = cutOff(leaf, first, first === along ? part.width : part.length, rests);
  const last = cutOff(inner, other(first), first === along ? part.length : part.width, rests);
  last.kind = part.kind;
  last.turned = part.turned;
  return rests;
}

export interface PartSize {
  readonly kind: number;
  readonly length: number;
  readonly width: number;
  readonly turned: boolean;
}

/** Cuts `take` off a free node and answers the low child; the node itself when nothing needs to come off. */
function cutOff(leaf: Node, direction: Direction, take: number, rests: Node[]): Node {
  const size = direction === along ? leaf.width : leaf.length;
  if (take === size) return leaf;
  const { parent } = leaf;
  if (parent && parent.direction === direction) {
    const rest = makePiece(leaf, direction, size - take, parent);
    if (direction === along) leaf.width = take;
    else leaf.length = take;
    parent.kids.push(rest);
    rests.push(rest);
    return leaf;
  }
  leaf.direction = direction;
  const low = makePiece(leaf, direction, take, leaf);
  const rest = makePiece(leaf, direction, size - take, leaf);
  leaf.kids = [low, rest];
  rests.push(rest);
  return low;
}

function makePiece(like: Node, direction: Direction, size: number, parent: Node): Node {
  const piece =
    direction === along
      ? makeFree(like.length, size, direction, stageOf(parent))
      : makeFree(size, like.width, direction, stageOf(parent));
  piece.parent = parent;
  return piece;
}

/**
 * Tidies a tree after parts were set free: merges what is free, lifts only children, and gives each node no more than
 * its parts need, so that free room gathers where it can be used. `first` is the direction the root must keep, or 0;
 * `mayWrap` lets the root be cut the other way first where that leaves a larger rest.
 */
export function tidyTree(root: Node, first: Direction | 0, mayWrap: boolean): void {
  const { length, width } = root;
  shrink(root, first !== 0 && root.direction === first);
  if (root.kind >= 0 && root.length < length && root.width < width) {
    wrapLonePart(root, first || largerRest(root, length, width));
  }
  if (mayWrap && root.direction !== 0) wrapRoot(root, root.direction, { length, width });
  stretch(root, length, width);
}

/** Cuts off in one piece what all strips of the root leave at their ends, where that is the larger rest. */
function wrapRoot(root: Node, direction: Direction, room: { length: number; width: number }): void {
  const lengthwise = direction === across;
  const [own, need] = lengthwise ? [room.length, root.length] : [room.width, root.width];
  const [side, sideNeed] = lengthwise ? [room.width, root.width] : [room.length, root.length];
  const widest = Math.max(...root.kids.map((kid) => (lengthwise ? kid.length : kid.width)));
  const asIs = Math.max(side * (own - need), (side - sideNeed) * widest);
  const wrapped = Math.max(own * (side - sideNeed), sideNeed * (own - need));
  if (wrapped <= asIs) return;
  const inner = makeFree(root.length, root.width, 0, 0);
  absorb(inner, root);
  root.direction = other(direction);
  root.kids = [inner];
  inner.parent = root;
}

/** Reduces a node to what its parts need; a node without parts becomes free with no extent. */
function shrink(node: Node, keep: boolean): void {
  if (node.direction === 0) {
    if (node.kind < 0) node.length = node.width = 0;
    return;
  }
  const kids: Node[] = [];
  for (const kid of node.kids) {
    shrink(kid, false);
    if (isFree(kid)) continue;
    if (kid.direction === node.direction) kids.push(...kid.kids);
    else kids.push(kid);
  }
  node.kids = kids;
  measure(node);
  const only = kids.length === 1 ? kids[0] : undefined;
  if (kids.length === 0) setFree(node);
  else if (only && !keep) absorb(node, only);
}

function measure(node: Node): void {
  let sum = 0;
  let most = 0;
  const lengthwise = node.direction === across;
  for (const kid of node.kids) {
    kid.parent = node;
    sum += lengthwise ? kid.length : kid.width;
    most = Math.max(most, lengthwise ? kid.width : kid.length);
  }
  node.length = lengthwise ? sum : most;
  node.width = lengthwise ? most : sum;
}

/** Lets a node become what another is, such as its only kid. */
export function absorb(node: Node, kid: Node): void {
  node.direction = kid.direction;
  node.kind = kid.kind;
  node.turned = kid.turned;
  node.kids = kid.kids;
  for (const each of node.kids) each.parent = node;
}

function largerRest(part: Node, length: number, width: number): Direction {
  return (width - part.width) * length >= (length - part.length) * width ? along : across;
}

/** Puts a part that lies alone in a larger rectangle into a strip of its own. */
function wrapLonePart(root: Node, first: Direction): void {
  const part = makeFree(root.length, root.width, first, 0);
  part.kind = root.kind;
  part.turned = root.turned;
  setFree(root);
  root.direction = first;
  root.kids = [part];
  part.parent = root;
}

/** Gives a shrunk node its room; what its kids do not need becomes one free kid. */
function stretch(node: Node, length: number, width: number): void {
  if (node.kind >= 0 && (node.length < length || node.width < width)) wrapPart(node, length);
  node.length = length;
  node.width = width;
  if (node.direction === 0) return;
  const stage = stageOf(node);
  const lengthwise = node.direction === across;
  let rest = lengthwise ? length : width;
  for (const kid of node.kids) {
    kid.outer = node.direction;
    kid.stage = stage;
    rest -= lengthwise ? kid.length : kid.width;
    stretch(kid, lengthwise ? kid.length : length, lengthwise ? width : kid.width);
  }
  if (rest > 0) node.kids.push(makePiece(node, node.direction, rest, node));
}

function wrapPart(node: Node, length: number): void {
  const part = makeFree(node.length, node.width, 0, 0);
  part.kind = node.kind;
  part.turned = node.turned;
  setFree(node);
  node.direction = part.length < length ? across : along;
  node.kids = [part];
  part.parent = node;
}
