/** A cell: numbers are written with a decimal point and stay numbers; null is an empty cell. */
export type Cell = string | number | null;

/**
 * A table as CSV after RFC 4180 (lines end in CRLF, quotes doubled), decimal point, no byte order mark. Text that a spreadsheet
 * would take for a formula gets an apostrophe before it. Throws on a number that is not finite: that is our mistake.
 */
export function writeCsv(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [header, ...rows].map((row) => `${row.map(writeCell).join(',')}\r\n`).join('');
}

function writeCell(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return writeNumber(cell);
  const safe = /^[=+\-@\t\r\n]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replace(/"/g, '""')}"` : safe;
}

/** Never in the notation with an exponent, which some readers take for text. */
function writeNumber(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`no number for a table: ${value}`);
  const short = String(value === 0 ? 0 : value);
  if (!short.includes('e')) return short;
  if (Math.abs(value) >= 1) return String(BigInt(value));
  return value.toFixed(20).replace(/\.?0+$/, '');
}

/**
 * The cells of a CSV text as RFC 4180 describes it; lone LF also ends a line. An unclosed quote runs to the end. Some
 * spreadsheets part cells with another sign: `separator`.
 */
export function readCsv(text: string, separator: ',' | ';' | '\t' = ','): readonly (readonly string[])[] {
  const source = text.startsWith('\ufeff') ? text.slice(1) : text;
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < source.length) {
    const { value, next } =
      source[at] === '"' ? readQuoted(source, at, separator) : readPlain(source, at, separator);
    row.push(value);
    at = next;
    if (source[at] === separator) {
      at += 1;
      if (at === source.length) row.push('');
      else if (/[\r\n]/.test(source[at] ?? '')) row.push('');
      else continue;
    }
    if (source.startsWith('\r\n', at)) at += 2;
    else if (source[at] === '\n' || source[at] === '\r') at += 1;
    rows.push(row);
    row = [];
  }
  return rows;
}

function readQuoted(source: string, from: number, separator: string): { value: string; next: number } {
  let value = '';
  let at = from + 1;
  for (;;) {
    const quote = source.indexOf('"', at);
    if (quote < 0) return { value: value + source.slice(at), next: source.length };
    value += source.slice(at, quote);
    if (source[quote + 1] !== '"') {
      // what follows a closing quote belongs to the field too, as spreadsheets read it
      const rest = readPlain(source, quote + 1, separator);
      return { value: value + rest.value, next: rest.next };
    }
    value += '"';
    at = quote + 2;
  }
}

function readPlain(source: string, from: number, separator: string): { value: string; next: number } {
  let next = from;
  const ends = [separator, '\r', '\n'];
  while (next < source.length && !ends.includes(source[next] ?? '')) next += 1;
  return { value: source.slice(from, next), next };
}
