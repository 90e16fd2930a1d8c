/**
 * The longest bar of a thickness that goes round a right-angled corner between passages of two widths, kept in their
 * plane, mm (joinery F4); 0 when the bar is too thick for the narrower passage.
 */
export function longestRoundCorner(before: number, after: number, thickness: number): number {
  if (!(thickness < Math.min(before, after))) return 0;
  const lengthAt = (turn: number) =>
    (before * Math.sin(turn) + after * Math.cos(turn) - thickness) / (Math.sin(turn) * Math.cos(turn));
  return leastOver(lengthAt, 1e-6, Math.PI / 2 - 1e-6);
}

/** The least value of a function with one valley, by the golden section. */
function leastOver(value: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  while (high - low > 1e-9) {
    if (value(left) < value(right)) high = right;
    else low = left;
    [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  }
  return value((low + high) / 2);
}
