export { makeLocalHand, makeLocalMate } from './local-hand.ts';
export { runCrew } from './run-crew.ts';
export type { Crew, Hand, Mate, News, Turn } from './types.ts';
