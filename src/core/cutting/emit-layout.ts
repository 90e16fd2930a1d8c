import { across, along } from './direction.ts';
import type { Direction } from './direction.ts';
import type { Frame } from './keep-out.ts';
import type { Bin, Model } from './model.ts';
import type { CutNode, Layout, PlacedPart, Rectangle } from './types.ts';
import { isFree } from './tree.ts';
import type { Node } from './tree.ts';

/** One way to fill a piece of stock: the trees of its pieces. */
export interface Filling {
  readonly bin: Bin;
  readonly way: number;
  readonly roots: readonly Node[];
}

/** A rectangle in whole units from the corner of the usable stock, kerf added. */
interface Box {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

interface Emission {
  readonly model: Model;
  readonly filling: Filling;
  readonly placed: PlacedPart[];
  readonly leftovers: Rectangle[];
}

/** Writes one filling as a layout in mm, its tree of cuts in sawing order. */
export function emitLayout(model: Model, filling: Filling): Layout {
  const emission: Emission = { model, filling, placed: [], leftovers: [] };
  const frame = filling.bin.pieces[filling.way]?.frame ?? { waste: true };
  const box = { x: 0, y: 0, length: filling.bin.length, width: filling.bin.width };
  const cuts = emitFrame(emission, frame, box);
  const flat = model.style === 'length';
  return {
    stock: filling.bin.id,
    times: 1,
    placed: emission.placed,
    cuts: model.style === 'guillotine' ? cuts : null,
    leftovers: flat ? emission.leftovers.map(({ x, length }) => ({ x, length })) : emission.leftovers,
  };
}

function emitFrame(emission: Emission, frame: Frame, box: Box): CutNode {
  if ('waste' in frame) return { ...realRectangle(emission, box), waste: true };
  if ('piece' in frame) return emitNode(emission, emission.filling.roots[frame.piece] as Node, box);
  const [low, high] = divide(box, frame.direction, frame.at);
  const children = [emitFrame(emission, frame.low, low), emitFrame(emission, frame.high, high)] as const;
  // a cut that frees nothing of use is not made
  if (children.every((child) => 'waste' in child)) return { ...realRectangle(emission, box), waste: true };
  return { ...realRectangle(emission, box), ...cutAt(emission, box, frame.direction, frame.at), children };
}

function emitNode(emission: Emission, node: Node, box: Box): CutNode {
  if (node.kind >= 0) return emitPart(emission, node, box);
  if (node.direction === 0) return emitFree(emission, box);
  return emitKids(emission, node.direction, orderKids(emission.model, node), box);
}

/** Cuts the first kid off and goes on with the rest. */
function emitKids(emission: Emission, direction: Direction, kids: readonly Node[], box: Box): CutNode {
  const [kid, ...rest] = kids;
  if (!kid) return emitFree(emission, box);
  if (rest.length === 0) return emitNode(emission, kid, box);
  const at = direction === along ? kid.width : kid.length;
  const [low, high] = divide(box, direction, at);
  const first = emitNode(emission, kid, low);
  return {
    ...realRectangle(emission, box),
    ...cutAt(emission, box, direction, at),
    children: [first, emitKids(emission, direction, rest, high)],
  };
}

/** The widest strip first, equal ones together, free room last; what is too wide for the fence last; a lost sliver after all. */
function orderKids(model: Model, node: Node): readonly Node[] {
  const size = (kid: Node) => (node.direction === across ? kid.length : kid.width);
  const kerf = node.direction === across ? model.kerfX : model.kerfY;
  const rank = (kid: Node) => {
    if (isFree(kid) && size(kid) <= kerf) return 3;
    return size(kid) - kerf > model.limits.maxRip ? 2 : isFree(kid) ? 1 : 0;
  };
  return [...node.kids].sort((a, b) => rank(a) - rank(b) || size(b) - size(a) || a.kind - b.kind);
}

function emitPart(emission: Emission, node: Node, box: Box): CutNode {
  const { model } = emission;
  const kind = model.kinds[node.kind] as { id: string };
  const real = realRectangle(emission, box);
  emission.placed.push(
    model.style === 'length'
      ? { id: kind.id, x: real.x, length: real.length, turned: false }
      : { id: kind.id, ...real, turned: node.turned },
  );
  return { ...real, part: kind.id };
}

function emitFree(emission: Emission, box: Box): CutNode {
  const { model } = emission;
  const real = realRectangle(emission, box);
  const length = box.length - model.kerfX;
  const width = box.width - model.kerfY;
  if (length <= 0 || width <= 0 || length < model.keepLength || width < model.keepWidth) {
    return { ...real, waste: true };
  }
  emission.leftovers.push(real);
  return { ...real, leftover: true };
}

function divide(box: Box, direction: Direction, at: number): readonly [Box, Box] {
  return direction === along
    ? [
        { ...box, width: at },
        { ...box, y: box.y + at, width: box.width - at },
      ]
    : [
        { ...box, length: at },
        { ...box, x: box.x + at, length: box.length - at },
      ];
}

function cutAt(emission: Emission, box: Box, direction: Direction, at: number) {
  const { model, filling } = emission;
  return direction === along
    ? ({ cut: 'along', at: toMm(model, filling.bin.y + box.y + at - model.kerfY) } as const)
    : ({ cut: 'across', at: toMm(model, filling.bin.x + box.x + at - model.kerfX) } as const);
}

function realRectangle(emission: Emission, box: Box): Rectangle {
  const { model, filling } = emission;
  return {
    x: toMm(model, filling.bin.x + box.x),
    y: toMm(model, filling.bin.y + box.y),
    length: toMm(model, Math.max(0, box.length - model.kerfX)),
    width: toMm(model, Math.max(0, box.width - model.kerfY)),
  };
}

/** Whole units as mm, without the tail that a product with a decimal step would leave. */
export function toMm(model: Model, units: number): number {
  return Math.round(units * model.unit * 100) / 100;
}
