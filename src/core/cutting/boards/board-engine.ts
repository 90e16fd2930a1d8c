import { roundBound } from '../bounds.ts';
import { addColumn, makePool } from '../columns.ts';
import { layRest } from '../dive.ts';
import type { Engine } from '../engine.ts';
import { emptyLoad } from '../load.ts';
import type { Load } from '../load.ts';
import type { Bin, Model } from '../model.ts';
import { adoptLoad, isBetterLoad } from '../search.ts';
import { rowOf } from '../pricing.ts';
import { useColumn } from '../use-column.ts';
import { valueOf } from './board-lp.ts';
import { completeBoards } from './complete-boards.ts';
import { goOnBranching, startBranching } from './branch-boards.ts';
import { diveBoards, onlyBin } from './dive-boards.ts';
import type { BoardDive, CutBoard } from './dive-boards.ts';
import { priceBoardRows, settle } from './generate-rows.ts';
import type { BoardEngine } from './start-boards.ts';

/** Some rounds of generation; the bound follows. The engine's generation is done when no pattern can help any more. */
export function generateBoards(engine: Engine, boards: BoardEngine): void {
  const { board, lp, centre } = boards;
  const { generation, model } = engine;
  for (let i = 0; i < 8 && !generation.done && !engine.isOver(); i++) {
    settle(board, lp, 30);
    const { added } = priceBoardRows(board, lp, centre, 7);
    boards.rounds++;
    const reached = Math.max(engine.bound, roundBound(model, centre.bound));
    const isSettled = reached >= roundBound(model, valueOf(lp) - 1e-6) - 1e-9;
    if (added === 0 || isSettled || boards.rounds >= engine.effort.rounds) generation.done = true;
  }
  raiseBound(engine, centre.bound);
  if (generation.done) settle(board, lp, 2000);
}

function raiseBound(engine: Engine, least: number): void {
  const bound = roundBound(engine.model, least);
  if (bound <= engine.bound) return;
  engine.bound = bound;
  engine.tell('bound');
}

/** Whether another way down is worth it: more of them the more parts there are. */
export function wantsBoardDive(engine: Engine, { board }: BoardEngine): boolean {
  const { dives, effort, search, model } = engine;
  if (search.best.leftCount > 0 && model.bins.some((bin) => bin.count < Infinity))
    return dives < Math.min(8, effort.dives);
  return dives < Math.min(effort.dives, 40 * board.kinds.length);
}

/** One way down from the relaxed program, towards the least cost any plan can have or, at first, any. */
export function diveForBoards(engine: Engine, boards: BoardEngine): void {
  const isTrial =
    boards.trials < trialsAfter.length && engine.dives >= (trialsAfter[boards.trials] as number);
  if (isTrial) {
    tryAll(engine, boards);
    return;
  }
  if (asks(engine, boards)) {
    engine.dives++;
    answer(engine, boards);
    return;
  }
  const setup = planDive(engine, boards, engine.dives++);

  const found = diveBoards(setup, boards.lp);
  if (found) adopt(engine, loadOf(engine.model, found));
  else adopt(engine, searchRest(engine, loadOf(engine.model, setup.deepest)));
}

/** Where the way down ended too early the search lays the rest. */
function searchRest(engine: Engine, load: Load): Load | null {
  if (load.leftCount > mostSearched) return null;
  const { generation, random, isOver, bound } = engine;
  return layRest({ generation, random, isOver, restSteps: 3000, goal: bound }, load);
}

const mostSearched = 80;

/** Every third way down is a free one whose last parts the search lays; the others must keep to the target. */
function planDive(
  { model, random, isOver, search, bound }: Engine,
  boards: BoardEngine,
  dive: number,
): BoardDive {
  const isFree = dive % 3 === 0;
  const below = search.best.cost - smallestStep(model);
  const target = isFree ? Infinity : onlyBin(boards.board) && dive % 6 < 5 ? bound : below;
  return {
    ...{ board: boards.board, random, isOver, target, nodes: 200, deepest: [] },
    discrepancies: dive % 6 === 4 ? 1 : 0,
    daring: dive < 2 ? 0 : 0.1 + 0.5 * random.next(),
    worths: byKind(model, boards),
    restParts: isFree && dive > 0 ? 20 + 15 * ((dive / 3) % 3) : 0,
  };
}

function smallestStep({ costGrid }: Model): number {
  return costGrid > 0 ? costGrid : 1e-6;
}

