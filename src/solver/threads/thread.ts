import { parentPort } from 'node:worker_threads';
import { startCuttingRun } from '#core/cutting';
import { startNestingRun } from '#core/nesting';
import type { News, Turn } from '#solver/crew';
import { loadGlpk } from '#solver/glpk';
import { clockOf } from './clocks.ts';
import type { Order } from './messages.ts';

// the second thread of a run: it is told its job and then works a turn whenever it is asked
let work: Promise<(turn: Turn<never>) => News> | null = null;

parentPort?.on('message', (order: Order) => {
  if (order.kind === 'work') void answer(order.turn);
  else work = begin(order);
});

async function begin(order: Exclude<Order, { kind: 'work' }>): Promise<(turn: Turn<never>) => News> {
  const clock = clockOf(order.limits);
  const { seconds, work, seed } = order.limits;
  const tools = { clock, seconds, work, seed, isMate: true };
  switch (order.kind) {
    case 'cut':
      return startCuttingRun(order.job, { ...tools, solveLp: await loadGlpk() }).work;
    case 'nest':
      return startNestingRun(order.job, tools).work;
  }
}

async function answer(turn: Turn<News>): Promise<void> {
  const run = await work;
  // both ends of a thread work on one job: what one tells is what the other's run takes
  if (run) parentPort?.postMessage(run(turn as Turn<never>));
}
