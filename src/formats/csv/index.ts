export { readCsv, writeCsv } from './csv.ts';
export type { Cell } from './csv.ts';
export { readReadings } from './read-readings.ts';
export type { ReadingTable } from './read-readings.ts';
