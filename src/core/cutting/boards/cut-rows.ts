import type { WholeRow } from './add-row.ts';
import type { BoardLp, Pattern } from './board-lp.ts';

/**
 * Rows that the relaxed program breaks and whole boards cannot: of three kinds with an odd demand, half of what every
 * board holds of them, rounded up, comes to half the demand, rounded up (Chvatal and Gomory; Jepsen and others 2008, from memory).
 */
export function findBrokenRows(lp: BoardLp, parts: number, most: number): readonly WholeRow[] {
  const shared = listShared(lp, parts);
  const broken = new Map<string, { readonly triple: readonly number[]; readonly by: number }>();
  const look = (triple: readonly number[]) => {
    const key = triple.join();
    if (broken.has(key)) return;
    const demand = triple.reduce((sum, row) => sum + (lp.demand[row] as number), 0);
    if (demand % 2 === 0) return;
    broken.set(key, { triple, by: (demand + 1) / 2 - worthOf(lp, triple) });
  };
  shared.forEach((mates, i) => {
    for (const j of mates) {
      const near = [...mates, ...(shared[j] as Set<number>)].filter((k) => k !== i && k !== j);
      for (const k of near) look([i, j, k].sort((a, b) => a - b));
    }
  });
  return [...broken.values()]
    .filter(({ by }) => by > leastBroken)
    .sort((a, b) => b.by - a.by || a.triple.join().localeCompare(b.triple.join()))
    .slice(0, most)
    .map(({ triple }) => rowOfTriple(lp, triple));
}

/** A row broken by less moves the bound too little. */
const leastBroken = 0.02;

function rowOfTriple({ demand }: BoardLp, triple: readonly number[]): WholeRow {
  const sum = triple.reduce((all, row) => all + (demand[row] as number), 0);
  return { least: (sum + 1) / 2, weigh: (pattern) => Math.ceil(countOf(pattern, triple) / 2) };
}

/** How many parts of some kinds a pattern holds. */
export function countOf({ rows, counts }: Pattern, kinds: readonly number[]): number {
  let count = 0;
  for (let k = 0; k < rows.length; k++) if (kinds.includes(rows[k] as number)) count += counts[k] as number;
  return count;
}

/** What the program's boards come to in the row of a triple. */
function worthOf(lp: BoardLp, triple: readonly number[]): number {
  let worth = 0;
  for (let row = 0; row < lp.rows; row++) {
    const entry = lp.basis[row] as number;
    const amount = lp.amounts[row] as number;
    if (entry < 0 || amount < 1e-9) continue;
    worth += amount * Math.ceil(countOf(lp.patterns[entry] as Pattern, triple) / 2);
  }
  return worth;
}

/** For each kind those that lie on a board with it, by fractions of boards. */
function listShared(lp: BoardLp, parts: number): readonly Set<number>[] {
  const shared = Array.from({ length: parts }, () => new Set<number>());
  for (let row = 0; row < lp.rows; row++) {
    const entry = lp.basis[row] as number;
    const amount = lp.amounts[row] as number;
    if (entry < 0 || amount < 1e-6 || Math.abs(amount - Math.round(amount)) < 1e-6) continue;
    const rows = [...(lp.patterns[entry] as Pattern).rows].filter((each) => each < parts);
    for (const a of rows) rows.filter((b) => b !== a).forEach((b) => shared[a]?.add(b));
  }
  return shared;
}
