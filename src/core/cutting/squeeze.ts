import { across, along } from './direction.ts';
import type { Direction } from './direction.ts';
import { measureNodes } from './sheet.ts';
import type { Sheet } from './sheet.ts';
import { absorb, isFree, makeFree } from './tree.ts';
import type { Node, PartSize } from './tree.ts';

/** A place for a part that no free rectangle has room for: beside a node, what lies around it moved away. */
export interface Squeeze {
  readonly node: Node;
  readonly direction: Direction;
  /** Beside those kids of the node only that leave enough room; they are cut off from the others first. */
  readonly isGroup: boolean;
  readonly size: PartSize;
  /** Area lost around it. */
  readonly loss: number;
}

/** The place with the least loss where a part fits once cuts are moved, each cut being kept; null when there is none. */
export function findSqueeze(sheet: Sheet, sizes: readonly PartSize[]): Squeeze | null {
  const find: Find = { sizes, best: null, loss: Infinity };
  measureNodes(sheet);
  for (let r = 0; r < sheet.roots.length; r++) {
    const root = sheet.roots[r] as Node;
    if (root.needLength === 0) continue;
    tryBeside(find, root, root.direction === across ? along : across);
    visit(find, root);
  }
  return find.best;
}

interface Find {
  readonly sizes: readonly PartSize[];
  best: Squeeze | null;
  loss: number;
}

function visit(find: Find, node: Node): void {
  const { direction, kids, parent } = node;
  if (direction === 0) {
    if (parent) tryBeside(find, node, parent.direction === across ? along : across);
    return;
  }
  tryBeside(find, node, direction);
  // of fewer than three kids no group is more than one and less than all
  if (kids.length >= 3) tryGroups(find, node);
  for (let i = 0; i < kids.length; i++) {
    const kid = kids[i] as Node;
    if (kid.needLength > 0) visit(find, kid);
  }
}

function tryBeside(find: Find, node: Node, direction: Direction): void {
  const { needLength, needWidth, reachLength, reachWidth } = node;
  const lengthwise = direction === across;
  for (let z = 0; z < find.sizes.length; z++) {
    const size = find.sizes[z] as PartSize;
    const { length, width } = size;
    if (length > reachLength || width > reachWidth) continue;
    if (lengthwise ? needLength + length > reachLength : needWidth + width > reachWidth) continue;
    const whole = lengthwise
      ? (needLength + length) * Math.max(needWidth, width)
      : (needWidth + width) * Math.max(needLength, length);
    const loss = whole - needLength * needWidth - length * width;
    if (loss < find.loss) note(find, { node, direction, isGroup: false, size, loss });
  }
}

function tryGroups(find: Find, node: Node): void {
  const lengthwise = node.direction === across;
  const reach = lengthwise ? node.reachLength : node.reachWidth;
  const slack = reach - (lengthwise ? node.needLength : node.needWidth);
  const room = lengthwise ? node.reachWidth : node.reachLength;
  for (let z = 0; z < find.sizes.length; z++) {
    const size = find.sizes[z] as PartSize;
    const own = lengthwise ? size.length : size.width;
    const side = lengthwise ? size.width : size.length;
    if (own > reach || side >= room) continue;
    gather(node, lengthwise, room - side);
    const { sum, most, count } = gathered;
    if (count < 2 || own > sum + slack) continue;
    const loss = (most + side) * Math.max(sum, own) - sum * most - own * side;
    if (loss >= find.loss) continue;
    note(find, { node, direction: lengthwise ? along : across, isGroup: true, size, loss });
  }
}

/** What `gather` found: one record for all calls, as there are very many of them. */
const gathered = { sum: 0, most: 0, count: 0 };

/** Sums up the kids of a node that need no more than so much across it. */
function gather({ kids }: Node, lengthwise: boolean, room: number): void {
  gathered.sum = gathered.most = gathered.count = 0;
  for (let i = 0; i < kids.length; i++) {
    const kid = kids[i] as Node;
    const side = lengthwise ? kid.needWidth : kid.needLength;
    if (kid.needLength === 0 || side > room) continue;
    gathered.sum += lengthwise ? kid.needLength : kid.needWidth;
    gathered.count++;
    if (side > gathered.most) gathered.most = side;
  }
}

function note(find: Find, squeeze: Squeeze): void {
  find.loss = squeeze.loss;
  find.best = squeeze;
}

/** Puts the part there, `node` in place of the node found; the tree has to be tidied afterwards. */
export function squeezeIn({ direction, isGroup, size }: Squeeze, node: Node): void {
  const part = makeFree(size.length, size.width, 0, 0);
  part.kind = size.kind;
  part.turned = size.turned;
  const host = isGroup ? groupKids(node, size) : node;
  if (host.direction !== direction) {
    const inner = makeFree(host.length, host.width, 0, 0);
    absorb(inner, host);
    host.direction = direction;
    host.kind = -1;
    host.kids = [inner];
    inner.parent = host;
  }
  host.kids.push(part);
  part.parent = host;
}

/** Puts the kids that leave room for a part into a node of their own. */
function groupKids(node: Node, size: PartSize): Node {
  const { direction } = node;
  const fits = (kid: Node) =>
    direction === across
      ? kid.needWidth + size.width <= node.reachWidth
      : kid.needLength + size.length <= node.reachLength;
  const inside = node.kids.filter((kid) => !isFree(kid) && fits(kid));
  const group = makeFree(0, 0, 0, 0);
  group.direction = direction;
  group.kids = inside;
  for (const kid of inside) kid.parent = group;
  node.kids = [group, ...node.kids.filter((kid) => !inside.includes(kid))];
  group.parent = node;
  return group;
}
