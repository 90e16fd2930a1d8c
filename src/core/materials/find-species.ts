import type { Species } from './species.ts';
import { speciesTable } from './species-table.ts';

/** The species of this name, capitals aside; null when the table has none. */
export function findSpecies(name: string): Species | null {
  const wanted = name.trim().toLowerCase();
  return speciesTable.find((species) => species.name.toLowerCase() === wanted) ?? null;
}
