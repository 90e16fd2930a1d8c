import { sayLengths, sayLengthsWithin, type LengthSystem } from '#core/units';
import type { BuiltPiece } from './types.ts';

/** What of a piece is no sentence of ours: names, what is bought under its trade size, and geometry. */
const leftAsIs: ReadonlySet<string> = new Set([
  ...['piece', 'letter', 'name', 'kind', 'seenFrom', 'id', 'material', 'item', 'code', 'source', 'formula'],
  ...['outline', 'holes', 'placements', 'finished', 'cut', 'rough', 'box', 'envelope', 'loads', 'opening'],
  ...['matchedSets', 'members', 'inputs', 'after', 'elsewhere'],
]);

/**
 * A built piece with the lengths in its findings, steps, settings, notes and working told in these units; the very same
 * object where no text changes. The names in `names` are the user's own and stay.
 */
export function sayBuilt(built: BuiltPiece, units: LengthSystem, names: readonly string[]): BuiltPiece {
  return sayLengthsWithin(built, (text) => sayLengths(text, units, names), leftAsIs);
}
