export { cutTogether } from './cut-together.ts';
export type { Wish } from './cut-together.ts';
export type { Limits } from './messages.ts';
