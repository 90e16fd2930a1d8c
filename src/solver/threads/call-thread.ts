import { Worker } from 'node:worker_threads';
import type { Mate, News, Turn } from '#solver/crew';
import type { Order } from './messages.ts';

/** What the thread is called when it is built; it lies beside what this is built into. */
const built = 'joggle-thread.js';

/** Starts a thread on a job. It answers one turn at a time; whoever fails or is sent away keeps nobody waiting. */
export function callThread<N extends News>(job: Exclude<Order, { kind: 'work' }>): Mate<N> {
  const thread = new Worker(new URL(built, import.meta.url));
  thread.postMessage(job);
  return {
    work: (turn) => ask<N>(thread, turn),
    dismiss: () => void thread.terminate(),
  };
}

function ask<N extends News>(thread: Worker, turn: Turn<N>): Promise<N> {
  return new Promise((resolve, reject) => {
    const clear = (): void => {
      thread.off('message', tell);
      thread.off('error', fail);
      thread.off('exit', leave);
    };
    const tell = (news: N): void => (clear(), resolve(news));
    const fail = (error: Error): void => (clear(), reject(error));
    const leave = (): void => (clear(), reject(new Error('the second thread has ended')));
    thread.once('message', tell);
    thread.once('error', fail);
    thread.once('exit', leave);
    thread.postMessage({ kind: 'work', turn } satisfies Order);
  });
}
