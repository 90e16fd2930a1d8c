/**
 * The step x that makes |design x - right|² + damping |scaled x|² least, with each unknown scaled by the length of its
 * column: one step of Levenberg and Marquardt. Null when rounding leaves no positive pivot: more damping is needed.
 * Normal equations by Cholesky (from memory): quick, and exact enough for a step that is taken again.
 */
export function solveDamped(
  design: readonly (readonly number[])[],
  right: readonly number[],
  damping: number,
): readonly number[] | null {
  const { normal, slope } = normalEquations(design, right);
  const largest = Math.sqrt(normal.reduce((most, row, k) => Math.max(most, row[k] ?? 0), 0));
  if (!(largest > 0)) return null;
  // A column of almost nothing is held still rather than thrown far.
  const scales = normal.map((row, k) => Math.max(Math.sqrt(row[k] ?? 0), 1e-6 * largest));
  const scaled = normal.map((row, i) =>
    row.map((value, j) => value / ((scales[i] ?? 1) * (scales[j] ?? 1)) + (i === j ? damping : 0)),
  );
  const factor = choleskyFactor(scaled);
  if (factor === null) return null;
  const step = solveFactored(
    factor,
    slope.map((value, k) => value / (scales[k] ?? 1)),
  );
  return step.map((value, k) => value / (scales[k] ?? 1));
}

function normalEquations(design: readonly (readonly number[])[], right: readonly number[]) {
  const count = design[0]?.length ?? 0;
  const normal = Array.from({ length: count }, () => new Array<number>(count).fill(0));
  const slope = new Array<number>(count).fill(0);
  design.forEach((row, r) => {
    const filled = row.flatMap((value, k) => (value === 0 ? [] : [k])); // most entries are nothing
    for (const i of filled) {
      const value = row[i] ?? 0;
      slope[i] = (slope[i] ?? 0) + value * (right[r] ?? 0);
      const line = normal[i] ?? [];
      for (const j of filled) line[j] = (line[j] ?? 0) + value * (row[j] ?? 0);
    }
  });
  return { normal, slope };
}

/** Lower triangle L with L Lᵀ equal to the matrix; null when it is not positive definite. */
function choleskyFactor(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] | null {
  const factor: number[][] = [];
  for (const [i, source] of matrix.entries()) {
    const row: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      const other = j === i ? row : (factor[j] ?? []);
      let rest = source[j] ?? 0;
      for (let k = 0; k < j; k += 1) rest -= (row[k] ?? 0) * (other[k] ?? 0);
      if (j < i) row.push(rest / (other[j] ?? 1));
      else if (rest > 0) row.push(Math.sqrt(rest));
      else return null;
    }
    factor.push(row);
  }
  return factor;
}

function solveFactored(factor: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const solution = [...right];
  factor.forEach((row, i) => {
    let rest = solution[i] ?? 0;
    for (let k = 0; k < i; k += 1) rest -= (row[k] ?? 0) * (solution[k] ?? 0);
    solution[i] = rest / (row[i] ?? 1);
  });
  for (let i = factor.length - 1; i >= 0; i -= 1) {
    let rest = solution[i] ?? 0;
    for (let k = i + 1; k < factor.length; k += 1) rest -= (factor[k]?.[i] ?? 0) * (solution[k] ?? 0);
    solution[i] = rest / (factor[i]?.[i] ?? 1);
  }
  return solution;
}
