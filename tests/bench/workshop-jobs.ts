import { makeRandom } from '#core/numerics';
import type { CuttingJob, CuttingPart } from '#core/cutting';

/** A usual order of a small workshop, invented: 20 to 80 parts in whole mm out of one to six sheets, kerf 3, edges trimmed. */
export function makeWorkshopJob(seed: number): CuttingJob {
  const random = makeRandom(seed);
  const sheet = random.next() < 0.5 ? { length: 2440, width: 1220 } : { length: 2500, width: 1250 };
  const wanted = random.whole(1, 6) * sheet.length * sheet.width * (0.55 + 0.4 * random.next());
  const parts: CuttingPart[] = [];
  let area = 0;
  let count = 0;
  while (count < 80 && (area < wanted || count < 20)) {
    const small = area > wanted;
    const length = random.whole(80, small ? 250 : random.next() < 0.2 ? 2000 : 900);
    const width = random.whole(40, small ? 120 : random.next() < 0.2 ? 700 : 400);
    const copies = Math.min(80 - count, random.whole(1, 4));
    parts.push({ id: `P${parts.length + 1}`, length, width, count: copies, turn: random.next() < 0.4 });
    area += length * width * copies;
    count += copies;
  }
  return {
    kerf: 3,
    trim: { left: 10, right: 5, bottom: 5, top: 5 },
    cuts: { style: 'guillotine', ...(random.next() < 0.3 ? { maxStages: 3 } : {}) },
    stock: [{ id: 'ply', ...sheet, cost: 78, count: null }],
    parts,
    keepLeftover: { minLength: 300, minWidth: 100 },
  };
}

/** An order of many parts, invented: each a size of its own, out of full sheets. */
export function makeLargeJob(count: number, seed: number): CuttingJob {
  const random = makeRandom(seed);
  const parts = Array.from({ length: count }, (_, i) => ({
    id: `P${i + 1}`,
    length: random.whole(80, 900),
    width: random.whole(50, 500),
  }));
  return { kerf: 3, turn: true, stock: [{ id: 'ply', length: 2440, width: 1220, cost: 1 }], parts };
}