/** The best prices in boards, where there is one stock. */
function worthsOf({ board, centre }: BoardEngine): Float64Array {
  const sum = centre.prices.reduce((total, price, row) => total + price * (board.demand[row] as number), 0);
  const bin = board.bins[0] as Bin;
  const scale = sum > 0 ? centre.bound / sum / Math.max(bin.cost, 1e-9) : 0;
  return centre.prices.map((price) => price * scale);
}

function byKind({ kinds }: Model, boards: BoardEngine): Float64Array {
  const worths = new Float64Array(kinds.length);
  worthsOf(boards).forEach((worth, row) => (worths[boards.board.kinds[row] as number] = worth));
  return worths;
}

/** Dives after which it is tried, each time ten times as long. */
const trialsAfter = [0, 6, 60];

/** Few parts are tried out: a plan at the bound, or a proof that there is none. */
function tryAll(engine: Engine, boards: BoardEngine): void {
  const { board, lp } = boards;
  const tries = 50_000 * 10 ** boards.trials++;
  const bin = onlyBin(board);
  if (!bin || bin.count < Infinity || engine.search.best.leftCount > 0) return;
  const count = Math.round(engine.bound / bin.cost);
  const mostTries = Math.min(tries, engine.effort.pricing);
  const left = Int32Array.from(board.demand.slice(0, lp.kinds));
  const { lengths } = board;
  const fills = completeBoards({
    length: bin.length,
    boards: count,
    lengths,
    left,
    worths: worthsOf(boards),
    mostTries,
  });
  if (fills === 'impossible') raiseBound(engine, engine.bound + bin.cost);
  if (typeof fills === 'string') return;
  adopt(engine, loadOf(engine.model, cutOf(boards, fills)));
}

/** Whether it is time to go on with the question whether the bound can be met: every second time, after two ways down. */
function asks({ dives, bound, search }: Engine, { board, branching, askedFor }: BoardEngine): boolean {
  const bin = onlyBin(board);
  if (!bin || bin.count < Infinity || search.best.leftCount > 0 || dives < 2 || dives % 2 === 1) return false;
  return askedFor !== Math.round(bound / bin.cost) || (branching !== null && branching.open.length > 0);
}

/** Goes on with the question; at first the prices are brought to their best, so that few ways to cut a board remain. */
function answer(engine: Engine, boards: BoardEngine): void {
  const { board, lp, centre } = boards;
  const bin = onlyBin(board) as Bin;
  const count = Math.round(engine.bound / bin.cost);
  if (boards.askedFor !== count) {
    boards.askedFor = count;
    for (let round = 0; round < finishing && !engine.isOver(); round++) {
      settle(board, lp, 200);
      if (priceBoardRows(board, lp, centre, 3).added === 0) break;
    }
    settle(board, lp, 2000);
    const demand = lp.demand.slice(0, lp.kinds);
    const { lengths } = board;
    boards.branching = startBranching({
      ...{ length: bin.length, boards: count, lengths, demand, worths: worthsOf(boards) },
    });
  }
  const { branching } = boards;
  const fills = branching ? goOnBranching(branching, nodesAtOnce, engine.isOver) : 'unknown';
  if (fills === 'impossible') raiseBound(engine, engine.bound + bin.cost);
  if (typeof fills !== 'string') adopt(engine, loadOf(engine.model, cutOf(boards, fills)));
}

/** Rounds of pricing the question is worth. */
const finishing = 300;

const nodesAtOnce = 20;

function cutOf({ board }: BoardEngine, fills: readonly (readonly number[])[]): readonly CutBoard[] {
  const { index } = onlyBin(board) as Bin;
  return fills.map((rows) => ({ bin: index, kinds: rows.map((row) => board.kinds[row] as number) }));
}

function loadOf(model: Model, cut: readonly CutBoard[]): Load {
  const load = emptyLoad(model);
  for (const { bin, kinds } of cut) {
    const pool = makePool();
    addColumn(model, pool, { bin: model.bins[bin] as Bin, way: 0, roots: [rowOf(model, kinds)] });
    const [column] = pool.columns;
    if (column) useColumn(model, load, column);
  }
  return load;
}

function adopt(engine: Engine, load: Load | null): void {
  const { search } = engine;
  if (!load || !isBetterLoad(load, search.best)) return;
  adoptLoad(search, load);
  engine.idle = 0;
  engine.tell('rounding');
}
