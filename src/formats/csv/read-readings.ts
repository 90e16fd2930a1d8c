import type { Reading } from '#core/measuring';
import { fail, succeed, type Problem, type Result } from '#core/problems';

import { readCsv } from './csv.ts';
import { readReadingRow, type Cells } from './reading-row.ts';

/** Readings from a table, and from where one looked where the table says it. */
export interface ReadingTable {
  readonly readings: readonly Reading[];
  readonly seenFrom: string | null;
}

/** Columns that are known, in lower case without blanks. */
const columns = [
  ...['id', 'kind', 'from', 'to', 'value', 'sigma', 'method', 'repeats', 'toface', 'note', 'seenfrom'],
  ...['at', 'left', 'right', 'point', 'station', 'board', 'reach', 'first', 'second', 'place'],
];
/** The order of the cells where no row names them. */
const plainOrder = ['id', 'kind', 'from', 'to', 'value', 'sigma', 'method', 'note'];

/**
 * Readings from CSV: columns named by the fields of a reading, or `id,kind,from,to,value` without a heading; commas, semicolons
 * or tabs between them. A row with an id that came before at the same place is a repeat. Rows that cannot be read are named and left out;
 * fails when none can.
 */
export function readReadings(text: string): Result<ReadingTable> {
  const rows = readCsv(text, separatorOf(text));
  const { names, start, findings } = readHeading(rows[0] ?? []);
  const readings: Reading[] = [];
  const faults: Problem[] = [...findings];
  let seenFrom: string | null = null;
  rows.forEach((row, at) => {
    if (at < start || row.every((cell) => cell.trim() === '')) return;
    const cells = cellsOf(row, names);
    seenFrom ??= cells.get('seenfrom') ?? null;
    if (cells.size === 1 && cells.has('seenfrom')) return;
    const read = readReadingRow(cells);
    if ('fault' in read) faults.push(badRow(at + 1, cells, read.fault));
    else addReading(readings, read.reading);
  });
  if (readings.length > 0) return succeed({ readings, seenFrom }, faults);
  return fail(...(faults.some(({ severity }) => severity === 'stop') ? faults : [...faults, noRows]));
}

const noRows: Problem = {
  severity: 'stop',
  code: 'table-empty',
  message: 'The table holds no reading.',
  remedy: 'Give one reading a row: id, kind, from, to, value.',
};

/** The sign that the first line has most of. */
function separatorOf(text: string): ',' | ';' | '\t' {
  const [line = ''] = text.split(/\r\n|\r|\n/, 1);
  const count = (sign: string): number => line.split(sign).length;
  if (count('\t') > Math.max(count(','), count(';'))) return '\t';
  return count(';') > count(',') ? ';' : ',';
}

function readHeading(row: readonly string[]): {
  readonly names: readonly string[];
  readonly start: number;
  readonly findings: readonly Problem[];
} {
  const names = row.map((cell) =>
    cell
      .trim()
      .toLowerCase()
      .replace(/[\s_-]/g, ''),
  );
  if (!names.includes('id') || !names.includes('value')) return { names: plainOrder, start: 0, findings: [] };
  const unknown = row.filter((_, at) => names[at] !== '' && !columns.includes(names[at] ?? ''));
  const findings = unknown.map((name): Problem => ({
    severity: 'note',
    code: 'column-unknown',
    about: name,
    message: `The column "${name}" is none of a reading and was left out.`,
    remedy: `Known are ${columns.join(', ')}.`,
  }));
  return { names, start: 1, findings };
}

function cellsOf(row: readonly string[], names: readonly string[]): Cells {
  // an apostrophe before a sign keeps spreadsheets from reckoning with it
  const clean = (cell: string): string => cell.trim().replace(/^'(?=[=+\-@])/, '');
  return new Map(
    row.flatMap((cell, at) => {
      const name = names[at];
      return name !== undefined && name !== '' && clean(cell) !== '' ? [[name, clean(cell)] as const] : [];
    }),
  );
}

function badRow(number: number, cells: Cells, fault: string): Problem {
  const id = cells.get('id');
  return {
    severity: 'stop',
    code: 'row-unreadable',
    about: `row ${number}`,
    message: `Row ${number}${id === undefined ? '' : `, reading ${id},`} ${fault}; it was left out.`,
    remedy: 'Mend the row and read the table again.',
  };
}

/** A second row with the same id and place is a second look. */
function addReading(readings: Reading[], reading: Reading): void {
  const at = readings.findIndex(({ id }) => id === reading.id);
  const first = readings[at];
  if (first && placeOf(first) === placeOf(reading))
    readings[at] = {
      ...first,
      repeats: [...(first.repeats ?? []), reading.value, ...(reading.repeats ?? [])],
    };
  else readings.push(reading);
}

const looks = ['value', 'repeats', 'sigma', 'method', 'note', 'toFace'];

function placeOf(reading: Reading): string {
  return JSON.stringify(
    Object.entries(reading)
      .filter(([key]) => !looks.includes(key))
      .sort(),
  );
}
