import type { Shapes } from './shapes.ts';

/** Share of the span below which overlaps are not told apart by depth. */
const shallow = 0.01;
/** Circles further apart than this many times that depth count nothing, unless all are. */
const far = 10;

/** How far the circles in two poses press into each other, weighed by the size of the hulls; asked only of poses that clash. */
export interface Press {
  /** The first number: what presses this hard need not be measured further. */
  readonly cap: Float64Array;
  readonly measure: (a: number, b: number, dx: number, dy: number) => number;
}

export function makePress(shapes: Shapes): Press {
  const { box, poles, poleStart, bulk, span } = shapes;
  const cap = new Float64Array([Infinity]);
  const measure: Press['measure'] = (a, b, dx, dy) => {
    const b4 = 4 * b;
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
    if (sum === square) sum *= nearness(shapes, a, b, { dx, dy, reach });
    return Math.sqrt(sum) * size;
  };
  return { cap, measure };
}

/** From 1 down to a half the further apart the circles in two poses are, beyond a reach: so that the way out can be told. */
function nearness(
  { poles, poleStart }: Shapes,
  a: number,
  b: number,
  { dx, dy, reach }: { readonly dx: number; readonly dy: number; readonly reach: number },
): number {
  let least = Infinity;
  for (let i = 3 * poleStart[a]!; i < 3 * poleStart[a + 1]!; i += 3) {
    for (let j = 3 * poleStart[b]!; j < 3 * poleStart[b + 1]!; j += 3) {
      const ux = poles[i]! - dx - poles[j]!;
      const uy = poles[i + 1]! - dy - poles[j + 1]!;
      const apart = Math.sqrt(ux * ux + uy * uy) - poles[i + 2]! - poles[j + 2]!;
      if (apart < least) least = apart;
    }
  }
  return 0.5 + (0.5 * reach) / Math.max(reach, least);
}
