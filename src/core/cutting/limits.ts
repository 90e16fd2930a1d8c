import { along } from './direction.ts';
import type { Direction } from './direction.ts';
import type { Model } from './model.ts';
import type { Node, PartSize } from './tree.ts';
import { isFree, other, stageOf } from './tree.ts';

/** Extents of a part as it lies. */
type Extents = Pick<PartSize, 'length' | 'width'>;

/** True when the job sets a limit that every cut must be looked at for. */
export function hasLimits(model: Model): boolean {
  const { maxStages, maxRip, maxCut, firstCut } = model.limits;
  return maxStages < Infinity || maxRip < Infinity || maxCut < Infinity || firstCut !== null;
}

/** Whether a part may be cut out of a free node, first in the given direction, under the limits of the job. */
export function mayPlace(model: Model, leaf: Node, part: Extents, first: Direction): boolean {
  const second = other(first);
  const cutsFirst = extent(part, first) < extent(leaf, first);
  const cutsSecond = extent(part, second) < extent(leaf, second);
  if (!keepsStages(model, leaf, first, { cutsFirst, cutsSecond })) return false;
  if (cutsFirst && lineLength(model, leaf, first) > model.limits.maxCut) return false;
  const strip =
    first === along ? { length: leaf.length, width: part.width } : { length: part.length, width: leaf.width };
  if (cutsSecond && lineLength(model, strip, second) > model.limits.maxCut) return false;
  return keepsRips(model, leaf, part, first);
}

interface Cuts {
  readonly cutsFirst: boolean;
  readonly cutsSecond: boolean;
}

function keepsStages(model: Model, leaf: Node, first: Direction, cuts: Cuts): boolean {
  const { maxStages, exact, firstCut } = model.limits;
  if (leaf.stage > maxStages) return false;
  const second = other(first);
  if (leaf.stage === 0 && firstCut !== null && (cuts.cutsFirst || cuts.cutsSecond)) {
    if ((cuts.cutsFirst ? first : second) !== firstCut) return false;
  }
  const stageFirst = cuts.cutsFirst && first !== leaf.outer ? leaf.stage + 1 : leaf.stage;
  const outer = cuts.cutsFirst ? first : leaf.outer;
  const stageLast = cuts.cutsSecond && second !== outer ? stageFirst + 1 : stageFirst;
  return stageLast <= maxStages + (exact ? 0 : 1);
}

/** The extent that cuts of a direction divide. */
function extent(size: { readonly length: number; readonly width: number }, direction: Direction): number {
  return direction === along ? size.width : size.length;
}

function lineLength(
  model: Model,
  size: { readonly length: number; readonly width: number },
  direction: Direction,
): number {
  return direction === along ? size.length - model.kerfX : size.width - model.kerfY;
}

/** Wider than the saw's rip fence reaches: of all children of a node only one may be, and it is left over last. */
function isWide(model: Model, size: number, direction: Direction): boolean {
  return size - (direction === along ? model.kerfY : model.kerfX) > model.limits.maxRip;
}

function keepsRips(model: Model, leaf: Node, part: Extents, first: Direction): boolean {
  if (model.limits.maxRip === Infinity) return true;
  const second = other(first);
  return [first, second].every((direction) => {
    const take = extent(part, direction);
    const rest = extent(leaf, direction) - take;
    if (rest === 0) return true;
    const beside = direction === first && leaf.parent?.direction === direction ? leaf.parent.kids : [];
    let wide = Number(isWide(model, take, direction)) + Number(isWide(model, rest, direction));
    for (const kid of beside) if (kid !== leaf && isWide(model, extent(kid, direction), direction)) wide++;
    return wide <= 1;
  });
}

/** Whether a whole tree keeps the limits of the job. */
export function keepsLimits(model: Model, root: Node): boolean {
  const { firstCut } = model.limits;
  if (root.direction !== 0 && root.stage === 0 && firstCut !== null) {
    if (root.direction !== firstCut || root.kids.length < 2) return false;
  }
  return nodeKeepsLimits(model, root);
}

function nodeKeepsLimits(model: Model, node: Node): boolean {
  const { direction } = node;
  if (direction === 0) return true;
  const { maxStages, exact, maxCut } = model.limits;
  const stage = stageOf(node);
  if (stage > maxStages && !(stage === maxStages + 1 && !exact && isTrim(node))) return false;
  if (node.kids.length > 1 && lineLength(model, node, direction) > maxCut) return false;
  const wide = node.kids.filter((kid) => isWide(model, extent(kid, direction), direction)).length;
  return wide <= 1 && node.kids.every((kid) => nodeKeepsLimits(model, kid));
}

/** One part cut free of waste and nothing else. */
function isTrim(node: Node): boolean {
  return (
    node.kids.length === 2 && node.kids.filter(isFree).length === 1 && node.kids.some((kid) => kid.kind >= 0)
  );
}
