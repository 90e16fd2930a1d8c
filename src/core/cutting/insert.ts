import type { Random } from '#core/numerics';
import { across, along } from './direction.ts';
import type { Direction } from './direction.ts';
import { hasLimits, mayPlace } from './limits.ts';
import { addSheet, ownSheet, takePart } from './load.ts';
import type { Load } from './load.ts';
import type { Bin, Kind, Model } from './model.ts';
import { isRefused, measureRoom } from './sheet.ts';
import type { Sheet } from './sheet.ts';
import { placePart } from './tree.ts';
import type { Node, PartSize } from './tree.ts';

/** What the search carries along: the job, its chance, and how room is valued. */
export interface Hunt {
  readonly model: Model;
  readonly random: Random;
  readonly limited: boolean;
  /** Least extents of any part as it may lie. */
  readonly minLength: number;
  readonly minWidth: number;
  /** Cost of the cheapest stock. */
  readonly minCost: number;
  /** Worth of each kind of stock while whole, and area of the largest. */
  readonly wholeWorth: Float64Array;
  readonly maxArea: number;
  /** Sizes of each kind as it may lie. */
  readonly sizes: readonly (readonly PartSize[])[];
  /** For putting left parts in order: the kinds, and a key for each. */
  readonly order: number[];
  readonly keys: Float64Array;
  /** Sheets before this one have no room for the kind, in the filling at hand; for large loads. */
  readonly starts: Int32Array;
  /** Free spots to look at until the next one is overlooked. */
  untilBlink: number;
  blinkEvery: number;
}

export function startHunt(model: Model, random: Random): Hunt {
  const sizes = model.kinds.map(sizesOf);
  let [minLength, minWidth] = [Infinity, Infinity];
  for (const { length, width } of sizes.flat()) {
    minLength = Math.min(minLength, length);
    minWidth = Math.min(minWidth, width);
  }
  const hunt: Hunt = {
    model,
    random,
    limited: hasLimits(model),
    minLength,
    minWidth,
    minCost: Math.min(...model.bins.map((bin) => bin.cost)),
    wholeWorth: new Float64Array(model.bins.length),
    maxArea: Math.max(...model.bins.map((bin) => bin.area)),
    sizes,
    order: [],
    keys: new Float64Array(sizes.length),
    starts: new Int32Array(sizes.length),
    untilBlink: Infinity,
    blinkEvery: 40,
  };
  for (const bin of model.bins) hunt.wholeWorth[bin.index] = worthOf(hunt, bin.length, bin.width);
  return hunt;
}

function sizesOf(kind: Kind): readonly PartSize[] {
  const straight = { kind: kind.index, length: kind.length, width: kind.width, turned: false };
  return kind.turn
    ? [straight, { kind: kind.index, length: kind.width, width: kind.length, turned: true }]
    : [straight];
}

/**
 * Worth of free room: its area to the power 1.25, so that one large rest beats two small ones (after Gardeyn & Wauters,
 * EJOR 2022, who take 1.2); nothing when no part of the job fits.
 */
export function worthOf(hunt: Hunt, length: number, width: number): number {
  if (length < hunt.minLength || width < hunt.minWidth) return 0;
  return areaWorth(length * width);
}

function areaWorth(area: number): number {
  return area * Math.sqrt(Math.sqrt(area));
}

/** The best place found for a part; `at` is the sheet being looked at. */
interface Spot {
  at: number;
  sheet: number;
  node: Node | null;
  size: PartSize | null;
  first: Direction;
  loss: number;
}

/** In a load of more sheets the first place will do: what had no room for a kind has none later on. */
const mostScanned = 400;

/** Puts one part of a kind where the least worth is lost; false when it fits nowhere that is open. */
export function insertPart(hunt: Hunt, load: Load, kind: number): boolean {
  const isLarge = load.sheets.length > mostScanned;
  const from = isLarge ? (hunt.starts[kind] as number) : 0;
  const spot: Spot = { at: from, sheet: -1, node: null, size: null, first: along, loss: Infinity };
  const sizes = hunt.sizes[kind] as readonly PartSize[];
  for (; spot.at < load.sheets.length; spot.at++) {
    const sheet = load.sheets[spot.at] as Sheet;
    if (isRefused(sheet, kind) || !hasRoom(sheet, sizes)) continue;
    const { free } = sheet;
    for (let f = 0; f < free.length; f++) lookAt(hunt, free[f] as Node, sizes, spot);
    if (isLarge && spot.node) break;
  }
  if (isLarge) hunt.starts[kind] = Math.min(spot.at, load.sheets.length);
  if (!spot.node || !spot.size) return false;
  const owned = (load.sheets[spot.sheet] as Sheet).owner === load.mark;
  const sheet = ownSheet(load, spot.sheet);
  fill(hunt, sheet, owned ? spot.node : (spot.node.copy as Node), spot);
  takePart(load, kind);
  return true;
}

