/** Shields a quotient that should be whole from the last bit of floating point (joinery 0.4). */
const wholeGuard = 1e-9;

/** The largest multiple of `step` not above `value`: for what goes into something (joinery 0.4). */
export function roundDown(value: number, step: number): number {
  return multiple(Math.floor(value / step + wholeGuard), step);
}

/** The smallest multiple of `step` not below `value`: for holes, grooves, openings, covers and blanks (joinery 0.4). */
export function roundUp(value: number, step: number): number {
  return multiple(Math.ceil(value / step - wholeGuard), step);
}

/** The multiple of `step` nearest to `value`, halves away from zero: for showing only. */
export function roundNearest(value: number, step: number): number {
  return multiple(Math.sign(value) * Math.round(Math.abs(value) / step + wholeGuard), step);
}

/** `count * step` without the dust that a step such as 0.1 brings; never minus zero. */
function multiple(count: number, step: number): number {
  const perUnit = Math.round(1 / step);
  const exact = perUnit > 0 && Math.abs(perUnit * step - 1) < wholeGuard;
  return (exact ? count / perUnit : count * step) + 0;
}
