import { asSeen, cutOutline } from '#core/drawing';
import { boxOfOutline, outlineArea, type Outline } from '#core/geometry';
import type { Part, PartId } from '#core/joinery';
import type { Problem } from '#core/problems';

import { alongGrain, singleNeed, type Need, type NeedSet } from '../need.ts';
import { placeOutline } from '../router/view-nest.ts';
import { showSize } from '../words.ts';
import { slideTogether } from './slide-together.ts';

/** What a pair must save at least of its two blanks to be worth marking out, as a share and in mm² (common practice, no source). */
const worthwhile = { share: 0.06, area: 5000 } as const;

/** Parts smaller than this are ganged in mother blanks, mm; more kinds of shapes than this are not tried with each other. */
const leastLength = 100;
const mostKinds = 8;

/** Distances of a pair: between the two for the cutter and a web, and what the saw takes, mm. */
export interface Clearances {
  readonly gap: number;
  readonly kerf: number;
}

/** Shaped parts that lie in pairs, each pair head to tail in one blank, and what is said of them. */
export interface Interlocked {
  readonly taken: ReadonlySet<PartId>;
  readonly sets: readonly NeedSet[];
  readonly findings: readonly Problem[];
}

/**
 * Pairs of shaped sheet parts, the second turned by half, in one rectangle where that is smaller than two (joinery E2): the
 * saw cuts the rectangle, both shapes come out of it by template. A part pairs with its like or with one other, whatever
 * saves most.
 */
export function interlockParts(parts: readonly Part[], clearances: Clearances): Interlocked {
  const shaped = parts.filter(isShaped).slice(0, mostKinds);
  const pairs = shaped
    .flatMap((one, i) => shaped.slice(i).flatMap((two) => pairUp(one, two, clearances) ?? []))
    .sort((a, b) => b.saved * b.count - a.saved * a.count);
  const taken = new Set<PartId>();
  const chosen = pairs.filter(({ one, two }) => {
    if (taken.has(one.id) || taken.has(two.id)) return false;
    taken.add(one.id).add(two.id);
    return true;
  });
  return { taken, sets: chosen.map(({ set }) => set), findings: chosen.map(sayPair) };
}

function isShaped(part: Part): boolean {
  const isPlain = part.kind === 'sheet' && !part.staves && !part.matched && part.besideOf === undefined;
  return isPlain && Number.isInteger(part.quantity) && part.cut.length > leastLength && isTapering(part);
}

/** Whether enough of the box round a part is not part that two may share theirs. */
function isTapering(part: Part): boolean {
  const { minX, minY, maxX, maxY } = boxOfOutline(part.outline);
  return Math.abs(outlineArea(part.outline)) < (1 - worthwhile.share / 2) * (maxX - minX) * (maxY - minY);
}

interface Pair {
  readonly one: Part;
  readonly two: Part;
  readonly count: number;
  /** Area a pair saves, mm². */
  readonly saved: number;
  readonly set: NeedSet;
}

/** The best way two parts lie head to tail; null when that saves too little or there are not two. */
function pairUp(one: Part, two: Part, clearances: Clearances): Pair | null {
  const isSame = one.id === two.id;
  const count = isSame ? Math.floor(one.quantity / 2) : Math.min(one.quantity, two.quantity);
  if (count === 0 || Math.abs(one.rough.thickness - two.rough.thickness) > 0.01) return null;
  const orders = isSame ? [[one, two] as const] : [[one, two] as const, [two, one] as const];
  const singles = [singleNeed(one), singleNeed(two)] as const;
  const { kerf } = clearances;
  const areaOf = ({ length, width }: { length: number; width: number }) => (length + kerf) * (width + kerf);
  const alone = areaOf(singles[0]) + areaOf(singles[1]);
  const least = Math.abs(outlineArea(one.outline)) + Math.abs(outlineArea(two.outline));
  if (!isWorthwhile(alone, least)) return null;
  const together = orders
    .map(([first, second]) => recallPair(first, second, clearances))
    .reduce((best, each) => (areaOf(each) < areaOf(best) ? each : best));
  const saved = alone - areaOf(together);
  if (!isWorthwhile(alone, areaOf(together))) return null;
  const wanted = { ...together, count };
  const rest = [one, ...(isSame ? [] : [two])].flatMap((part) => {
    const left = part.quantity - count * (isSame ? 2 : 1);
    return left > 0 ? [{ ...singleNeed(part), count: left }] : [];
  });
  const apart = isSame ? [singles[0]] : [...singles];
  return { one, two, count, saved, set: { together: wanted, apart, rest } };
}

