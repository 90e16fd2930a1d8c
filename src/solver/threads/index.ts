export { clockOf } from './clocks.ts';
export { cutTogether } from './cut-together.ts';
export type { Limits } from './messages.ts';
export { nestTogether } from './nest-together.ts';
export type { Wish } from './run-together.ts';