function hasRoom(sheet: Sheet, sizes: readonly PartSize[]): boolean {
  for (let z = 0; z < sizes.length; z++) {
    const { length, width } = sizes[z] as PartSize;
    if (length <= sheet.roomLength && width <= sheet.roomWidth && length * width <= sheet.roomArea)
      return true;
  }
  return false;
}

function lookAt(hunt: Hunt, node: Node, sizes: readonly PartSize[], spot: Spot): void {
  for (let z = 0; z < sizes.length; z++) {
    const size = sizes[z] as PartSize;
    if (size.length > node.length || size.width > node.width) continue;
    if (--hunt.untilBlink <= 0) blink(hunt);
    else weigh(hunt, node, size, spot);
  }
}

/** Draws how many spots to look at until one is overlooked: so the search does not always do the same. */
export function blink(hunt: Hunt): void {
  hunt.untilBlink = 1 + Math.floor(-Math.log(1 - hunt.random.next()) * hunt.blinkEvery);
}

/** Notes a spot when it loses less than the best so far. */
function weigh(hunt: Hunt, node: Node, size: PartSize, spot: Spot): void {
  // at best all that is left stays in one piece
  const atBest = node.worth - areaWorth(node.length * node.width - size.length * size.width);
  if (atBest >= spot.loss) return;
  const restX = node.length - size.length;
  const restY = node.width - size.width;
  const stripFirst = node.worth - worthOf(hunt, node.length, restY) - worthOf(hunt, restX, size.width);
  const slabFirst = node.worth - worthOf(hunt, restX, node.width) - worthOf(hunt, size.length, restY);
  if (stripFirst < spot.loss && (!hunt.limited || mayPlace(hunt.model, node, size, along))) {
    note(spot, node, size, along);
    spot.loss = stripFirst;
  }
  if (slabFirst < spot.loss && (!hunt.limited || mayPlace(hunt.model, node, size, across))) {
    note(spot, node, size, across);
    spot.loss = slabFirst;
  }
}

function note(spot: Spot, node: Node, size: PartSize, first: Direction): void {
  spot.sheet = spot.at;
  spot.node = node;
  spot.size = size;
  spot.first = first;
}

function fill(hunt: Hunt, sheet: Sheet, node: Node, spot: Spot): void {
  const at = sheet.free.indexOf(node);
  sheet.free[at] = sheet.free[sheet.free.length - 1] as Node;
  sheet.free.pop();
  sheet.worth -= node.worth;
  const size = spot.size as PartSize;
  const rests = placePart(node, size, spot.first);
  for (const rest of rests) {
    rest.worth = worthOf(hunt, rest.length, rest.width);
    sheet.worth += rest.worth;
    sheet.free.push(rest);
  }
  sheet.parts.push(partNode(node, size.kind));
  sheet.usedArea += size.length * size.width;
  sheet.isMeasured = false;
  measureRoom(sheet);
}

/** The node the part went into: the free node itself or the first kid below it. */
function partNode(node: Node, kind: number): Node {
  let at = node;
  while (at.kind !== kind || at.direction !== 0) at = at.kids[0] as Node;
  return at;
}

/** Opens a sheet that a part of the kind fits, within the budget; false when there is none. */
export function openFor(hunt: Hunt, load: Load, kind: number, budget: number): boolean {
  let best: { bin: Bin; way: number } | null = null;
  let bestRate = Infinity;
  if (load.cost + hunt.minCost > budget) return false;
  const wanted = load.leftArea;
  const chance = hunt.random.next() < anyStock ? 40 : 0.4;
  for (const bin of hunt.model.bins) {
    if ((load.used[bin.index] as number) >= bin.count || load.cost + bin.cost > budget) continue;
    const way = drawWay(hunt, bin, kind);
    if (way < 0) continue;
    const rate = (bin.cost / Math.min(bin.area, wanted)) * (1 + hunt.random.next() * chance);
    if (rate >= bestRate) continue;
    bestRate = rate;
    best = { bin, way };
  }
  if (!best) return false;
  const sheet = addSheet(load, best.bin, best.way);
  for (const node of sheet.free) {
    node.worth = worthOf(hunt, node.length, node.width);
    sheet.worth += node.worth;
  }
  return true;
}

/** How often the stock to open is drawn by lot rather than by its rate. */
const anyStock = 0.15;

/** A way to saw around the keep-outs that leaves room for a kind, by lot; -1 when none does. */
function drawWay(hunt: Hunt, bin: Bin, kind: number): number {
  const first = hunt.random.whole(0, bin.pieces.length - 1);
  for (let turn = 0; turn < bin.pieces.length; turn++) {
    const way = (first + turn) % bin.pieces.length;
    if (fitsPiece(hunt, bin, way, kind)) return way;
  }
  return -1;
}

function fitsPiece(hunt: Hunt, bin: Bin, way: number, kind: number): boolean {
  const sizes = hunt.sizes[kind] as readonly PartSize[];
  const pieces = bin.pieces[way]?.pieces ?? [];
  return pieces.some((piece) =>
    sizes.some((size) => size.length <= piece.length && size.width <= piece.width),
  );
}
