import type { Point } from '#core/geometry';
import { drawDimension, leaderReach, usualStroke } from './dimension.ts';
import { lettering } from './marks.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

/** One size of a chain along a straight line, mm of paper from the start of the line. */
export interface ChainSpan {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly link?: string;
}

export interface ChainStyle {
  readonly offset: number;
  readonly height?: number;
}

const between = 1.4; // mm of paper between two texts led out
const inset = 1; // mm of paper between a text led out and the ends of the chain

/** How far a chain reaches beyond its own line, mm of paper: further when texts are led out. */
export function reachOfChain(spans: readonly ChainSpan[], height: number = lettering.small): number {
  return spans.some((span) => isTight(span, height)) ? leaderReach + height + 0.5 : 1.5;
}

function isTight({ from, to, text }: ChainSpan, height: number): boolean {
  return textWidth(text, height) > to - from - 1;
}

/**
 * A row of dimensions along a line from `origin` in the direction `u`. Texts too wide for their size are led out beyond the
 * line and spread; where even there is no room for all, the smallest sizes go without.
 */
export function drawChain(
  origin: Point,
  u: Point,
  spans: readonly ChainSpan[],
  { offset, height = lettering.small }: ChainStyle,
): readonly Mark[] {
  const asides = leadOut(spans, height);
  const at = (along: number): Point => ({ x: origin.x + u.x * along, y: origin.y + u.y * along });
  return spans.flatMap((span, i) => {
    const aside = asides.get(span);
    const text = isTight(span, height) && aside === undefined ? '' : span.text;
    return drawDimension(at(span.from), at(span.to), text, {
      offset,
      height,
      ...(span.link !== undefined && { link: span.link }),
      ...(aside !== undefined && { aside }),
      strokes: [strokeAt(spans, i), strokeAt(spans, i + 1)],
    });
  });
}

/** Strokes so short that those of neighbouring stations do not run into each other. */
function strokeAt(spans: readonly ChainSpan[], station: number): number {
  const sides = [spans[station - 1], spans[station]].flatMap((span) => (span ? [span.to - span.from] : []));
  return Math.min(usualStroke, Math.max(0.35, 0.45 * Math.min(...sides)));
}

/** For each span too small for its text, how far along from its middle the text stands. */
function leadOut(spans: readonly ChainSpan[], height: number): ReadonlyMap<ChainSpan, number> {
  const [low, high] = [(spans[0]?.from ?? 0) + inset, (spans.at(-1)?.to ?? 0) - inset];
  const wide = (span: ChainSpan) => textWidth(span.text, height);
  let tight = spans.filter((span) => isTight(span, height));
  const needed = () => tight.reduce((sum, span) => sum + wide(span) + between, -between);
  while (tight.length > 1 && needed() > high - low) {
    const least = Math.min(...tight.map((span) => span.to - span.from));
    tight = tight.filter((span) => span.to - span.from > least + 1e-6);
  }
  const places = spreadAlong(
    tight.map((span) => ({ at: (span.from + span.to) / 2, width: wide(span) + between })),
    low - between / 2,
    high + between / 2,
  );
  return new Map(tight.map((span, i) => [span, (places[i] ?? 0) - (span.from + span.to) / 2]));
}

/**
 * Middles of things side by side in order, none overlapping, as near to where they were wanted as that allows, and between
 * `low` and `high` when all fit there.
 */
export function spreadAlong(
  things: readonly { readonly at: number; readonly width: number }[],
  low: number,
  high: number,
): readonly number[] {
  let sum = 0;
  const starts = things.map(({ width }) => (sum += width) - width / 2);
  const groups: { sum: number; count: number }[] = [];
  things.forEach(({ at }, i) => {
    groups.push({ sum: at - (starts[i] ?? 0), count: 1 });
    for (let last = groups.at(-1), before = groups.at(-2); last && before; before = groups.at(-2)) {
      if (before.sum / before.count <= last.sum / last.count) break;
      groups.pop();
      before.sum += last.sum;
      before.count += last.count;
      last = before;
    }
  });
  const [least, most] = [low, Math.max(low, high - sum)];
  return groups
    .flatMap((group) => Array.from({ length: group.count }, () => group.sum / group.count))
    .map((shift, i) => Math.min(most, Math.max(least, shift)) + (starts[i] ?? 0));
}
