import type { Random } from '#core/numerics';
import { addPlacing, laySheet } from './free-sheet.ts';
import type { FreeSheet, Placing, Space } from './free-sheet.ts';
import { startHunt } from './insert.ts';
import type { Hunt } from './insert.ts';
import type { Load } from './load.ts';
import type { Bin, Model } from './model.ts';
import type { Sheet } from './sheet.ts';
import { across } from './direction.ts';
import type { Node, PartSize } from './tree.ts';

/** Sheets laid without a tree of cuts, and how many parts of each kind lie on none. */
export interface FreeLoad {
  readonly sheets: readonly FreeSheet[];
  readonly left: Int32Array;
  readonly leftArea: number;
  readonly cost: number;
}

/** A search among all plans, those that no saw can follow from edge to edge included. */
export interface FreeSearch {
  readonly hunt: Hunt;
  /** A load with all parts on it that costs less than any guillotine plan known; null: none yet. */
  best: FreeLoad | null;
  current: FreeLoad;
  grade: number;
  readonly history: Float64Array;
  budget: number;
  step: number;
}

const historyLength = 200;

/** Starts from a guillotine load with the emptiest sheets taken out until a cheaper one is asked for. */
export function startFreeSearch(model: Model, random: Random, load: Load): FreeSearch {
  const hunt = startHunt(model, random);
  const start = freeLoadOf(model, load);
  const search: FreeSearch = {
    hunt,
    best: null,
    current: start,
    grade: 0,
    history: new Float64Array(historyLength),
    budget: Infinity,
    step: 0,
  };
  aimFreely(search, start);
  return search;
}

/** Looks for a load cheaper than a given one from now on. */
export function aimFreely(search: FreeSearch, below: FreeLoad): void {
  const { model } = search.hunt;
  const step = model.costGrid > 0 ? model.costGrid : Math.max(below.cost, 1) * 1e-9;
  search.budget = below.cost - step * (1 - 1e-6);
  const sheets = [...below.sheets].sort((a, b) => b.usedArea / b.bin.area - a.usedArea / a.bin.area);
  const left = below.left.slice();
  let { cost } = below;
  while (cost > search.budget && sheets.length > 0) {
    const sheet = sheets.pop() as FreeSheet;
    for (const { kind } of sheet.placings) left[kind] = (left[kind] as number) + 1;
    cost -= sheet.bin.cost;
  }
  search.current = recreateFreely(search, sheets, left);
  search.grade = freeGrade(search.current);
  search.history.fill(search.grade);
}

/** The parts of a guillotine load where its cuts leave them. */
export function freeLoadOf(model: Model, load: Load): FreeLoad {
  const sheets = load.sheets.map((sheet) => laySheet(model, sheet.bin, placingsOf(sheet)));
  return { sheets, left: load.left.slice(), leftArea: load.leftArea, cost: load.cost };
}

function placingsOf({ bin, way, roots }: Sheet): readonly Placing[] {
  const placings: Placing[] = [];
  roots.forEach((root, i) => {
    const piece = bin.pieces[way]?.pieces[i];
    if (piece) placeNode(root, piece, placings);
  });
  return placings;
}

function placeNode(node: Node, at: { readonly x: number; readonly y: number }, into: Placing[]): void {
  const { length, width, kind, turned } = node;
  if (kind >= 0) into.push({ x: at.x, y: at.y, length, width, kind, turned });
  let { x, y } = at;
  for (const kid of node.kids) {
    placeNode(kid, { x, y }, into);
    if (node.direction === across) x += kid.length;
    else y += kid.width;
  }
}

/** What lies on no sheet, less for sheets filled unevenly: one nearly full and one nearly empty are worth more. */
function freeGrade({ sheets, leftArea }: FreeLoad): number {
  let grade = leftArea;
  for (const { bin, usedArea } of sheets) grade -= (unevenness * usedArea * usedArea) / bin.area;
  return grade;
}

const unevenness = 0.5;

/** Runs some steps; true as soon as a cheaper load with all parts is found. `isOver` is asked now and then. */
export function runFreeSearch(search: FreeSearch, steps: number, isOver: () => boolean): boolean {
  for (let i = 0; i < steps; i++) {
    if ((i & 15) === 0 && isOver()) return false;
    if (stepFreely(search)) return true;
  }
  return false;
}

function stepFreely(search: FreeSearch): boolean {
  const { history, current } = search;
  const draft = ruinFreely(search, current);
  const at = search.step++ % historyLength;
  if (draft.leftArea === 0) {
    search.best = draft;
    aimFreely(search, draft);
    return true;
  }
  const grade = freeGrade(draft);
  if (grade <= search.grade || grade <= (history[at] as number)) {
    search.current = draft;
    search.grade = grade;
  }
  history[at] = Math.min(history[at] as number, search.grade);
  return false;
}

