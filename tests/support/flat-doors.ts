import { defaultSettings } from '#core/joinery';
import type { BuildContext, FlatDoorParameters, Material, Piece } from '#core/joinery';

/** A sheet of the density the rulebook reckons with, thinner ones, and timber for the edges. */
export const doorMaterials: readonly Material[] = [
  { id: 'ply18', kind: 'sheet', name: 'Marine ply 18', thickness: 18, density: 550 },
  { id: 'ply12', kind: 'sheet', name: 'Marine ply 12', thickness: 12, density: 550 },
  { id: 'oak', kind: 'solid', name: 'Oak, sawn', species: 'Oak, European', state: 'sawn' },
];

export function doorContext(more: Partial<BuildContext> = {}): BuildContext {
  return { shape: null, materials: doorMaterials, settings: defaultSettings, ...more };
}

/** The door of the rulebook's worked example (joinery B2): 578.5 × 1704 of 18 ply, lipping 8. */
export function flatDoor(
  parameters: Partial<FlatDoorParameters> = {},
): Extract<Piece, { kind: 'flat-door' }> {
  return {
    kind: 'flat-door',
    id: 'door',
    letter: 'G',
    name: 'Galley door',
    parameters: { width: 578.5, height: 1704, materials: { core: 'ply18', lipping: 'oak' }, ...parameters },
  };
}

/** A locker door small enough for a sheet without battens and for two hinges. */
export const lockerDoor: Partial<FlatDoorParameters> = { width: 420, height: 700, gapSide: 2.5 };
