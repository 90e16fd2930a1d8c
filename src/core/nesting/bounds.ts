import { offsetFigure } from './grow.ts';
import type { Bin, Kind, Model } from './model.ts';
import { lengthInside, turnFigure } from './inscribed.ts';
import { figureArea } from './rings.ts';

/** What rounding of an offset may add to its distance, mm. */
const offsetFault = 0.002;

/** Outlines of more corners in all are not grown for the bound, which would take long. */
const mostGrown = 20_000;

/** Area each part takes with half the gap round it, mm²; none is more than it really takes. */
export function takenAreas({ gap, kinds }: Model): readonly number[] {
  const distance = gap / 2 - offsetFault;
  if (distance <= 0) return kinds.map((kind) => kind.area);
  const corners = kinds.reduce((sum, { figure }) => sum + figure.outer.length / 2, 0);
  return kinds.map(({ area, figure }) =>
    corners > mostGrown
      ? grownAtLeast(area, distance)
      : Math.max(area, figureArea(offsetFigure(figure, distance))),
  );
}

/** What an area takes with a distance round it at least: as much as a circle does (inequality of Brunn and Minkowski). */
function grownAtLeast(area: number, distance: number): number {
  return (Math.sqrt(area) + Math.sqrt(Math.PI) * distance) ** 2;
}

/** No strip can be shorter: by area, by the longest part, and by the parts that must lie one behind the other. */
export function boundLength(model: Model, areas: readonly number[], strip: number): number {
  const { shapes, gap, kinds } = model;
  const total = kinds.reduce((sum, kind, k) => sum + areas[k]! * kind.count, 0);
  let bound = total / (strip + gap) - gap;
  for (const kind of kinds) {
    let least = Infinity;
    for (let p = shapes.firstPose[kind.index]!; p < shapes.firstPose[kind.index + 1]!; p++)
      if (shapes.height[p]! <= strip) least = Math.min(least, shapes.width[p]!);
    if (kind.count > 0 && least < Infinity) bound = Math.max(bound, least);
  }
  return Math.max(bound, lengthInRow(model, strip)) * (1 - 1e-12);
}

/** What parts take that all reach across the middle of the strip: none of these can lie beside another. */
function lengthInRow(model: Model, strip: number): number {
  const taken = model.kinds.map((kind) => leastInside(model, kind, { length: Infinity, width: strip }));
  const total = taken.reduce(
    (sum, length, k) => sum + (length > 0 ? model.kinds[k]!.count * (length + model.gap) : 0),
    0,
  );
  return total - model.gap;
}

/**
 * The least length, over the ways a part fits some stock, of a rectangle inside it that is wider than half the stock; 0 when
 * it has none some way. The gap does not count: a rectangle may lie across a corner from the next.
 */
function leastInside(
  { shapes }: Model,
  kind: Kind,
  stock: { readonly length: number; readonly width: number },
): number {
  let least = Infinity;
  for (let p = shapes.firstPose[kind.index]!; p < shapes.firstPose[kind.index + 1]! && least > 0; p++) {
    if (shapes.width[p]! > stock.length || shapes.height[p]! > stock.width) continue;
    const isHigh = shapes.height[p]! > stock.width / 2;
    const turned = turnFigure(kind.figure, shapes.angle[p]!);
    least = Math.min(least, isHigh ? lengthInside(turned, stock.width / 2) : 0);
  }
  return least < Infinity ? least : 0;
}

/** How many parts cover the middle of any sheet they lie on, whichever way: no two of these share one. */
function partsAlone(model: Model): number {
  const bins = model.bins.filter((bin) => bin.count > 0);
  const length = Math.max(0, ...bins.map((bin) => bin.length));
  const width = Math.max(0, ...bins.map((bin) => bin.width));
  const isAlone = (kind: Kind) => leastInside(model, kind, { length, width }) > (length / 2) * (1 + 1e-9);
  return model.kinds.reduce((sum, kind) => sum + (kind.count > 0 && isAlone(kind) ? kind.count : 0), 0);
}

/** Area a sheet offers to parts with half the gap round them, mm². */
export function offeredArea(model: Model, bin: Bin): number {
  return (bin.length + model.gap) * (bin.width + model.gap);
}

/** How many steps the search for the cheapest sheets may take. */
const mostSteps = 200_000;

/**
 * No plan can cost less: the cheapest choice of sheets that offers the area taken, and as many sheets as are needed
 * where no two large parts share one, by their area or by what they cover of it.
 */
export function boundCost(model: Model, areas: readonly number[]): number {
  const total = model.kinds.reduce((sum, kind, k) => sum + areas[k]! * kind.count, 0);
  const sheets = Math.max(leastSheets(model, areas), partsAlone(model));
  return cheapestChoice(model, total * (1 - 1e-9), sheets);
}

/** Sheets needed at least, by the areas alone packed into the largest sheet (Martello and Toth 1990, bound L2, from memory). */
function leastSheets(model: Model, areas: readonly number[]): number {
  const room = Math.max(
    0,
    ...model.bins.filter((bin) => bin.count > 0).map((bin) => offeredArea(model, bin)),
  );
  const sizes = model.kinds
    .flatMap((kind, k) => new Array<number>(kind.count).fill(areas[k]!))
    .sort((a, b) => b - a);
  if (room <= 0 || sizes.length === 0) return 0;
  const slack = room * 1e-9;
  let most = 1;
  for (const least of [0, ...sizes.filter((size) => size <= room / 2)].slice(0, 400)) {
    const big = sizes.filter((size) => size > room - least + slack).length;
    const middle = sizes.filter((size) => size <= room - least + slack && size > room / 2 + slack);
    const small = sizes.filter((size) => size <= room / 2 + slack && size >= least);
    const free = middle.reduce((sum, size) => sum + room - size, 0);
    const rest = small.reduce((sum, size) => sum + size, 0) - free;
    most = Math.max(most, big + middle.length + Math.max(0, Math.ceil(rest / room - 1e-9)));
  }
  return most;
}

/** The least cost of sheets offering an area and a number at least; by area alone when that takes too many steps. */
function cheapestChoice(model: Model, area: number, sheets: number): number {
  const bins = model.bins.filter((bin) => bin.count > 0);
  const offers = bins.map((bin) => offeredArea(model, bin));
  const rate = Math.min(...bins.map((bin, k) => bin.cost / offers[k]!));
  const cheapest = Math.min(...bins.map((bin) => bin.cost));
  const atLeast = (needArea: number, needSheets: number) =>
    Math.max(0, needArea * rate, needSheets * cheapest);
  let best = Infinity;
  let steps = 0;
  const choose = (k: number, needArea: number, needSheets: number, cost: number): void => {
    if (++steps > mostSteps || cost + atLeast(needArea, needSheets) >= best) return;
    if (needArea <= 0 && needSheets <= 0) {
      best = cost;
      return;
    }
    const bin = bins[k];
    if (!bin) return;
    const enough = Math.max(Math.ceil(needArea / offers[k]!), needSheets, 0);
    for (let count = Math.min(bin.count, enough); count >= 0; count--)
      choose(k + 1, needArea - count * offers[k]!, needSheets - count, cost + count * bin.cost);
  };
  choose(0, area, sheets, 0);
  if (steps > mostSteps || best === Infinity) return atLeast(area, sheets);
  return best;
}
