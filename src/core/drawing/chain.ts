import type { Point } from '#core/geometry';
import { drawDimension, leaderReach, textOff, usualStroke } from './dimension.ts';
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
  /** Texts led out may stand beyond the ends of the chain too: nothing else is there. */
  readonly isOpen?: boolean;
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
  { offset, height = lettering.small, isOpen = false }: ChainStyle,
): readonly Mark[] {
  const asides = leadOut(spans, height, isOpen);
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
function leadOut(
  spans: readonly ChainSpan[],
  height: number,
  isOpen: boolean,
): ReadonlyMap<ChainSpan, number> {
  const [low, high] = [(spans[0]?.from ?? 0) + inset, (spans.at(-1)?.to ?? 0) - inset];
  const wide = (span: ChainSpan) => textWidth(span.text, height);
  let tight = spans.filter((span) => isTight(span, height));
  const needed = () => tight.reduce((sum, span) => sum + wide(span) + between, -between);
  while (tight.length > 1 && needed() > high - low) {
    const least = Math.min(...tight.map((span) => span.to - span.from));
    tight = tight.filter((span) => span.to - span.from > least + 1e-6);
  }
  const things = tight.map((span) => ({ at: (span.from + span.to) / 2, width: wide(span) + between }));
  const within = spreadAlong(things, low - between / 2, high + between / 2);
  const written = spans
    .filter((span) => !isTight(span, height))
    .map((span) => ({ at: (span.from + span.to) / 2, width: wide(span) }));
  const places = isOpen ? spreadBeyond(things, { low, high, within, written, height }) : within;
  return new Map(tight.map((span, i) => [span, (places[i] ?? 0) - (span.from + span.to) / 2]));
}

interface Thing {
  readonly at: number;
  readonly width: number;
}

/** How far a text must come nearer to its size to stand beyond the end of a chain, mm of paper. */
const worthBeyond = 2;

/** Where texts may stand: within the ends as given, and clear of the texts written on the line itself. */
interface Room {
  readonly low: number;
  readonly high: number;
  readonly within: readonly number[];
  readonly written: readonly Thing[];
  readonly height: number;
}

/**
 * The places within the ends, or with some texts beyond them where fewer leaders then run over what is written on the line, or
 * the farthest text comes a good deal nearer to its size.
 */
function spreadBeyond(things: readonly Thing[], room: Room): readonly number[] {
  const { low, high, within } = room;
  const half = between / 2;
  let best = { places: within, fault: faultOf(things, within, room) };
  for (let before = 0; before <= things.length; before++)
    for (let after = 0; before + after <= things.length; after++) {
      const split = things.length - after;
      const places = [
        ...spreadAlong(things.slice(0, before), -Infinity, low - 2 * inset + half),
        ...spreadAlong(things.slice(before, split), low - half, high + half),
        ...spreadAlong(things.slice(split), high + 2 * inset - half, Infinity),
      ];
      const fault = faultOf(things, places, room);
      if (fault < best.fault - worthBeyond) best = { places, fault };
    }
  return best.places;
}

const runOver = 1000; // weighs more than any distance, mm of paper

/** Leaders that run over texts on the line, and how far the farthest text is from its size. */
function faultOf(things: readonly Thing[], places: readonly number[], { written, height }: Room): number {
  const far = things.map(({ at }, i) => Math.abs((places[i] ?? at) - at));
  const runs = things.filter(({ at }, i) => {
    const lean = ((places[i] ?? at) - at) / leaderReach;
    const [near, end] = [at + lean * textOff, at + lean * (textOff + height)];
    return written.some(
      (text) =>
        Math.min(near, end) < text.at + text.width / 2 && Math.max(near, end) > text.at - text.width / 2,
    );
  });
  return runs.length * runOver + Math.max(0, ...far);
}

/**
 * Middles of things side by side in order, none overlapping, as near to where they were wanted as that allows, and between
 * `low` and `high` when all fit there.
 */
export function spreadAlong(things: readonly Thing[], low: number, high: number): readonly number[] {
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
