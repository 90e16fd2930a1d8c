export { coatedArea } from './finish-area.ts';
export type { CoatedArea, CoatedBoard } from './finish-area.ts';
export { coatsFor, finishLitres } from './finish-litres.ts';
export type { Coats } from './finish-litres.ts';
