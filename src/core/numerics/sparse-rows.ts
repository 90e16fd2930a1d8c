/** One row of a design of which most entries are nothing: the columns that are not, each once, and what stands there. */
export interface SparseRow {
  readonly columns: readonly number[];
  readonly values: readonly number[];
}

/** The entries of a row that are not 0. */
export function sparseRow(row: readonly number[]): SparseRow {
  const columns = row.flatMap((value, k) => (value === 0 ? [] : [k]));
  return { columns, values: columns.map((k) => row[k] ?? 0) };
}

/** The row with every column, 0 where nothing stands. */
export function denseRow({ columns, values }: SparseRow, count: number): readonly number[] {
  const row = new Array<number>(count).fill(0);
  columns.forEach((k, i) => (row[k] = values[i] ?? 0));
  return row;
}

/** Length of each column, 0 where it is nothing throughout. */
export function columnLengths(rows: readonly SparseRow[], count: number): Float64Array {
  const squares = new Float64Array(count);
  for (const { columns, values } of rows)
    for (let i = 0; i < columns.length; i += 1) {
      const k = columns[i] ?? 0;
      squares[k] = (squares[k] ?? 0) + (values[i] ?? 0) ** 2;
    }
  return squares.map(Math.sqrt);
}
