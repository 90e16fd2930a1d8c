import { partingWords, type SharedBlank } from '#core/drawing';

import type { Blank, CuttingGroup, Understanding } from '../types.ts';
import { lineBetween, type LineBetween } from './line-between.ts';

/** The blanks of a project that two shapes share head to tail, for their templates and files. */
export function viewPairs(understanding: Understanding): readonly SharedBlank[] {
  return understanding.groups.flatMap((group) => pairsOf(understanding, group));
}

/** Lines found before: a blank is another object whenever anything in it has changed. */
const lines = new WeakMap<Blank, { readonly line: LineBetween | null }>();

function recallLine(blank: Blank, find: () => LineBetween | null): LineBetween | null {
  const found = lines.get(blank) ?? { line: find() };
  lines.set(blank, found);
  return found.line;
}

/** What is done with each of them after the sheet is cut up, by the id of the blank. */
export function pairNotes(understanding: Understanding, group: CuttingGroup): ReadonlyMap<string, string> {
  return new Map(pairsOf(understanding, group).map((pair) => [pair.id, `${pair.id}  ${noteOf(pair)}`]));
}

function noteOf(pair: SharedBlank): string {
  return `head to tail in one blank: mark both from the template of the pair, ${partingWords(pair)}, then shape each to its line`;
}

function pairsOf(understanding: Understanding, group: CuttingGroup): readonly SharedBlank[] {
  const parts = understanding.pieces.flatMap((piece) => piece.parts);
  const kerf = group.job.kerf ?? 0;
  return group.blanks.flatMap((blank): readonly SharedBlank[] => {
    const asked = group.job.parts.find(({ id }) => id === blank.id);
    const laid = blank.parts.flatMap(({ part: id, outline }) => {
      const part = parts.find((each) => each.id === id);
      return part && outline ? [{ part, outline }] : [];
    });
    const [one, two] = laid;
    if (!asked || !one || !two) return [];
    const size = { length: asked.length, width: asked.width ?? 0 };
    return [
      {
        id: blank.id,
        ...size,
        count: asked.count ?? 1,
        kerf,
        laid,
        between: recallLine(blank, () => lineBetween(one.outline, two.outline, size, kerf)),
      },
    ];
  });
}
