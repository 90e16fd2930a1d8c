import type { AssemblyStep, BuiltPiece } from '#core/joinery';

/** Id of the task that is one step of a piece. */
export function stepId(piece: BuiltPiece, step: Pick<AssemblyStep, 'id'>): string {
  return `step:${piece.letter}/${step.id}`;
}

/** What the stock of a cutting group is called among things to carry. */
export function stockThing(title: string): string {
  return `stock: ${title}`;
}

/** What the fixings of a piece are called among things to carry. */
export function fixingsThing(piece: BuiltPiece): string {
  return `fixings for ${piece.letter}`;
}
