import type { CuttingJob, CuttingPart, CuttingStock } from '#core/cutting';
import { makeRandom } from '#core/numerics';
import type { Random } from '#core/numerics';

/** A job and what its best plan costs, known because the parts were cut from the sheets. */
export interface KnownJob {
  readonly name: string;
  readonly job: CuttingJob;
  readonly cost: number;
}

/**
 * Sheets of one or several sizes cut at random from edge to edge until there are enough parts, as Hopper & Turton and
 * Ortmann and others make theirs (from memory): the best plan uses those sheets whole and costs their area. `nice`: no
 * part is more than four times as long as wide.
 */
export function makeKnownJob(seed: number, parts: number, kind: 'one size' | 'nice' | 'path'): KnownJob {
  const random = makeRandom(seed);
  const sizes: readonly (readonly [number, number])[] =
    kind === 'one size'
      ? [[2440, 1220]]
      : [
          [2440, 1220],
          [2500, 1250],
          [3050, 1525],
        ];
  const pieces: Piece[] = [];
  for (let i = 0; i < Math.max(sizes.length, Math.ceil(parts / 12)); i++) {
    const [length, width] = sizes[i % sizes.length] ?? [2440, 1220];
    pieces.push({ length, width });
  }
  const cost = pieces.reduce((sum, { length, width }) => sum + length * width, 0);
  while (pieces.length < parts) cutOne(pieces, random, kind === 'path' ? Infinity : 4);
  const stock: CuttingStock[] = sizes.map(([length, width], i) => ({
    id: `s${i}`,
    ...{ length, width, cost: length * width },
  }));
  const list: CuttingPart[] = pieces.map(({ length, width }, i) => ({ id: `p${i}`, length, width }));
  return { name: `${kind} ${parts} (${seed})`, job: { kerf: 0, stock, parts: list }, cost };
}

interface Piece {
  readonly length: number;
  readonly width: number;
}

/** Cuts one of the larger pieces in two; none becomes longer than `slender` times its width, or the other way. */
function cutOne(pieces: Piece[], random: Random, slender: number): void {
  pieces.sort((a, b) => b.length * b.width - a.length * a.width);
  for (let tries = 0; tries < 200; tries++) {
    const at = random.whole(0, Math.floor(pieces.length / 3));
    const { length, width } = pieces[at] as Piece;
    const isAcross = length > slender * width || (width <= slender * length && random.next() < 0.5);
    const side = isAcross ? length : width;
    if (side < 2 * least) continue;
    const cut = random.whole(least, side - least);
    const halves: readonly Piece[] = isAcross
      ? [
          { length: cut, width },
          { length: length - cut, width },
        ]
      : [
          { length, width: cut },
          { length, width: width - cut },
        ];
    if (halves.some((half) => isSlender(half, slender)) && tries < 150) continue;
    pieces.splice(at, 1, ...halves);
    return;
  }
}

/** No side becomes shorter. */
const least = 60;

function isSlender({ length, width }: Piece, slender: number): boolean {
  return length > slender * width || width > slender * length;
}
