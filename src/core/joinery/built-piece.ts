import { sortBySeverity } from '#core/problems';
import type { Problem } from '#core/problems';
import { nothing } from './parts.ts';
import type { Piece } from './piece-types.ts';
import type { BuiltPiece } from './types.ts';

/** What a piece comes to: nothing but its name and findings (the worst first), and what has been made of it. */
export function describeBuilt(
  piece: Piece,
  seenFrom: string,
  findings: readonly Problem[],
  made: Partial<BuiltPiece> = {},
): BuiltPiece {
  return {
    piece: piece.id,
    letter: piece.letter,
    name: piece.name,
    kind: piece.kind,
    seenFrom,
    parts: [],
    joints: [],
    matchedSets: [],
    fixings: [],
    steps: [],
    working: [],
    envelope: nothing,
    ...made,
    findings: sortBySeverity(findings.map((found) => ({ about: piece.letter, ...found }))),
  };
}
