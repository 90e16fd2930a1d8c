import type { Point } from '#core/geometry';
import type { Network, Position } from './network.ts';
import { spanOf } from './predict.ts';

/** A length to begin with where no reading tells one; the adjustment finds the true one or says it cannot. */
const anyLength = 1000;

/** The square-cornered opening that lies nearest to the lengths read: where the adjustment of an opening begins. */
export function startOpening(network: Network): Position {
  const lengths = network.observations.filter((seen) => seen.measure === 'length');
  const unit = lengths.map((seen) => ({ span: spanOf(seen, rectangle(1, 1)), value: seen.value }));
  const across = unit.filter(({ span }) => Math.abs(span.y) < 0.2 && Math.abs(span.x) > 0.2);
  const upright = unit.filter(({ span }) => Math.abs(span.x) < 0.2 && Math.abs(span.y) > 0.2);
  const slanting = median(
    unit.filter(({ span }) => Math.abs(span.x) > 0.2 && Math.abs(span.y) > 0.2).map(({ value }) => value),
  );
  const width = median(across.map(({ span, value }) => value / Math.abs(span.x)));
  const height = median(upright.map(({ span, value }) => value / Math.abs(span.y)));
  return rectangle(
    width ?? otherSide(slanting, height) ?? anyLength,
    height ?? otherSide(slanting, width) ?? anyLength,
  );
}

function rectangle(width: number, height: number): Position {
  const points: Record<string, Point> = {
    BL: { x: 0, y: 0 },
    BR: { x: width, y: 0 },
    TR: { x: width, y: height },
    TL: { x: 0, y: height },
  };
  return { points, tilt: 0 };
}

function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return ((sorted[Math.ceil(middle) - 1] ?? 0) + (sorted[Math.floor(middle)] ?? 0)) / 2;
}

function otherSide(diagonal: number | null, side: number | null): number | null {
  if (diagonal === null) return null;
  if (side === null) return diagonal / Math.SQRT2;
  return diagonal > side ? Math.sqrt(diagonal ** 2 - side ** 2) : null;
}
