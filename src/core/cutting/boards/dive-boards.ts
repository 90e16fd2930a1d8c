import type { Random } from '#core/numerics';
import type { Bin } from '../model.ts';
import { changeDemand, copyBoardLp, restore, startBoardLp, valueOf } from './board-lp.ts';
import type { BoardLp, Pattern } from './board-lp.ts';
import { shrinkBoardRows } from './board-rows.ts';
import type { BoardRows } from './board-rows.ts';
import { completeBoards } from './complete-boards.ts';
import { priceBoardRows, settle, startCentre } from './generate-rows.ts';

/** One board of a load: its stock and the kinds of the parts on it. */
export interface CutBoard {
  readonly bin: number;
  readonly kinds: readonly number[];
}

export interface BoardDive {
  readonly board: BoardRows;
  readonly random: Random;
  readonly isOver: () => boolean;
  /** Costs above it are of no interest; Infinity: any load will do. */
  readonly target: number;
  /** Nodes at which something was fixed. */
  nodes: number;
  /** How often not the best choice may be made on the way down. */
  readonly discrepancies: number;
  /** Leaves it to chance among the likely. */
  readonly daring: number;
  /** With so few parts left the way down ends, and others lay them; 0: down to the last. */
  readonly restParts: number;
  /** The furthest way down so far. */
  deepest: readonly CutBoard[];
  /** What each kind of part is worth in boards at the best prices; no board holds more than 1. */
  readonly worths: Float64Array;
}

/** A state on the way down: what is fixed, and the program of the rest. */
interface State {
  readonly board: BoardRows;
  readonly lp: BoardLp;
  readonly fixed: readonly CutBoard[];
  readonly cost: number;
}

/**
 * Fixes boards as the relaxed program would have them, whole amounts first, then one likely board at a time, the rest
 * solved anew in between; turns back where the rest cannot stay within the target (diving with limited discrepancy, as
 * Sadykov and others 2019; from memory). Null when no load within the target was found.
 */
export function diveBoards(dive: BoardDive, root: BoardLp): readonly CutBoard[] | null {
  const state = { board: dive.board, lp: copyBoardLp(root), fixed: [], cost: 0 };
  return relax(dive, state) ? descend(dive, state, dive.discrepancies) : null;
}

function descend(dive: BoardDive, state: State, discrepancies: number): readonly CutBoard[] | null {
  if (dive.nodes-- <= 0 || dive.isOver()) return null;
  const now = shrink(fixWhole(state));
  if (countLeft(now) === 0) return now.cost <= dive.target + slack ? now.fixed : null;
  if (now.fixed.length > dive.deepest.length) dive.deepest = now.fixed;
  if (countLeft(now) <= dive.restParts) return null;
  const ended = complete(dive, now);
  if (ended) return ended;
  let left = discrepancies;
  for (const pattern of listLikely(dive, now, breadth)) {
    const next = fix({ ...now, lp: copyBoardLp(now.lp) }, pattern, 1);
    // a board that leaves too little for the rest is no way down at all, and counts for nothing
    if (!relax(dive, next)) continue;
    const found = descend(dive, next, left);
    if (found || --left < 0 || dive.nodes <= 0 || dive.isOver()) return found;
  }
  return null;
}

/** How many likely boards are tried before the way down is given up. */
const breadth = 6;

const slack = 1e-6;

/** Solves the rest; false when it cannot stay within the target. */
function relax({ target, isOver }: BoardDive, { board, lp, cost }: State): boolean {
  if (!restore(lp, 3000)) return false;
  const centre = startCentre(board);
  for (let round = 0; round < mostRounds && !isOver(); round++) {
    settle(board, lp, 100);
    if (target < Infinity && cost + valueOf(lp) <= target + slack) return true;
    const { bound, added } = priceBoardRows(board, lp, centre, 2);
    if (cost + bound > target + slack) return false;
    if (added === 0 || (target === Infinity && round >= 1)) break;
  }
  settle(board, lp, 500);
  return true;
}

const mostRounds = 60;

function countLeft({ lp }: State): number {
  let left = 0;
  for (let row = 0; row < lp.kinds; row++) left += lp.demand[row] as number;
  return Math.round(left);
}