function isWorthwhile(alone: number, together: number): boolean {
  return alone - together >= Math.max(worthwhile.area, worthwhile.share * alone);
}

/** Pairs laid before: the outlines of parts that have not changed are the same objects, whatever else is worked on. */
const known = new WeakMap<Outline, WeakMap<Outline, { readonly key: string; readonly need: Need }>>();

function recallPair(first: Part, second: Part, clearances: Clearances): Need {
  const key = JSON.stringify([clearances, [first, second].map((part) => [singleNeed(part), part.cut])]);
  const beside = known.get(first.outline) ?? new WeakMap();
  known.set(first.outline, beside);
  const found = beside.get(second.outline);
  if (found?.key === key) return found.need;
  const need = layPair(first, second, clearances);
  beside.set(second.outline, { key, need });
  return need;
}

/** Both in one blank, with the allowance that a blank of either has round it. */
function layPair(first: Part, second: Part, { gap, kerf }: Clearances): Need {
  const [one, two] = [singleNeed(first), singleNeed(second)];
  const a = outlineInBlank(first, 0);
  const b = outlineInBlank(second, 180);
  const spare = [allowanceOf(first), allowanceOf(second)];
  const round = {
    length: Math.max(...spare.map(({ length }) => length)),
    width: Math.max(...spare.map(({ width }) => width)),
  };
  const found = slideTogether(
    a,
    b,
    gap,
    (length, width) => (length + round.length + kerf) * (width + round.width + kerf),
  );
  const moved = placeOutline(b, { angle: 0, x: found.move.x, y: found.move.y });
  const [boxA, boxB] = [boxOfOutline(a), boxOfOutline(moved)];
  const at = {
    angle: 0,
    x: round.length / 2 - Math.min(boxA.minX, boxB.minX),
    y: round.width / 2 - Math.min(boxA.minY, boxB.minY),
  };
  const size = {
    length: Math.ceil(found.length + round.length - 1e-6),
    width: Math.ceil(found.width + round.width - 1e-6),
  };
  const lay = (part: Part, outline: Outline): Need['parts'][number] => {
    const laid = placeOutline(outline, at);
    const { minX, minY, maxX, maxY } = boxOfOutline(laid);
    return { part: part.id, x: minX, y: minY, length: maxX - minX, width: maxY - minY, outline: laid };
  };
  return {
    id: `${first.id}/${second.id}`,
    count: 1,
    ...size,
    thickness: Math.max(one.thickness, two.thickness),
    finished: { width: size.width, thickness: Math.max(one.finished.thickness, two.finished.thickness) },
    turn: one.turn && two.turn,
    isInterlocked: true,
    parts: [lay(first, a), lay(second, moved)],
    title: `${first.id} and ${second.id}, head to tail`,
  };
}

/** The outline as sawn, face side up, its grain along the blank, turned by an angle in degrees. */
function outlineInBlank(part: Part, turned: number): Outline {
  const upright = part.grain === 'along-width' ? 90 : 0;
  return placeOutline(asSeen(cutOutline(part), part), { angle: upright + turned, x: 0, y: 0 });
}

/** What a blank of its own has round the outline. */
function allowanceOf(part: Part): { readonly length: number; readonly width: number } {
  const rough = alongGrain(part, part.rough);
  const { minX, minY, maxX, maxY } = boxOfOutline(outlineInBlank(part, 0));
  return {
    length: Math.max(0, rough.length - (maxX - minX)),
    width: Math.max(0, rough.width - (maxY - minY)),
  };
}

function sayPair({ one, two, count, saved, set }: Pair): Problem {
  const which = one.id === two.id ? `${one.id} ${one.name}, two of it` : `${one.id} and ${two.id}`;
  const { length, width } = set.together;
  const blanks = count === 1 ? 'one blank' : `${count} blanks`;
  return {
    severity: 'note',
    code: 'pair-head-to-tail',
    about: one.id,
    message: `${which} are sawn in ${blanks} of ${showSize(length, width)} mm, head to tail: ${(saved / 1e6).toFixed(2)} m² less each than one by one.`,
    remedy: 'Mark both by their templates before cutting, saw between them, then shape each to its line.',
    source: 'joinery E2',
  };
}
