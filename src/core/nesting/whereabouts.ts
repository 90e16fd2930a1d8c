/**
 * Which boxes lie where on each sheet, so that few need be looked at. Each sheet has lines across both ways; for every line
 * the parts are kept, as bits, whose boxes begin no later and those whose boxes end no earlier. What meets a rectangle is
 * what four of these sets share, and perhaps some next to it.
 */
export interface Whereabouts {
  /** Words of 32 bits in a set. */
  readonly words: number;
  /** By sheet, side (begins across, ends across, begins along, ends along), line and word. */
  readonly sets: Int32Array;
  /** Lines per mm of each sheet, both ways. */
  readonly perX: Float64Array;
  readonly perY: Float64Array;
  /** The four lines each part was entered at, and its sheet before them; -1 when on none. */
  readonly entered: Int32Array;
}

export const lines = 64;
const last = lines - 1;

export function makeWhereabouts(parts: number, sheets: number): Whereabouts {
  const words = (parts + 31) >> 5;
  return {
    words,
    sets: new Int32Array(sheets * 4 * lines * words),
    perX: new Float64Array(sheets),
    perY: new Float64Array(sheets),
    entered: Int32Array.from({ length: 5 * parts }, (_, k) => (k % 5 === 0 ? -1 : nowhere[(k % 5) - 1]!)),
  };
}

/** How much room the lines of an empty sheet are spread over; what lies beyond counts as on the last. */
export function spreadLines({ perX, perY }: Whereabouts, sheet: number, length: number, width: number): void {
  perX[sheet] = lines / length;
  perY[sheet] = lines / width;
}

/** The line at a place; always the same or a later one for a greater place. */
export function lineAt(place: number, per: number): number {
  const line = place * per;
  return line <= 0 ? 0 : line < last ? line | 0 : last;
}

/** Enters a box, wherever it was before; on sheet -1 nowhere. `lies` has 4 numbers of each box: left, low, right, high. */
export function enterBox(where: Whereabouts, i: number, sheet: number, lies: Float64Array): void {
  const { entered, perX, perY } = where;
  const at = 5 * i;
  const before = entered[at]!;
  if (before !== sheet && before >= 0) {
    moveSides(where, i, nowhere);
    entered.set(nowhere, at + 1);
  }
  entered[at] = sheet;
  if (sheet < 0) return;
  next[0] = lineAt(lies[4 * i]!, perX[sheet]!);
  next[1] = lineAt(lies[4 * i + 2]!, perX[sheet]!);
  next[2] = lineAt(lies[4 * i + 1]!, perY[sheet]!);
  next[3] = lineAt(lies[4 * i + 3]!, perY[sheet]!);
  moveSides(where, i, next);
  for (let side = 0; side < 4; side++) entered[at + 1 + side] = next[side]!;
}

/** Lines of a part in no set: it begins after the last and ends before the first. */
const nowhere = [lines, -1, lines, -1] as const;
const next = [0, 0, 0, 0];

/** Moves the sides of a part on its sheet from the lines they were entered at. */
function moveSides({ sets, words, entered }: Whereabouts, i: number, lineOf: readonly number[]): void {
  const bit = 1 << (i & 31);
  const at = 5 * i;
  for (let side = 0; side < 4; side++) {
    const base = (4 * entered[at]! + side) * lines * words + (i >> 5);
    // what ends at a line is in its set too, what begins there likewise: the lines between are those from one beyond
    const shift = side & 1;
    const from = entered[at + 1 + side]! + shift;
    const to = lineOf[side]! + shift;
    const isIn = shift === 0 ? to < from : to > from;
    for (let line = Math.min(from, to); line < Math.max(from, to); line++) {
      const word = base + line * words;
      sets[word] = isIn ? sets[word]! | bit : sets[word]! & ~bit;
    }
  }
}
