import { findSpecies } from '#core/materials';
import type { Material } from './piece-types.ts';
import type { WorkingBook } from './working.ts';

const plywood = { along: 7000, across: 4000 } as const; // N/mm², from memory (joinery B8)
const usualTimber = 10000; // N/mm², as mahogany, from memory (joinery B8)

/** Wood goes on bending under a load that stays, times (joinery B8). */
export const longTerm = 1.5;
/** Share of its length that a shelf may sag by before the eye sees it (joinery B8). */
export const sagShare = 300;

/** Puts in how stiff a material is along the span, N/mm²: of its species, or a usual one; answers it. */
export function putStiffness(
  book: WorkingBook,
  name: string,
  material: Material,
  about: { readonly of: string; readonly acrossGrain?: boolean },
): number {
  const label = `stiffness of ${about.of}, N/mm²`;
  if (material.kind === 'sheet') {
    const value = about.acrossGrain ? plywood.across : plywood.along;
    return book.put(name, value, label, 'joinery B8, from memory', 'ratio');
  }
  const species = material.species ? findSpecies(material.species) : null;
  const source = species ? `${species.name}, species table` : 'joinery B8, from memory';
  return book.put(name, species?.modulus ?? usualTimber, label, source, 'ratio');
}
