import type { Part, PartId } from '#core/joinery';
import type { Problem } from '#core/problems';

import { machineLimits } from './gang-parts.ts';
import { alongGrain, singleNeed, type Need } from './need.ts';
import { listWords, showSize } from './words.ts';

/** What a mother blank has more than its parts and kerfs, along the grain, mm (joinery D4). */
const ends = 25;

/** Parts of several addresses that share mother blanks, their blanks, and what is said of it. */
export interface AlikeGang {
  readonly taken: ReadonlySet<PartId>;
  readonly needs: readonly Need[];
  readonly findings: readonly Problem[];
}

/**
 * Short solid parts of one section and several addresses, behind each other in mother blanks as long as the planer wants
 * (joinery D5): one blank where each alone would waste a whole one. The longest first, into the first blank with room.
 */
export function gangAlike(parts: readonly Part[], kerf: number): AlikeGang {
  const groups = new Map<string, readonly Part[]>();
  for (const part of parts.filter((each) => isShort(each, kerf))) {
    const key = sectionOf(part);
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  const shared = [...groups.values()].filter((group) => group.length > 1);
  return {
    taken: new Set(shared.flat().map(({ id }) => id)),
    needs: shared.flatMap((group) => makeMothers(group, kerf)),
    findings: shared.map(sayShared),
  };
}

/** Two of it lie in the shortest blank that can be planed. */
function isShort(part: Part, kerf: number): boolean {
  if (part.kind !== 'solid' || part.quantity <= 0 || part.staves) return false;
  const { length } = alongGrain(part, part.cut);
  const blank = alongGrain(part, part.rough);
  return 2 * length + kerf + ends <= machineLimits.planeLength && blank.length <= machineLimits.planeLength;
}

function sectionOf(part: Part): string {
  const [cut, rough] = [alongGrain(part, part.cut), alongGrain(part, part.rough)];
  const sizes = [cut.width, part.cut.thickness, rough.width, part.rough.thickness];
  return [part.turn || part.grain === 'any', ...sizes.map((size) => Math.round(size * 10))].join(' ');
}

interface Copy {
  readonly part: Part;
  readonly length: number;
}

function makeMothers(group: readonly Part[], kerf: number): readonly Need[] {
  const copies = group
    .flatMap((part) =>
      Array.from({ length: part.quantity }, (): Copy => ({
        part,
        length: alongGrain(part, part.cut).length,
      })),
    )
    .sort((one, other) => other.length - one.length);
  const mothers: Copy[][] = [];
  for (const copy of copies) {
    const open = mothers.find((mother) => lengthOf([...mother, copy], kerf) <= machineLimits.planeLength);
    if (open) open.push(copy);
    else mothers.push([copy]);
  }
  const needs = new Map<string, Need>();
  for (const mother of mothers) {
    const need = makeMother(mother, kerf);
    needs.set(need.id, { ...need, count: (needs.get(need.id)?.count ?? 0) + 1 });
  }
  return [...needs.values()];
}

function lengthOf(copies: readonly Copy[], kerf: number): number {
  return copies.reduce((sum, { length }) => sum + length, 0) + (copies.length - 1) * kerf + ends;
}

function makeMother(copies: readonly Copy[], kerf: number): Need {
  const [first] = copies;
  if (!first) throw new Error('a mother blank of nothing');
  const single = singleNeed(first.part);
  const ids = [...new Set(copies.map(({ part }) => part.id))];
  const counts = ids.map((id) => {
    const count = copies.filter(({ part }) => part.id === id).length;
    return count > 1 ? `${id}x${count}` : id;
  });
  let at = 0;
  const laid = copies.map(({ part, length }) => {
    const x = at;
    at += length + kerf;
    return { part: part.id, x, y: 0, length, width: single.width };
  });
  return {
    ...single,
    id: counts.length === 1 && copies.length === 1 ? first.part.id : counts.join('+'),
    count: 1,
    length: Math.max(Math.ceil(lengthOf(copies, kerf) - 1e-9), machineLimits.planeLength),
    parts: laid,
    title: copies.length > 1 ? `the blank of ${listWords(ids)}` : single.title,
  };
}

function sayShared(group: readonly Part[]): Problem {
  const [first] = group;
  const copies = group.reduce((sum, { quantity }) => sum + quantity, 0);
  return {
    severity: 'note',
    code: 'cut-from-mother-blank',
    ...(first && { about: first.id }),
    message: `${listWords(group.map(({ id, name, cut }) => `${id} ${name} (${showSize(cut.length, cut.width)} mm)`))} are below the size that is safe to machine: the ${copies} lie behind each other in larger blanks.`,
    remedy: 'Plane and mould the larger blank first, part the copies last.',
    source: 'joinery D5',
  };
}
