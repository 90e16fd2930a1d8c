import type { Shapes } from './shapes.ts';
import { makeTouches } from './touches.ts';

/**
 * How badly two poses overlap when the second lies at (dx, dy) from the first; 0 when they are apart. The measure grows
 * with how deep the circles inside them press into each other and with the size of their hulls (Gardeyn, Vanden Berghe,
 * Wauters 2025). Poses that touch count as overlapping, unless only their boxes touch.
 */
export interface Clash {
  /** The first number: an overlap this bad need not be measured further. */
  readonly cap: Float64Array;
  readonly measure: (a: number, b: number, dx: number, dy: number) => number;
}

/** Share of the span below which overlaps are not told apart by depth. */
const shallow = 0.01;
/** Circles further apart than this many times that depth count nothing. */
const far = 10;
/** So many of the largest circles are asked before the edges are. */
const early = 4;

export function makeClash(shapes: Shapes): Clash {
  const { box, poles, poleStart, bulk, span } = shapes;
  const touches = makeTouches(shapes);
  const meetsEarly = makeMeets(shapes);
  const cap = new Float64Array([Infinity]);
  const measure: Clash['measure'] = (a, b, dx, dy) => {
    const a4 = 4 * a;
    const b4 = 4 * b;
    if (box[b4]! + dx >= box[a4 + 2]! || box[b4 + 2]! + dx <= box[a4]!) return 0;
    if (box[b4 + 1]! + dy >= box[a4 + 3]! || box[b4 + 3]! + dy <= box[a4 + 1]!) return 0;
    if (!meetsEarly(a, b, dx, dy) && !touches(a, b, dx, dy)) return 0;
    const lastA = 3 * poleStart[a + 1]!;
    const firstB = 3 * poleStart[b]!;
    const lastB = 3 * poleStart[b + 1]!;
    const least = shallow * (span[a]! > span[b]! ? span[a]! : span[b]!);
    const square = least * least;
    const reach = far * least;
    const rest = least / (far + 2);
    const size = bulk[a]! * bulk[b]!;
    const most = (cap[0]! / size) * (cap[0]! / size);
    let sum = square;
    for (let i = 3 * poleStart[a]!; i < lastA && sum < most; i += 3) {
      const x = poles[i]! - dx;
      const y = poles[i + 1]! - dy;
      const r = poles[i + 2]!;
      const wide = r + reach;
      if (x + wide <= box[b4]! || x - wide >= box[b4 + 2]!) continue;
      if (y + wide <= box[b4 + 1]! || y - wide >= box[b4 + 3]!) continue;
      for (let j = firstB; j < lastB; j += 3) {
        const ux = x - poles[j]!;
        const uy = y - poles[j + 1]!;
        const s = poles[j + 2]!;
        const away = ux * ux + uy * uy;
        const both = r + s;
        if (away >= (both + reach) * (both + reach)) continue;
        const depth = both - Math.sqrt(away);
        sum += (depth >= least ? depth - rest : square / (2 * least - depth) - rest) * (r < s ? r : s);
      }
    }
    return Math.sqrt(sum) * size;
  };
  return { cap, measure };
}

/** Whether two of the largest circles meet: then nothing more need be asked. */
function makeMeets({ poles, poleStart }: Shapes): (a: number, b: number, dx: number, dy: number) => boolean {
  return (a, b, dx, dy) => {
    const firstA = 3 * poleStart[a]!;
    const firstB = 3 * poleStart[b]!;
    const lastA = Math.min(3 * poleStart[a + 1]!, firstA + 3 * early);
    const lastB = Math.min(3 * poleStart[b + 1]!, firstB + 3 * early);
    for (let i = firstA; i < lastA; i += 3) {
      const x = poles[i]! - dx;
      const y = poles[i + 1]! - dy;
      const r = poles[i + 2]!;
      for (let j = firstB; j < lastB; j += 3) {
        const ux = x - poles[j]!;
        const uy = y - poles[j + 1]!;
        const s = r + poles[j + 2]!;
        if (ux * ux + uy * uy < s * s) return true;
      }
    }
    return false;
  };
}
