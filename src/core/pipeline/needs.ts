import type { BuiltPiece, Material, Part, PartId } from '#core/joinery';
import type { Problem } from '#core/problems';

import { gangAlike } from './gang-alike.ts';
import { gangParts } from './gang-parts.ts';
import { interlockParts } from './interlock/interlock-parts.ts';
import { findPairs, pairBlank } from './pair-blank.ts';
import { stripOfSet } from './matched-strip.ts';
import { singleNeed, type Need, type NeedSet } from './need.ts';

/** What the pieces ask of one material: single blanks, strips of matched sets with what replaces them, and mother blanks. */
export interface Needs {
  readonly singles: readonly Need[];
  readonly sets: readonly NeedSet[];
  readonly findings: readonly Problem[];
}

/** The blanks of one material, in the order of the pieces and their parts. `kerf`: of the saw that parts them. */
export function collectNeeds(
  pieces: readonly BuiltPiece[],
  material: Material,
  kerf: number,
  /** Between shapes that share a blank; null: none do. */
  gap: number | null = null,
): Needs {
  const sets: NeedSet[] = [];
  const taken = new Set<PartId>();
  const all = pieces.flatMap((piece) => piece.parts);
  for (const piece of pieces)
    for (const set of piece.matchedSets) {
      const parts = set.parts.flatMap((id) => all.find((part) => part.id === id) ?? []);
      // once one of them is made, what is left is cut by itself
      const isWhole = parts.length > 1 && parts.every((part) => part.quantity > 0);
      if (!isWhole || parts.some((part) => part.material !== material.id)) continue;
      sets.push({ together: stripOfSet(set, parts), apart: parts.map(singleNeed) });
      parts.forEach((part) => taken.add(part.id));
    }
  for (const piece of pieces)
    for (const pair of findPairs(piece.parts.filter((part) => part.material === material.id))) {
      sets.push({ together: pairBlank(...pair, kerf), apart: pair.map(singleNeed) });
      pair.forEach((part) => taken.add(part.id));
    }
  const rest = all.filter(
    (part) => part.material === material.id && !taken.has(part.id) && part.quantity > 0,
  );
  const shared = gangAlike(rest, kerf);
  const locked = gap === null ? null : interlockParts(rest, { gap, kerf });
  const isSingle = ({ id }: Part) => !shared.taken.has(id) && !locked?.taken.has(id);
  const ganged = rest.filter(isSingle).map((part) => gangParts(part, kerf));
  return {
    singles: [...ganged.flatMap((gang) => gang.needs), ...shared.needs],
    sets: [...sets, ...(locked?.sets ?? [])],
    findings: [...ganged.flatMap((gang) => gang.findings), ...shared.findings, ...(locked?.findings ?? [])],
  };
}
