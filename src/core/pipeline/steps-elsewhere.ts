import type { BuiltPiece, StepAddress } from '#core/joinery';

import { stepId } from './task-names.ts';

/**
 * What steps of one piece wait for in another: a door is hung on the first jamb of its frame, and the second jamb set to it.
 * By the task that waits, the tasks waited for.
 */
export function waitElsewhere(pieces: readonly BuiltPiece[]): ReadonlyMap<string, readonly string[]> {
  const waits = new Map<string, readonly string[]>();
  const wait = (task: string, before: string) => waits.set(task, [...(waits.get(task) ?? []), before]);
  const idsOf = (addresses: readonly StepAddress[]) =>
    addresses.flatMap(({ piece, step }) =>
      pieces.filter((each) => each.piece === piece).map((each) => stepId(each, { id: step })),
    );
  for (const piece of pieces)
    for (const step of piece.steps) {
      const own = stepId(piece, step);
      for (const other of idsOf(step.elsewhere?.after ?? [])) wait(own, other);
      for (const other of idsOf(step.elsewhere?.before ?? [])) wait(other, own);
    }
  return waits;
}
