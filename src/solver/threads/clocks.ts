import { readFileSync } from 'node:fs';
import type { Limits } from './messages.ts';

/** The clock of a run in the thread that asks for it, milliseconds. */
export function clockOf({ clock = 'wall' }: Limits): () => number {
  return clock === 'wall' ? () => performance.now() : makeProcessorClock();
}

/** Time this thread has computed, read at most once a millisecond; that of the whole process where no thread is told apart. */
function makeProcessorClock(): () => number {
  let read = -Infinity;
  let value = 0;
  return () => {
    const now = performance.now();
    if (now - read >= 1) [read, value] = [now, readThreadTime()];
    return value;
  };
}

function readThreadTime(): number {
  try {
    // Linux: nanoseconds on a processor, then others
    return Number(readFileSync('/proc/thread-self/schedstat', 'utf8').split(' ')[0]) / 1e6;
  } catch {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  }
}
