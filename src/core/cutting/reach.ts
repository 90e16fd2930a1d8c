import { across } from './direction.ts';
import type { Node } from './tree.ts';

/**
 * Notes on each node of a tree what its parts need at least, in the order they lie, and how far it could reach if all
 * around it needed no more than that: what fits within the reach fits the sheet once the cuts are moved.
 */
export function measureReach(root: Node): void {
  measureNeeds(root);
  root.reachLength = root.length;
  root.reachWidth = root.width;
  spread(root);
}

function measureNeeds(node: Node): void {
  if (node.direction === 0) {
    node.needLength = node.kind < 0 ? 0 : node.length;
    node.needWidth = node.kind < 0 ? 0 : node.width;
    return;
  }
  let sum = 0;
  let most = 0;
  const lengthwise = node.direction === across;
  const { kids } = node;
  for (let i = 0; i < kids.length; i++) {
    const kid = kids[i] as Node;
    measureNeeds(kid);
    const side = lengthwise ? kid.needWidth : kid.needLength;
    sum += lengthwise ? kid.needLength : kid.needWidth;
    if (side > most) most = side;
  }
  node.needLength = lengthwise ? sum : most;
  node.needWidth = lengthwise ? most : sum;
}

function spread(node: Node): void {
  const { direction, kids } = node;
  if (direction === 0) return;
  const spare = direction === across ? node.reachLength - node.needLength : node.reachWidth - node.needWidth;
  for (let i = 0; i < kids.length; i++) {
    const kid = kids[i] as Node;
    kid.reachLength = direction === across ? kid.needLength + spare : node.reachLength;
    kid.reachWidth = direction === across ? node.reachWidth : kid.needWidth + spare;
    spread(kid);
  }
}