/** Fixes every whole amount. */
function fixWhole(state: State): State {
  const { board } = state;
  let now = state;
  const amounts = now.lp.amounts.slice();
  now.lp.basis.slice().forEach((entry, row) => {
    const times = Math.floor((amounts[row] as number) + 1e-6);
    if (entry >= 0 && times > 0) now = fix(now, board.patterns[entry] as Pattern, times);
  });
  return now;
}

/** Starts the program of the rest afresh once it has so many fewer rows that its steps are much cheaper. */
function shrink(state: State): State {
  const { board, lp } = state;
  let rows = 0;
  for (let row = 0; row < lp.kinds; row++) if ((lp.demand[row] as number) > 0.5) rows++;
  if (rows === 0 || rows > shrinkAt * lp.kinds) return state;
  const rest = shrinkBoardRows(board, lp.demand);
  const fresh = startBoardLp(rows, rest.demand, rest.patterns, lp.penalty);
  settle(rest, fresh, 20 * rows);
  return { ...state, board: rest, lp: fresh };
}

const shrinkAt = 0.8;

/** Cuts a board by a pattern so many times, without the parts of which there are enough. */
function fix(state: State, pattern: Pattern, times: number): State {
  const { board, lp } = state;
  const fixed = [...state.fixed];
  let { cost } = state;
  const counted = board.countRows[pattern.bin] as number;
  for (let t = 0; t < times; t++) {
    if (counted >= 0 && (lp.demand[counted] as number) < 0.5) break;
    const rows = takeParts(lp, pattern);
    if (rows.length === 0) break;
    if (counted >= 0) changeDemand(lp, counted, -1);
    fixed.push({ bin: pattern.bin, kinds: rows.map((row) => board.kinds[row] as number) });
    cost += pattern.cost;
  }
  return { board, lp, fixed, cost };
}

function takeParts(lp: BoardLp, pattern: Pattern): readonly number[] {
  const taken: number[] = [];
  for (let k = 0; k < pattern.rows.length; k++) {
    const row = pattern.rows[k] as number;
    if (row >= lp.kinds) continue;
    const count = Math.min(pattern.counts[k] as number, lp.demand[row] as number);
    if (count <= 0) continue;
    changeDemand(lp, row, -count);
    for (let c = 0; c < count; c++) taken.push(row);
  }
  return taken;
}

/** The patterns most likely to be cut, best first. */
function listLikely({ random, daring }: BoardDive, { board, lp }: State, most: number): readonly Pattern[] {
  const likely: { pattern: Pattern; grade: number }[] = [];
  for (let row = 0; row < lp.rows; row++) {
    const entry = lp.basis[row] as number;
    const amount = lp.amounts[row] as number;
    if (entry < 0 || amount < 1e-5) continue;
    const pattern = board.patterns[entry] as Pattern;
    likely.push({ pattern, grade: amount + daring * random.next() });
  }
  likely.sort((a, b) => b.grade - a.grade);
  return likely.slice(0, most).map(({ pattern }) => pattern);
}

/** The last boards by trying, where all are of one length and the target says how many there may be. */
function complete(dive: BoardDive, { board, lp, fixed, cost }: State): readonly CutBoard[] | null {
  const bin = onlyBin(board);
  if (!bin || dive.target === Infinity) return null;
  const boards = Math.floor((dive.target - cost) / bin.cost + slack);
  if (boards > mostBoards || boards < 1) return null;
  const left = Int32Array.from({ length: lp.kinds }, (_, row) => Math.round(lp.demand[row] as number));
  const { lengths, kinds } = board;
  const worths = Float64Array.from(kinds, (kind) => dive.worths[kind] as number);
  const fills = completeBoards({ length: bin.length, boards, lengths, left, worths, mostTries: 60_000 });
  if (typeof fills === 'string') return null;
  return [
    ...fixed,
    ...fills.map((rows) => ({ bin: bin.index, kinds: rows.map((row) => kinds[row] as number) })),
  ];
}

/** The one stock of a job, where boards of it can be counted out; else null. */
export function onlyBin({ bins }: BoardRows): Bin | null {
  const [bin, ...others] = bins;
  return bin && others.length === 0 && !bin.hasKeepOut && bin.cost > 0 && bin.length > 0 ? bin : null;
}

/** More boards than this are too many to try. */
const mostBoards = 10;
