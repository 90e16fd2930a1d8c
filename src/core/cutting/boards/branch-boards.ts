import { addRow } from './add-row.ts';
import { copyBoardLp, restore, startBoardLp } from './board-lp.ts';
import type { BoardLp, Pattern } from './board-lp.ts';
import { boundOfNode, boundOfRay } from './bound-node.ts';
import { countOf, findBrokenRows } from './cut-rows.ts';
import { enumerateRows } from './enumerate-rows.ts';
import { settlePatterns } from './generate-rows.ts';

/** The question whether all parts go into so many boards of one length. */
export interface Question {
  readonly length: number;
  readonly boards: number;
  readonly lengths: Int32Array;
  readonly demand: Float64Array;
  /** What each part is worth in boards; no board holds more than 1. */
  readonly worths: Float64Array;
}

/** How far the question is answered. */
export interface Branching {
  readonly question: Question;
  /** Programs still to be looked at, the next one last. */
  readonly open: BoardLp[];
  nodes: number;
  /** Whether something had to be left undecided. */
  isLame: boolean;
}

/** Which kinds go on each board; `impossible` is proven; `unknown`: not yet, or not this way. */
export type Verdict = readonly (readonly number[])[] | 'impossible' | 'unknown';

/** Lists every way to cut a board that the plan in question can hold; null where they are too many. */
export function startBranching(question: Question): Branching | null {
  const { length, lengths, demand, worths, boards } = question;
  const worth = worths.reduce((sum, each, row) => sum + each * (demand[row] as number), 0);
  const gap = boards - worth + tolerance;
  const list = { length, lengths, counts: demand, worths, gap };
  const listed = enumerateRows({ ...list, most: 20_000, mostTries: 3_000_000 });
  if (!listed) return null;
  const lp = startBoardLp(lengths.length, demand, listed.map(patternOf), penalty);
  settlePatterns(lp, 10_000);
  return { question, open: [lp], nodes: 0, isLame: false };
}

/** Worths are sums of rounded numbers. */
const tolerance = 1e-6;

/** What a part that lies nowhere costs, in boards. */
const penalty = 10;

function patternOf(
  { rows, counts }: { rows: readonly number[]; counts: readonly number[] },
  p: number,
): Pattern {
  return {
    ...{ bin: 0, rows: Int32Array.from(rows), counts: Float64Array.from(counts), cost: 1 },
    price: 1 + ((p * 7919) % 1009) * 1e-11,
  };
}

/** Looks at some more nodes: relaxed, cut and branched on pairs of kinds that share boards (Ryan and Foster 1981, from memory). */
export function goOnBranching(branching: Branching, nodes: number, isOver: () => boolean): Verdict {
  const { open, question } = branching;
  for (let n = 0; n < nodes && open.length > 0 && !isOver(); n++) {
    branching.nodes++;
    const lp = strengthen(branching, open.pop() as BoardLp);
    if (!lp) continue;
    const fills = readWhole(question, lp);
    if (fills) return fills;
    branch(branching, lp);
  }
  return open.length === 0 && !branching.isLame ? 'impossible' : 'unknown';
}

/** Solves a node, adds rows it breaks and solves it again; null when it holds no plan. */
function strengthen(branching: Branching, node: BoardLp): BoardLp | null {
  const { boards, lengths } = branching.question;
  const rounds = branching.nodes === 1 ? 30 : 3;
  let lp = node;
  for (let round = 0; ; round++) {
    const isSolved = restore(lp, 4000);
    if (isSolved) settlePatterns(lp, 500);
    const bound = isSolved ? boundOfNode(lp, boards, lp.prices) : boundOfRay(lp, boards);
    if (bound > boards + tolerance) return null;
    if (!isSolved) {
      branching.isLame = true;
      return null;
    }
    const broken = round < rounds ? findBrokenRows(lp, lengths.length, 15) : [];
    if (broken.length === 0) return lp;
    for (const row of broken) lp = addRow(lp, row);
  }
}

/** The boards, where the program has whole ones. */
function readWhole({ boards, demand }: Question, lp: BoardLp): readonly (readonly number[])[] | null {
  const left = demand.slice();
  const fills: (readonly number[])[] = [];
  for (let row = 0; row < lp.rows; row++) {
    const entry = lp.basis[row] as number;
    const amount = lp.amounts[row] as number;
    if (entry < 0 || amount < whole) continue;
    if (Math.abs(amount - Math.round(amount)) > whole) return null;
    const pattern = lp.patterns[entry] as Pattern;
    for (let t = 0; t < Math.round(amount); t++) fills.push(takeWanted(pattern, left));
  }
  const used = fills.filter((fill) => fill.length > 0);
  return used.length <= boards && left.every((count) => count <= 0) ? used : null;
}

/** An amount so near a whole number is one. */
const whole = 1e-6;

function takeWanted({ rows, counts }: Pattern, left: Float64Array): readonly number[] {
  const fill: number[] = [];
  rows.forEach((kind, k) => {
    const wanted = Math.min(counts[k] as number, left[kind] ?? 0);
    for (let c = 0; c < wanted; c++) fill.push(kind);
    if (kind < left.length) left[kind] = (left[kind] as number) - Math.max(0, wanted);
  });
  return fill;
}

/** Two kinds lie together on no more boards than the amount rounded down, or on one more at least. */
function branch(branching: Branching, lp: BoardLp): void {
  const pair = choosePair(lp, branching.question.lengths.length);
  if (!pair) {
    branching.isLame = true;
    return;
  }
  const { kinds, amount } = pair;
  const holds = (pattern: Pattern) => Number(kinds.every((kind) => countOf(pattern, [kind]) > 0));
  const least = Math.floor(amount) + 1;
  const apart = addRow(copyBoardLp(lp), { least: 1 - least, weigh: (pattern) => -holds(pattern) });
  const together = addRow(lp, { least, weigh: holds });
  branching.open.push(...(least - amount <= 0.5 ? [apart, together] : [together, apart]));
}

/** The pair of kinds about which the program is least sure. */
function choosePair(lp: BoardLp, kinds: number): { kinds: readonly number[]; amount: number } | null {
  const amounts = new Map<number, number>();
  for (let row = 0; row < lp.rows; row++) {
    const entry = lp.basis[row] as number;
    if (entry < 0) continue;
    const rows = [...(lp.patterns[entry] as Pattern).rows].filter((each) => each < kinds);
    const keys = rows.flatMap((a) => rows.filter((b) => a < b).map((b) => a * kinds + b));
    for (const key of keys) amounts.set(key, (amounts.get(key) ?? 0) + (lp.amounts[row] as number));
  }
  let best: { kinds: readonly number[]; amount: number } | null = null;
  let unsure = whole;
  for (const [key, amount] of amounts) {
    const part = Math.min(amount - Math.floor(amount), Math.ceil(amount) - amount);
    if (part > unsure) [best, unsure] = [{ kinds: [Math.floor(key / kinds), key % kinds], amount }, part];
  }
  return best;
}
