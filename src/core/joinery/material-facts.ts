import { findSpecies, plywoodMovement, unknownDensity, unknownMovement } from '#core/materials';
import type { Material } from './piece-types.ts';
import type { WorkingBook } from './working.ts';

const usualPlywood = 550; // kg/m³ (joinery B2)

/** Puts the density of a material in, g/cm³: as entered, of its species, or a usual one; answers it. */
export function putDensity(book: WorkingBook, name: string, material: Material, of: string): number {
  const species = material.kind === 'solid' && material.species ? findSpecies(material.species) : null;
  const usual = material.kind === 'sheet' ? usualPlywood : unknownDensity;
  const density = material.density ?? species?.density ?? usual;
  const source =
    material.density !== undefined ? material.name : (species?.densitySource ?? 'common practice, no source');
  return book.put(name, density / 1000, `density of ${of}, g/cm³`, source, 'ratio');
}

/** Puts in how much a material moves across its grain, per width and percent of moisture: flat-sawn, the worse (joinery D1). */
export function putMovement(book: WorkingBook, name: string, material: Material, of: string): number {
  const label = `movement of ${of}, share of the width per percent of moisture`;
  if (material.kind === 'sheet')
    return book.put(name, plywoodMovement, label, 'joinery D1, from memory', 'ratio');
  const species = material.species ? findSpecies(material.species) : null;
  const source = species
    ? `${species.name}, flat-sawn: ${species.movementSource}`
    : 'species not known, joinery D1';
  return book.put(name, species?.tangential ?? unknownMovement, label, source, 'ratio');
}
