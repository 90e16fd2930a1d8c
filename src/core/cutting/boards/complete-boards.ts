/** Parts left and how many boards of one length there are for them. */
export interface Rest {
  readonly length: number;
  readonly boards: number;
  /** Lengths by row, and how many of each are left. */
  readonly lengths: Int32Array;
  readonly left: Int32Array;
  /** What each part is worth in boards; no board can hold more than 1. */
  readonly worths: Float64Array;
  /** Parts that may be tried in all. */
  readonly mostTries: number;
}

/** Which row of parts a board gets: rows of the program, one entry a part. */
export type BoardFill = readonly number[];

interface Completion {
  readonly rest: Rest;
  readonly left: Int32Array;
  /** Rows, longest part first. */
  readonly order: readonly number[];
  /** What was found not to fit into the boards left. */
  readonly hopeless: Set<string>;
  readonly fills: number[][];
  tries: number;
}

/** What may still be lost: length wasted, and worth below 1 a board. */
interface Budget {
  readonly waste: number;
  readonly worth: number;
}

/**
 * Fills a given number of boards with all that is left. The longest part opens a board, its companions are tried by
 * little waste first; the waste of all boards is a budget, and so is what they are worth less than their price (bin
 * completion, Korf 2002, with the prices of the relaxed program; from memory). `impossible` is proven; `unknown`: the
 * tries ran out.
 */
export function completeBoards(rest: Rest): readonly BoardFill[] | 'impossible' | 'unknown' {
  const { lengths, left, worths } = rest;
  const rows = Array.from(lengths.keys()).filter((row) => (left[row] as number) > 0);
  const total = (of: ArrayLike<number>) =>
    rows.reduce((sum, row) => sum + (of[row] as number) * (left[row] as number), 0);
  const budget = {
    waste: rest.boards * rest.length - total(lengths),
    worth: rest.boards - total(worths) + tolerance,
  };
  if (budget.waste < 0 || budget.worth < 0) return 'impossible';
  const completion: Completion = {
    rest,
    left: left.slice(),
    order: rows.sort((a, b) => (lengths[b] as number) - (lengths[a] as number)),
    hopeless: new Set(),
    fills: [],
    tries: rest.mostTries,
  };
  if (fillNext(completion, budget)) return completion.fills;
  return completion.tries < 0 ? 'unknown' : 'impossible';
}

/** Worths are sums of rounded numbers. */
const tolerance = 1e-6;

function fillNext(completion: Completion, budget: Budget): boolean {
  const { rest, order, left, fills, hopeless } = completion;
  const first = order.findIndex((row) => (left[row] as number) > 0);
  if (first < 0) return true;
  const key = left.join();
  if (hopeless.has(key)) return false;
  const row = order[first] as number;
  left[row] = (left[row] as number) - 1;
  const opened = {
    from: first,
    space: rest.length - (rest.lengths[row] as number),
    worth: rest.worths[row] as number,
  };
  for (const { parts, waste, worth } of listCompanions(completion, opened, budget)) {
    for (const each of parts) left[each] = (left[each] as number) - 1;
    fills.push([row, ...parts]);
    if (fillNext(completion, { waste: budget.waste - waste, worth: budget.worth - (1 - worth) })) return true;
    fills.pop();
    for (const each of parts) left[each] = (left[each] as number) + 1;
    if (completion.tries < 0) break;
  }
  left[row] = (left[row] as number) + 1;
  if (completion.tries >= 0 && hopeless.size < mostRemembered) hopeless.add(key);
  return false;
}

const mostRemembered = 100_000;

interface Companions {
  readonly parts: readonly number[];
  readonly waste: number;
  readonly worth: number;
}

/** All sets of parts beside the first that stay within the budget, little waste and few parts first. */
function listCompanions(
  completion: Completion,
  opened: { readonly from: number; readonly space: number; readonly worth: number },
  budget: Budget,
): readonly Companions[] {
  const { order, left, rest } = completion;
  const found: Companions[] = [];
  const parts: number[] = [];
  const add = (from: number, space: number, worth: number): void => {
    let fits = false;
    for (let i = from; i < order.length; i++) {
      const row = order[i] as number;
      const length = rest.lengths[row] as number;
      if (length > space || (left[row] as number) === 0) continue;
      fits = true;
      if (--completion.tries < 0) return;
      left[row] = (left[row] as number) - 1;
      parts.push(row);
      add(i, space - length, worth + (rest.worths[row] as number));
      parts.pop();
      left[row] = (left[row] as number) + 1;
    }
    // a set to which a part could be added need not be tried: the one with it does as well
    if (!fits && space <= budget.waste && 1 - worth <= budget.worth) {
      found.push({ parts: parts.slice(), waste: space, worth });
    }
  };
  add(opened.from, opened.space, opened.worth);
  return found.sort((a, b) => a.waste - b.waste || a.parts.length - b.parts.length);
}
