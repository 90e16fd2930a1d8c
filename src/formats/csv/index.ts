export { readCsv, writeCsv } from './csv.ts';
export type { Cell } from './csv.ts';
