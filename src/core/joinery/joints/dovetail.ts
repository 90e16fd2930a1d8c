import type { Outline } from '#core/geometry';
import type { JointCuts } from './fingers.ts';
import type { Range } from '../parts.ts';
import type { Machining } from '../types.ts';
import type { WorkingBook } from '../working.ts';

/** A row of dovetails across a joint, measured along its width. mm. */
export interface Dovetails {
  readonly width: number;
  readonly tails: number;
  /** 1 in `slope`. */
  readonly slope: number;
  readonly halfPin: number;
  /** Narrow side of a pin, where the tails end. */
  readonly pin: number;
  readonly tailEnd: number;
  readonly depth: number;
}

/** What dovetails have to suit. `depth`: how far the tails reach into the pin piece; `keep`: a groove to lie within one tail. */
export interface DovetailRequest {
  readonly width: number;
  readonly depth: number;
  readonly slope: number;
  readonly halfPin: number;
  readonly pin: number;
  readonly tails?: number;
  readonly keep?: Range;
}

/** One tail for so much width, mm (joinery C12: one per 25 to 40). */
const widthPerTail = 32;
const mostTails = 60; // more are a slip of the unit

/** Works out a row of dovetails (joinery C12) and keeps both sums that must give the width. */
export function workOutDovetails(book: WorkingBook, suffix: string, request: DovetailRequest): Dovetails {
  const tails = request.tails ?? chooseTails(request);
  const n = (text: string) => `${text}_${suffix}`;
  const put = (name: string, value: number, label: string, unit: 'mm' | 'count' | 'ratio' = 'mm') =>
    book.put(n(name), value, label, 'joinery C12', unit);
  const work = (name: string, formula: string, label: string, unit: 'mm' | 'degrees' = 'mm') =>
    book.work(n(name), formula.replace(/\$/g, `_${suffix}`), label, 'joinery C12', unit);
  put('dove_W', request.width, 'width the dovetails share');
  put('dove_D', request.depth, 'depth of the tails');
  put('dove_n', tails, 'number of tails', 'count');
  put('dove_k', request.slope, 'slope 1 in', 'ratio');
  put('half_pin', request.halfPin, 'half pin, narrow side');
  put('pin', request.pin, 'pin, narrow side');
  work('delta', 'dove_D$ / dove_k$', 'flare on each side of a tail');
  const tailEnd = work(
    'tail_end',
    '(dove_W$ - 2*half_pin$ - (dove_n$ - 1)*pin$) / dove_n$',
    'tail at its end',
  );
  work('tail_base', 'tail_end$ - 2*delta$', 'tail at its base');
  work('pin_base', 'pin$ + 2*delta$', 'pin, wide side');
  work('half_base', 'half_pin$ + delta$', 'half pin, wide side');
  work(
    'sum_end',
    '2*half_pin$ + (dove_n$ - 1)*pin$ + dove_n$*tail_end$',
    'check: sum at the end of the tails',
  );
  work(
    'sum_base',
    '2*half_base$ + (dove_n$ - 1)*pin_base$ + dove_n$*tail_base$',
    'check: sum at the base of the tails',
  );
  work('dove_angle', 'atand(1/dove_k$)', 'saw angle off square', 'degrees');
  const { width, slope, halfPin, pin, depth } = request;
  return { width, tails, slope, halfPin, pin, tailEnd, depth };
}

function chooseTails(request: DovetailRequest): number {
  const nearest = Math.min(mostTails, Math.max(1, Math.round(request.width / widthPerTail)));
  const { keep } = request;
  const around = [nearest, nearest + 1, nearest - 1, nearest + 2].filter((tails) => tails >= 1);
  const holds = (tails: number) => !keep || tailHolding(keep, sized(request, tails)) !== null;
  const wide = (tails: number) => sized(request, tails).tailEnd - (2 * request.depth) / request.slope >= 6;
  return around.find((tails) => wide(tails) && holds(tails)) ?? nearest;
}

function sized(request: DovetailRequest, tails: number): Dovetails {
  const { width, slope, halfPin, pin, depth } = request;
  return {
    width,
    slope,
    halfPin,
    pin,
    depth,
    tails,
    tailEnd: (width - 2 * halfPin - (tails - 1) * pin) / tails,
  };
}

/** The tail, counted from 0, that a groove lies in altogether, at its base too; null when a pin is in the way. */
export function tailHolding(groove: Range, dovetails: Dovetails): number | null {
  const flare = dovetails.depth / dovetails.slope;
  const found = startsOf(dovetails).findIndex(
    (start) => groove[0] >= start + flare - 1e-9 && groove[1] <= start + dovetails.tailEnd - flare + 1e-9,
  );
  return found < 0 ? null : found;
}

/** Where each tail begins at its end, from one edge of the piece. */
function startsOf({ tails, halfPin, tailEnd, pin }: Dovetails): readonly number[] {
  return Array.from({ length: tails }, (_, i) => halfPin + i * (tailEnd + pin));
}

interface TailPiece {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/**
 * Cuts of a through dovetail, or lapped when `lap` is more than 0 (joinery C12, C13): the male piece carries the tails,
 * the other has its outer face at Z = 0.
 */
export function cutDovetails(
  dovetails: Dovetails,
  male: TailPiece,
  other: { readonly thickness: number },
  lap = 0,
): JointCuts {
  const { depth, tailEnd, slope, width } = dovetails;
  const flare = depth / slope;
  const [base, end] = [male.length - depth, male.length];
  const starts = startsOf(dovetails);
  const between = [...starts, width].map((next, i): Outline => {
    const last = (starts[i - 1] ?? -tailEnd) + tailEnd;
    const [low, high] = [i === 0 ? 0 : last - flare, i === starts.length ? width : next + flare];
    return [
      { x: base, y: low },
      { x: end, y: i === 0 ? 0 : last },
      { x: end, y: i === starts.length ? width : next },
      { x: base, y: high },
    ];
  });
  const sockets = starts.map((start): Outline => [
    { x: start, y: lap },
    { x: start + tailEnd, y: lap },
    { x: start + tailEnd - flare, y: other.thickness },
    { x: start + flare, y: other.thickness },
  ]);
  const prism = (
    name: 'pin-socket' | 'tail-socket',
    from: 'face' | 'end',
    outline: Outline,
    reach: number,
  ): Machining => ({ kind: 'prism', name, from, outline, depth: reach });
  return {
    male: between.map((outline) => prism('pin-socket', 'face', outline, male.thickness)),
    other: sockets.map((outline) => prism('tail-socket', 'end', outline, male.thickness)),
  };
}
