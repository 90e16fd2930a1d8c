import { seenSizes } from '#core/joinery';
import type { BuiltPiece } from '#core/joinery';
import type { Box } from '#core/geometry';
import type { LengthSystem } from '#core/units';
import { drawChain, reachOfChain } from './chain.ts';
import type { ChainSpan } from './chain.ts';
import { lettering } from './marks.ts';
import { formatSize } from './scales.ts';
import { stationsAlong } from './silhouettes.ts';
import type { Silhouette } from './silhouettes.ts';
import type { Mark } from './types.ts';

export interface SizesRequest {
  readonly built: BuiltPiece;
  /** Of the piece, mm. */
  readonly shapes: readonly Silhouette[];
  readonly extent: Box;
  readonly scale: number;
  /** Room to leave for tags at the left of the work, mm of paper. */
  readonly left: number;
  readonly units?: LengthSystem;
}

type Axis = 'x' | 'y';
/** A stretch along an axis, mm of the piece. */
type Stretch = readonly [from: number, to: number];

const across = 0.47; // share of the piece at which chains are taken, off the middle where members may lie
const same = 0.05; // mm; less is not seen in what is shown
const chainBelow = 12; // mm of paper from the work to the chain under it
const chainBeside = 7;
const aboveLine = 1; // mm of paper between a dimension line and its text

/** Address of a working step in the links of a drawing. */
const linkOf = (name: string | null) => (name === null ? {} : { link: `size:${name}` });

/**
 * Overall sizes, clear sizes and the main chains, across below the work and up at its left. A number that is a step of the
 * working carries its link, `size:` and the name. `depth`: how far it reaches below the work, mm of paper.
 */
export function drawSizes(request: SizesRequest): {
  readonly marks: readonly Mark[];
  readonly depth: number;
} {
  const { extent, scale, left } = request;
  const corner = { x: extent.minX * scale, y: extent.minY * scale };
  const below = stackRows(rowsAlong(request, 'x'), chainBelow);
  const beside = stackRows(rowsAlong(request, 'y'), left + chainBeside);
  return {
    marks: [
      ...below.flatMap((row) =>
        drawChain(corner, { x: 1, y: 0 }, row.spans, { ...row, offset: -row.offset }),
      ),
      ...beside.flatMap((row) => drawChain(corner, { x: 0, y: 1 }, row.spans, { ...row, isOpen: true })),
    ],
    depth: Math.max(
      ...below.map((row) => row.offset + Math.max(0, reachOfChain(row.spans, row.height) - clearBelow)),
    ),
  };
}

/** Text led out below the lowest line may come so near to what is written under the work, mm of paper. */
const clearBelow = 5;

interface Row {
  readonly spans: readonly ChainSpan[];
  readonly height: number;
}

/** Sets rows one beyond the other, each clear of the texts of the one before. */
function stackRows(rows: readonly Row[], first: number): readonly (Row & { readonly offset: number })[] {
  let reach = first;
  return rows.map((row, i) => {
    const offset = i === 0 ? first : reach + aboveLine + row.height + 1.5;
    reach = offset + Math.max(reachOfChain(row.spans, row.height), 1.5);
    return { ...row, offset };
  });
}

/** The rows along an axis from the work outwards: what is seen one after the other, clear sizes, the whole. */
function rowsAlong(request: SizesRequest, axis: Axis): readonly Row[] {
  const { extent, shapes } = request;
  const [low, high] = axis === 'x' ? [extent.minX, extent.maxX] : [extent.minY, extent.maxY];
  const line =
    axis === 'x'
      ? extent.minY + (extent.maxY - extent.minY) * across
      : extent.minX + (extent.maxX - extent.minX) * across;
  const seen = stationsAlong(shapes, axis, line);
  const stations = [
    ...(seen.some((station) => station < low + same) ? [] : [low]),
    ...seen,
    ...(seen.some((station) => station > high - same) ? [] : [high]),
  ];
  const chain = stations.slice(1).map((to, i): Stretch => [stations[i] ?? to, to]);
  const isWhole = chain.length === 1 && spanOf(chain[0]) > high - low - same;
  const clear = clearStretches(request.built, axis, stations);
  const rows = [
    { stretches: isWhole ? [] : chain, height: lettering.small, isMadeUp: false },
    { stretches: clear, height: lettering.small, isMadeUp: true },
    { stretches: [[low, high] as Stretch], height: lettering.usual, isMadeUp: true },
  ];
  return rows
    .filter(({ stretches }) => stretches.length > 0)
    .map(({ stretches, height, isMadeUp }) => ({
      height,
      spans: stretches.map((stretch) => ({
        ...placeStretch(request, axis, stretch),
        ...linkOf(nameOf(request, axis, stretch, isMadeUp)),
      })),
    }));
}

const spanOf = (stretch: Stretch | undefined) => (stretch ? stretch[1] - stretch[0] : 0);

/** Sizes of the working that run over several of the stretches seen, as the clear width between the jambs. */
function clearStretches(built: BuiltPiece, axis: Axis, stations: readonly number[]): readonly Stretch[] {
  const found: Stretch[] = [];
  const isFree = ([low, high]: Stretch) => found.every(([from, to]) => high <= from || low >= to);
  for (const name of seenSizes(built)[axis === 'x' ? 'across' : 'up']) {
    const value = valueOf(built, name);
    stations.forEach((from, i) => {
      const to = stations.slice(i + 2).find((station) => Math.abs(station - from - value) < same);
      const isAll = i === 0 && to === stations.at(-1);
      if (to !== undefined && !isAll && isFree([from, to])) found.push([from, to]);
    });
  }
  return found.sort((a, b) => a[0] - b[0]);
}

function valueOf(built: BuiltPiece, name: string): number {
  return built.working.find((step) => step.name === name)?.value ?? NaN;
}

function placeStretch(request: SizesRequest, axis: Axis, stretch: Stretch): Omit<ChainSpan, 'link'> {
  const { extent, scale, units } = request;
  const start = axis === 'x' ? extent.minX : extent.minY;
  return {
    from: (stretch[0] - start) * scale,
    to: (stretch[1] - start) * scale,
    text: formatSize(spanOf(stretch), units),
  };
}

/**
 * The step of the working that a stretch is: a size of a part that reaches from end to end, else one of the piece; for
 * what several parts make up, one of the piece first.
 */
function nameOf(
  { built, shapes }: SizesRequest,
  axis: Axis,
  stretch: Stretch,
  isMadeUp: boolean,
): string | null {
  const size = spanOf(stretch);
  const isSize = (name: string) => Math.abs(valueOf(built, name) - size) < same;
  const reaching = shapes.filter(({ box }) => {
    const [from, to] = axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY];
    return Math.abs(from - stretch[0]) < same && Math.abs(to - stretch[1]) < same;
  });
  const own = reaching.reverse().flatMap(({ part }) => {
    const { length, width, thickness } = part.working;
    return [length, width, thickness];
  });
  const known = seenSizes(built)[axis === 'x' ? 'across' : 'up'];
  const both = own.filter((name) => known.includes(name));
  const order = isMadeUp ? [...known, ...own] : [...both, ...own, ...known];
  return order.find(isSize) ?? null;
}
