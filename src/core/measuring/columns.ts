import type { SparseRow } from '#core/numerics';
import { unknownsOf } from './network.ts';
import type { BoardPlace, Network, Observation, Position, Terms, Unknown } from './network.ts';
import { predict } from './predict.ts';

/** Which column of the design each unknown has; a coordinate that is held has none. */
export interface Columns {
  readonly unknowns: readonly Unknown[];
  readonly points: ReadonlyMap<string, { readonly x?: number; readonly y?: number }>;
  readonly bows: ReadonlyMap<string, number>;
  readonly boards: ReadonlyMap<string, Partial<Record<keyof BoardPlace, number>>>;
  readonly tilt?: number;
}

/** The columns of a network. */
export function columnsOf(network: Network): Columns {
  const unknowns = unknownsOf(network);
  const points = new Map<string, { x?: number; y?: number }>();
  const bows = new Map<string, number>();
  const boards = new Map<string, Partial<Record<keyof BoardPlace, number>>>();
  let tilt: number | undefined;
  unknowns.forEach((unknown, k) => {
    if ('tilt' in unknown) tilt = k;
    else if ('bow' in unknown) bows.set(unknown.bow, k);
    else if ('board' in unknown)
      boards.set(unknown.board, { ...boards.get(unknown.board), [unknown.part]: k });
    else points.set(unknown.point, { ...points.get(unknown.point), [unknown.axis]: k });
  });
  return { unknowns, points, bows, boards, ...(tilt !== undefined && { tilt }) };
}

/** How an observation over its sigma changes with each unknown, at a position. */
export function weightedRow(seen: Observation, position: Position, known: Columns): SparseRow {
  const { slope, baseSlope, tiltSlope } = predict(seen, position);
  const entries = new Map<number, number>();
  const add = (column: number | undefined, value: number) => {
    if (column !== undefined && value !== 0) entries.set(column, (entries.get(column) ?? 0) + value);
  };
  const addTerms = (terms: Terms, { x, y }: { readonly x: number; readonly y: number }) => {
    for (const [name, factor] of terms) {
      const own = known.points.get(name);
      add(own?.x, factor * x);
      add(own?.y, factor * y);
    }
  };
  addTerms(seen.terms, slope);
  if (seen.base) addTerms(seen.base, baseSlope);
  for (const [edge, share] of seen.bows ?? []) add(known.bows.get(edge), share);
  if (seen.board === undefined) add(known.tilt, tiltSlope);
  else {
    const board = known.boards.get(seen.board);
    add(board?.x, baseSlope.x);
    add(board?.y, baseSlope.y);
    add(board?.turn, tiltSlope);
  }
  return { columns: [...entries.keys()], values: [...entries.values()].map((value) => value / seen.sigma) };
}