/** Takes what lies under a rectangle drawn by lot off some sheets, and lays it again with what was left. */
function ruinFreely(search: FreeSearch, load: FreeLoad): FreeLoad {
  const { model, random } = search.hunt;
  const sheets = [...load.sheets];
  const left = load.left.slice();
  const count = Math.min(sheets.length, 1 + random.whole(0, 1));
  for (let i = 0; i < count; i++) {
    const at = random.whole(0, sheets.length - 1);
    const sheet = sheets[at] as FreeSheet;
    const window = drawWindow(sheet, random);
    const kept = sheet.placings.filter((placing) => {
      const stays = !overlaps(placing, window);
      if (!stays) left[placing.kind] = (left[placing.kind] as number) + 1;
      return stays;
    });
    if (kept.length < sheet.placings.length) sheets[at] = laySheet(model, sheet.bin, kept);
  }
  return recreateFreely(
    search,
    sheets.filter(({ placings }) => placings.length > 0),
    left,
  );
}

/** A rectangle around a part: a few of its neighbours, now and then the whole sheet. */
function drawWindow({ bin, placings }: FreeSheet, random: Random): Space {
  const center = placings[random.whole(0, placings.length - 1)];
  if (!center || random.next() < 0.1) return { x: 0, y: 0, length: bin.length, width: bin.width };
  const reach = 0.35 * random.next();
  const dx = Math.ceil(reach * bin.length);
  const dy = Math.ceil(reach * bin.width);
  return { x: center.x - dx, y: center.y - dy, length: center.length + 2 * dx, width: center.width + 2 * dy };
}

function overlaps(a: Space, b: Space): boolean {
  return a.x < b.x + b.length && b.x < a.x + a.length && a.y < b.y + b.width && b.y < a.y + a.width;
}

function recreateFreely(search: FreeSearch, sheets: FreeSheet[], left: Int32Array): FreeLoad {
  const { hunt, budget } = search;
  const { model } = hunt;
  const rule = hunt.random.whole(0, 2);
  for (const kind of drawOrder(hunt, left)) {
    while ((left[kind] as number) > 0) {
      if (!placeOne(hunt, sheets, kind, rule) && !openWith(hunt, sheets, kind, budget)) break;
      left[kind] = (left[kind] as number) - 1;
    }
  }
  const leftArea = model.kinds.reduce((sum, { index, area }) => sum + area * (left[index] as number), 0);
  return { sheets, left, leftArea, cost: costOf(sheets) };
}

function costOf(sheets: readonly FreeSheet[]): number {
  return sheets.reduce((sum, { bin }) => sum + bin.cost, 0);
}

/** Lays a part on a fresh sheet within the budget; false when there is none. */
function openWith(hunt: Hunt, sheets: FreeSheet[], kind: number, budget: number): boolean {
  const bin = drawBin(hunt, sheets, budget - costOf(sheets));
  if (!bin) return false;
  sheets.push(laySheet(hunt.model, bin, []));
  if (placeOne(hunt, sheets, kind, 0)) return true;
  sheets.pop();
  return false;
}

function drawOrder({ model, random, keys }: Hunt, left: Int32Array): readonly number[] {
  const order: number[] = [];
  const noise = 0.5 * random.next();
  const byArea = random.next() < 0.6;
  for (const { index, area, length, width } of model.kinds) {
    if (left[index] === 0) continue;
    order.push(index);
    keys[index] = (byArea ? Math.sqrt(area) : Math.max(length, width)) * (1 + noise * random.next());
  }
  return order.sort((a, b) => (keys[b] as number) - (keys[a] as number));
}

function drawBin({ model, random }: Hunt, sheets: readonly FreeSheet[], money: number): Bin | null {
  const affordable = model.bins.filter(
    (bin) => bin.cost <= money && sheets.filter((sheet) => sheet.bin.index === bin.index).length < bin.count,
  );
  return affordable[random.whole(0, Math.max(0, affordable.length - 1))] ?? null;
}

interface Spot {
  readonly sheet: number;
  readonly placing: Placing;
  readonly loss: number;
}

/** Lays one part in a corner of the space that suits it best; now and then one is overlooked. */
function placeOne(hunt: Hunt, sheets: FreeSheet[], kind: number, rule: number): boolean {
  let best: Spot | null = null;
  sheets.forEach((sheet, at) => {
    for (const space of sheet.spaces) {
      for (const size of hunt.sizes[kind] ?? []) {
        if (size.length > space.length || size.width > space.width || hunt.random.next() < 0.03) continue;
        const loss = lossOf(space, size, rule);
        if (!best || loss < best.loss) best = { sheet: at, placing: putInto(space, size), loss };
      }
    }
  });
  const found = best as Spot | null;
  if (!found) return false;
  sheets[found.sheet] = addPlacing(sheets[found.sheet] as FreeSheet, found.placing);
  return true;
}

function lossOf(space: Space, { length, width }: PartSize, rule: number): number {
  const short = Math.min(space.length - length, space.width - width);
  const area = space.length * space.width - length * width;
  if (rule === 0) return short + 1e-9 * area;
  return rule === 1 ? area : space.x + space.y + length + width;
}

function putInto({ x, y }: Space, { kind, length, width, turned }: PartSize): Placing {
  return { x, y, length, width, kind, turned };
}
