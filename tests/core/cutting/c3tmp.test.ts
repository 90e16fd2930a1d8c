import { readFileSync } from 'node:fs';
import { test } from 'vitest';
import { buildModel } from '../../../src/core/cutting/model.ts';
import { mergeKinds } from '../../../src/core/cutting/merge-kinds.ts';
import { listBoardRows } from '../../../src/core/cutting/boards/board-rows.ts';
import { startBoardLp, valueOf } from '../../../src/core/cutting/boards/board-lp.ts';
import { diveBoards } from '../../../src/core/cutting/boards/dive-boards.ts';
import { makeRandom } from '#core/numerics';
import { settle, priceBoardRows, startCentre } from '../../../src/core/cutting/boards/generate-rows.ts';
test('lp', () => {
  const all = JSON.parse(readFileSync('../shared/benchmarks/boards.json', 'utf8'));
  for (const { name, job, best } of all.filter((r:any)=>/_BPP(40|60|181|766)$/.test(r.name))) {
    const t = process.cpuUsage().user;
    const model = mergeKinds(buildModel(job));
    const board = listBoardRows(model);
    const lp = startBoardLp(board.kinds.length, board.demand, board.patterns, 10 * model.bins[0]!.cost);
    const centre = startCentre(board); let bound = 0, rounds = 0;
    for (; rounds < 2000; rounds++) {
      settle(board, lp, 30);
      const p = priceBoardRows(board, lp, centre, 7);
      bound = Math.max(bound, p.bound);
      if (p.added === 0 || Math.ceil(bound-1e-6)>=valueOf(lp)-1e-9) break;
    }
    const t1 = process.cpuUsage().user;
    const target = Math.ceil(bound - 1e-6) * model.bins[0]!.cost;
    const random = makeRandom(1);
    let n = 0; (globalThis as any).LOG = (t: string) => n++ < 10 && console.log(t);
    let dives = 0, found: any = null;
    const isOver = () => process.cpuUsage().user - t > 6e6;
    for (; !found && !isOver(); dives++) {
      const dive = { board, random, isOver, target, nodes: 2000, discrepancies: Number(process.env.DISC ?? 2), daring: dives === 0 ? 0 : Number(process.env.DARE ?? 0.3) };
      found = diveBoards(dive, lp);
    }
    console.log(name, best.value, bound.toFixed(4), 'rows', lp.rows, 'rounds', rounds, 'pats', board.patterns.length, ((t1 - t) / 1000).toFixed(0), 'ms', 'dives', dives, found ? 'FOUND ' + found.length : 'NOT', ((process.cpuUsage().user - t1) / 1000).toFixed(0), 'ms');
  }
}, 500000);
