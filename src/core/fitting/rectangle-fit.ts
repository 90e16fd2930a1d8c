/** The four sizes of a rectangle p × q that shall pass an opening a × b, mm. */
export interface Passage {
  readonly p: number;
  readonly q: number;
  readonly a: number;
  readonly b: number;
}

/**
 * The least second side an opening must have for a rectangle to pass it at any turn, its first side being as long as it is,
 * mm; `Infinity` when no second side is enough (joinery F1: W. Carver 1957, after Wetzel, Math. Magazine 73, 2000).
 * Sides in any order; the longer of the opening is the one kept.
 */
export function leastSecondSide({ p: one, q: other, a: first, b: second }: Passage): number {
  const p = Math.max(one, other);
  const q = Math.min(one, other);
  const a = Math.max(first, second);
  if (p <= a) return q;
  if (q > a) return Infinity;
  const square = p * p + q * q;
  // the formula alone would let a square through a smaller one: a rectangle never passes less than its short side
  return Math.max(q, (2 * p * q * a + (p * p - q * q) * Math.sqrt(square - a * a)) / square);
}

/** Whether a rectangle goes through a rectangular opening, turned as it needs to be (joinery F1). */
export function fitsThrough(passage: Passage): boolean {
  return leastSecondSide(passage) <= Math.min(passage.a, passage.b);
}
