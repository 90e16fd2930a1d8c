import type { AssemblyStep, BuiltPiece } from '#core/joinery';

/** Steps aboard that wait for nothing made: looking and measuring once more, before anything is bought. */
export function firstLooks(piece: BuiltPiece): readonly AssemblyStep[] {
  const looks = new Set<string>();
  for (const step of piece.steps)
    if (step.place === 'boat' && step.parts.length === 0 && step.after.every((id) => looks.has(id)))
      looks.add(step.id);
  return piece.steps.filter((step) => looks.has(step.id));
}
