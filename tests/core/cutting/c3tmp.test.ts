import { readFileSync } from 'node:fs';
import { test } from 'vitest';
import { buildModel } from '../../../src/core/cutting/model.ts';
import { mergeKinds } from '../../../src/core/cutting/merge-kinds.ts';
import { listBoardRows } from '../../../src/core/cutting/boards/board-rows.ts';
import { startBoardLp, valueOf } from '../../../src/core/cutting/boards/board-lp.ts';
import { settle, priceBoardRows, startCentre } from '../../../src/core/cutting/boards/generate-rows.ts';
test('lp', () => {
  const all = JSON.parse(readFileSync('../shared/benchmarks/boards.json', 'utf8'));
  for (const { name, job, best } of all.filter((_:unknown,i:number)=>i>27&&i%2===0||i===41||i===4)) {
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
    console.log(name, best.value, valueOf(lp).toFixed(6), bound.toFixed(6), 'rows', lp.rows, 'rounds', rounds, 'pats', board.patterns.length, 'pivots', lp.pivots, ((process.cpuUsage().user - t) / 1000).toFixed(0), 'ms');
  }
}, 500000);
