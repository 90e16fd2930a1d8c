import type { Load } from '../load.ts';
import type { Model } from '../model.ts';
import type { Branching } from './branch-boards.ts';
import { startBoardLp } from './board-lp.ts';
import type { BoardLp } from './board-lp.ts';
import { addPattern, listBoardRows } from './board-rows.ts';
import type { BoardRows } from './board-rows.ts';
import { startCentre } from './generate-rows.ts';
import type { Centre } from './generate-rows.ts';

/** Boards and battens have an engine of their own: the program keeps its basis, and pricing is one row. */
export interface BoardEngine {
  readonly board: BoardRows;
  readonly lp: BoardLp;
  readonly centre: Centre;
  rounds: number;
  /** How often it was tried to fill as many boards as the bound says, part by part. */
  trials: number;
  /** The question whether the bound can be met, as far as it is answered; null when not asked, or not to be answered so. */
  branching: Branching | null;
  /** The number of boards last asked about. */
  askedFor: number;
}

/** Starts with the patterns of a load; null where there is nothing to cut from, or too much for this way. */
export function startBoards(model: Model, load: Load): BoardEngine | null {
  const wanted = model.kinds.some((kind) => kind.count > 0);
  if (!wanted || model.bins.every((bin) => bin.hasKeepOut || bin.count === 0)) return null;
  const board = listBoardRows(model);
  if (board.kinds.length > mostRows) return null;
  const penalty = 10 * Math.max(1, ...model.bins.map((bin) => bin.cost));
  const lp = startBoardLp(board.kinds.length, board.demand, board.patterns, penalty);
  const rowOf = new Map(board.kinds.map((kind, row) => [kind, row]));
  for (const { bin, parts } of load.sheets) {
    const counts = new Map<number, number>();
    for (const { kind } of parts) {
      const row = rowOf.get(kind) ?? 0;
      counts.set(row, (counts.get(row) ?? 0) + 1);
    }
    if (!bin.hasKeepOut) addPattern(board, bin, [...counts.keys()], [...counts.values()]);
  }
  return { board, lp, centre: startCentre(board), rounds: 0, trials: 0, branching: null, askedFor: 0 };
}

/** With more rows a step of this program costs more than a solver handed it afresh takes in all. */
const mostRows = 400;
