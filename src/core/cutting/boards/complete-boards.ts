/** Parts left and how many boards of one length there are for them. */
export interface Rest {
  readonly length: number;
  readonly boards: number;
  /** Lengths by row, and how many of each are left. */
  readonly lengths: Int32Array;
  readonly left: Int32Array;
  /** Parts that may be tried in all. */
  readonly mostTries: number;
}

/** Which row of parts a board gets: rows of the program, one entry a part. */
export type BoardFill = readonly number[];

interface Completion {
  readonly length: number;
  readonly lengths: Int32Array;
  readonly left: Int32Array;
  /** Rows, longest part first. */
  readonly order: readonly number[];
  tries: number;
  readonly fills: number[][];
}

/**
 * Fills a given number of boards completely enough for all that is left: the longest part opens a board, its companions
 * are tried by little waste first, and the waste of all boards is a budget (bin completion, Korf 2002; from memory).
 * Null when the tries run out or there is no way.
 */
export function completeBoards(rest: Rest): readonly BoardFill[] | null {
  const rows = Array.from(rest.lengths.keys()).filter((row) => (rest.left[row] as number) > 0);
  const total = rows.reduce((sum, row) => sum + (rest.lengths[row] as number) * (rest.left[row] as number), 0);
  const budget = rest.boards * rest.length - total;
  if (budget < 0) return null;
  const completion: Completion = {
    length: rest.length,
    lengths: rest.lengths,
    left: rest.left.slice(),
    order: rows.sort((a, b) => (rest.lengths[b] as number) - (rest.lengths[a] as number)),
    tries: rest.mostTries,
    fills: [],
  };
  return fillNext(completion, budget) ? completion.fills : null;
}

function fillNext(completion: Completion, budget: number): boolean {
  const { order, left, lengths, length, fills } = completion;
  const first = order.findIndex((row) => (left[row] as number) > 0);
  if (first < 0) return true;
  const row = order[first] as number;
  left[row] = (left[row] as number) - 1;
  const ways = listCompanions(completion, first, length - (lengths[row] as number), budget);
  for (const { parts, waste } of ways) {
    for (const each of parts) left[each] = (left[each] as number) - 1;
    fills.push([row, ...parts]);
    if (fillNext(completion, budget - waste)) return true;
    fills.pop();
    for (const each of parts) left[each] = (left[each] as number) + 1;
    if (completion.tries < 0) break;
  }
  left[row] = (left[row] as number) + 1;
  return false;
}

interface Companions {
  readonly parts: readonly number[];
  readonly waste: number;
}

/** All sets of parts that leave no more waste than allowed, little waste and few parts first. */
function listCompanions(
  completion: Completion,
  from: number,
  room: number,
  budget: number,
): readonly Companions[] {
  const { order, left, lengths } = completion;
  const found: Companions[] = [];
  const parts: number[] = [];
  const add = (at: number, space: number): void => {
    if (--completion.tries < 0 || found.length >= mostWays) return;
    let fits = false;
    for (let i = at; i < order.length; i++) {
      const row = order[i] as number;
      const length = lengths[row] as number;
      if (length > space || (left[row] as number) === 0) continue;
      fits = true;
      left[row] = (left[row] as number) - 1;
      parts.push(row);
      add(i, space - length);
      parts.pop();
      left[row] = (left[row] as number) + 1;
    }
    // a set to which more could be added is dominated by the one with it
    if (!fits && space <= budget) found.push({ parts: parts.slice(), waste: space });
  };
  add(from, room);
  return found.sort((a, b) => a.waste - b.waste || a.parts.length - b.parts.length);
}

const mostWays = 400;
