import { defaultSettings } from '#core/joinery';
import type { BuildContext, FramedDoorParameters, Material, Piece } from '#core/joinery';

/** Timber that moves as the rulebook reckons (C = 0.00238), and sheets. */
export const framedMaterials: readonly Material[] = [
  { id: 'mahogany', kind: 'solid', name: 'Mahogany, sawn', species: 'Mahogany, true', state: 'sawn' },
  { id: 'oak', kind: 'solid', name: 'Oak, planed', species: 'Oak, European', state: 'planed', density: 680 },
  { id: 'ply6', kind: 'sheet', name: 'Marine ply 6', thickness: 6, density: 550 },
  { id: 'ply9', kind: 'sheet', name: 'Marine ply 9', thickness: 9, density: 550 },
  { id: 'ply12', kind: 'sheet', name: 'Marine ply 12', thickness: 12, density: 550 },
  { id: 'ply18', kind: 'sheet', name: 'Marine ply 18', thickness: 18, density: 550 },
];

export function framedContext(more: Partial<BuildContext> = {}): BuildContext {
  return { shape: null, materials: framedMaterials, settings: defaultSettings, ...more };
}

/** The door of the rulebook's worked example (joinery B3): 399 × 679, solid mahogany panel. */
export function framedDoor(
  parameters: Partial<FramedDoorParameters> = {},
): Extract<Piece, { kind: 'framed-door' }> {
  return {
    kind: 'framed-door',
    id: 'door',
    letter: 'L',
    name: 'Locker door',
    parameters: {
      width: 399,
      height: 679,
      joint: 'haunched-tenon',
      tenon: 30,
      materials: { frame: 'mahogany', panel: 'mahogany' },
      ...parameters,
    },
  };
}
