import type { Io } from '../io.ts';

/** Watches for Ctrl-C while a search runs: it is to end with the best plan so far; a second one ends the program. */
export function stopOnSignal(io: Io): { readonly isStopped: () => boolean; readonly forget: () => void } {
  let stopped = false;
  const stop = (): void => {
    stopped = true;
    io.say('Stopped before the time was up: this is the best plan so far.\n');
  };
  process.once('SIGINT', stop);
  return { isStopped: () => stopped, forget: () => void process.off('SIGINT', stop) };
}
