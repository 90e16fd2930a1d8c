import type { CuttingJob } from '#core/cutting';
import { makeRandom } from '#core/numerics';
import type { Random } from '#core/numerics';

/** A job of boards drawn by a rule of the literature, and how few boards it can be cut from where the rule says so. */
export interface BoardJob {
  readonly name: string;
  readonly job: CuttingJob;
  readonly boards: number | null;
}

/**
 * Five families, five jobs of each size and rule: uniform and triplets (Falkenauer), random classes of BPPLIB, small parts in
 * long boards (Schwerin and Waescher), and cutting stock with a demand (Gau and Waescher 1995). All rules from memory;
 * the numbers drawn are our own, so single jobs are not those of the collections.
 */
export function makeBoardJobs(): readonly BoardJob[] {
  return [1, 2, 3, 4, 5].flatMap((draw) => [
    ...[120, 250, 500, 1000].map((parts) => drawEach(`U ${parts} ${draw}`, 150, parts, [20, 100])),
    ...[60, 120, 249, 501].map((parts) => drawTriplets(`T ${parts} ${draw}`, parts)),
    ...[50, 100, 200, 500].map((parts) => drawEach(`random ${parts} ${draw}`, 1000, parts, [100, 800])),
    ...[100, 120].map((parts) => drawEach(`long ${parts} ${draw}`, 1000, parts, [150, 200])),
    ...[0.25, 0.5, 0.75].map((most) => drawDemand(`demand ${most} ${draw}`, 40, most)),
  ]);
}

/** The same name draws the same job. */
function randomOf(name: string): Random {
  return makeRandom([...name].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) >>> 0, 7));
}

function drawEach(name: string, length: number, parts: number, [least, most]: [number, number]): BoardJob {
  const random = randomOf(name);
  return makeJob(name, { length, lengths: Array.from({ length: parts }, () => random.whole(least, most)) });
}

/** Three parts fill a board: a third of the parts is how many boards there must be. */
function drawTriplets(name: string, parts: number): BoardJob {
  const random = randomOf(name);
  const lengths: number[] = [];
  while (lengths.length < parts) {
    const first = random.whole(380, 490);
    const second = random.whole(250, Math.floor((1000 - first) / 2));
    lengths.push(first, second, 1000 - first - second);
  }
  return { ...makeJob(name, { length: 1000, lengths }), boards: parts / 3 };
}

/** Forty lengths of up to so much of a board, ten of each on average. */
function drawDemand(name: string, kinds: number, most: number): BoardJob {
  const random = randomOf(name);
  const drawn = Array.from({ length: kinds }, () => random.whole(10, Math.round(1000 * most)));
  const shares = drawn.map(() => random.whole(1, 1000));
  const sum = shares.reduce((all, share) => all + share, 0);
  const lengths = drawn.flatMap((each, i) => {
    const count = Math.max(1, Math.floor(((shares[i] ?? 0) / sum) * 10 * kinds));
    return Array<number>(count).fill(each);
  });
  return makeJob(name, { length: 1000, lengths });
}

function makeJob(
  name: string,
  { length, lengths }: { readonly length: number; readonly lengths: readonly number[] },
): BoardJob {
  const counts = new Map<number, number>();
  for (const each of lengths) counts.set(each, (counts.get(each) ?? 0) + 1);
  const parts = [...counts].map(([each, count]) => ({ id: `p${each}`, length: each, count }));
  const job: CuttingJob = { cuts: { style: 'length' }, stock: [{ id: 'board', length, cost: 1 }], parts };
  return { name, job, boards: null };
}
