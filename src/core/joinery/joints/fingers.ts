import { markSize } from '#core/units';
import { makeRecess, type Range } from '../parts.ts';
import type { Machining, PartEdge } from '../types.ts';
import type { WorkingBook } from '../working.ts';

/** Cuts of a joint on the two members, each as if the joint were at its far end (X = L). */
export interface JointCuts {
  /** On the piece that reaches into the other: side of a drawer, rail of a frame. */
  readonly male: readonly Machining[];
  readonly other: readonly Machining[];
}

/** Fingers across a joint: an odd number of equal pitches, the even ones on the male piece. mm. */
export interface Fingers {
  readonly width: number;
  readonly count: number;
  readonly pitch: number;
  /** Gap on each glued face. */
  readonly gap: number;
}

/** What the fingers have to suit. `keep`: a groove that should lie inside one pitch. mm. */
export interface FingerRequest {
  readonly width: number;
  readonly thickness: number;
  readonly gap: number;
  readonly keep?: Range;
}

/** What fingers are longer than the mate is thick, mm, flushed off when the glue is hard (joinery C11). */
export const fingersProud = 0.3;

/** Both ends of a piece with fingers, as they leave the saw or the router: proud, to be flushed (joinery C11). */
export const proudEnds: readonly PartEdge[] = (['start', 'end'] as const).map((edge) => ({
  edge,
  treatment: 'flushed',
  amount: fingersProud,
}));

const mostFingers = 99; // odd; more are a slip of the unit
const usualPitch = 1.25; // of the thickness: between T and 1.5 T (joinery C11)

/**
 * Works out the fingers of a box joint (joinery C11): an odd number nearest to what the thickness asks for, another odd
 * one when only that keeps the bottom groove inside one finger.
 */
export function workOutFingers(book: WorkingBook, suffix: string, request: FingerRequest): Fingers {
  const { width, thickness, gap } = request;
  const name = (text: string) => `${text}_${suffix}`;
  book.put(
    name('finger_n'),
    chooseCount(request),
    'number of fingers, both pieces together',
    'joinery C11',
    'count',
  );
  book.put(name('finger_W'), width, 'width the fingers share', 'joinery C11');
  const pitch = book.work(
    name('finger_f'),
    `${name('finger_W')} / ${name('finger_n')}`,
    `pitch of the fingers; the wood is ${thickness} thick`,
    'joinery C11',
  );
  return { width, count: book.value(name('finger_n')), pitch, gap };
}

function chooseCount({ width, thickness, keep }: FingerRequest): number {
  const ideal = width / (usualPitch * thickness);
  const nearest = Math.min(mostFingers, Math.max(3, 2 * Math.round((ideal - 1) / 2) + 1));
  const others = [0, 2, -2, 4, -4].map((step) => nearest + step).filter((count) => count >= 3);
  const usual = (count: number) => width / count >= thickness * 0.75 && width / count <= thickness * 2;
  const fitting = others.find(
    (count) => usual(count) && (!keep || pitchHolding(keep, width / count) !== null),
  );
  return fitting ?? nearest;
}

/** The pitch, counted from 0, that a groove lies in altogether; null when it runs over a joint line. */
export function pitchHolding(groove: Range, pitch: number): number | null {
  const first = Math.floor(groove[0] / pitch + 1e-9);
  return groove[1] <= (first + 1) * pitch + 1e-9 ? first : null;
}

/** Cuts of a box joint; thickness of the mate is how deep each piece is cut. Tested: the fingers of both fill the corner. */
export function cutFingers(
  fingers: Fingers,
  male: { readonly length: number; readonly thickness: number },
  other: { readonly length: number; readonly thickness: number },
): JointCuts {
  const cut = (remaining: 'even' | 'odd', piece: typeof male, mate: typeof male): readonly Machining[] =>
    spansOf(fingers, remaining === 'even' ? 1 : 0).map((y) =>
      makeRecess(
        'finger',
        'end',
        { x: [piece.length - mate.thickness, piece.length], y, z: [0, piece.thickness] },
        `fingers ${markSize(0.3)} proud as cut, flushed off after gluing`,
      ),
    );
  return { male: cut('even', male, other), other: cut('odd', other, male) };
}

function spansOf({ width, count, pitch, gap }: Fingers, first: 0 | 1): readonly Range[] {
  const spans: Range[] = [];
  for (let i = first; i < count; i += 2) {
    spans.push([i === 0 ? 0 : i * pitch - gap / 2, i === count - 1 ? width : (i + 1) * pitch + gap / 2]);
  }
  return spans;
}
