import type { Point3 } from '#core/geometry';
import { defaultSettings } from '#core/joinery';
import type {
  BuildContext,
  BuiltPiece,
  CabinetFrontParameters,
  DrawerParameters,
  Material,
  Piece,
} from '#core/joinery';

/** Boards and sheets for drawers and cabinet fronts; thicknesses as if measured. */
export const boxMaterials: readonly Material[] = [
  { id: 'ash', kind: 'solid', name: 'Ash, sawn', species: 'Ash', state: 'sawn', density: 690 },
  { id: 'oak', kind: 'solid', name: 'Oak, planed', species: 'Oak, European', state: 'planed', density: 680 },
  { id: 'ply12', kind: 'sheet', name: 'Birch ply 12', thickness: 12, density: 680 },
  { id: 'ply6', kind: 'sheet', name: 'Birch ply 6', thickness: 6, density: 680 },
  { id: 'ply18', kind: 'sheet', name: 'Birch ply 18', thickness: 18, density: 680 },
];

export function boxContext(more: Partial<BuildContext> = {}): BuildContext {
  return { shape: null, materials: boxMaterials, settings: defaultSettings, ...more };
}

/** The drawer of the rulebook's worked example (joinery B5): 380 × 142 × 455, runners and notch of 10, ply box. */
export function drawer(parameters: Partial<DrawerParameters> = {}): Extract<Piece, { kind: 'drawer' }> {
  return {
    kind: 'drawer',
    id: 'drawer',
    letter: 'D',
    name: 'Galley drawer',
    parameters: {
      openingWidth: 380,
      openingHeight: 142,
      clearDepth: 455,
      materials: { box: 'ply12', bottom: 'ply6', front: 'ply18', runners: 'ash' },
      ...parameters,
    },
  };
}

/** The front of the rulebook's worked example (joinery B6): one bank 460 × 640 of four drawers. */
export function cabinetFront(
  parameters: Partial<CabinetFrontParameters> = {},
): Extract<Piece, { kind: 'cabinet-front' }> {
  return {
    kind: 'cabinet-front',
    id: 'front',
    letter: 'F',
    name: 'Galley front',
    parameters: {
      width: 460,
      height: 640,
      columns: 1,
      rows: 4,
      grading: 'arithmetic',
      step: 15,
      materials: { frame: 'oak', fronts: 'ply18' },
      ...parameters,
    },
  };
}

/** Value of a step of the working. Throws when there is none of the name: then the test is wrong or the working is. */
export function worked(built: BuiltPiece, name: string): number {
  const step = built.working.find((one) => one.name === name);
  if (!step) throw new Error(`no working called ${name}`);
  return step.value;
}

export const codesOf = (built: BuiltPiece): readonly string[] => built.findings.map((found) => found.code);

/** Points spread over a block by the low-discrepancy sequence of the plastic number; no chance involved. */
export function spreadPoints(min: Point3, max: Point3, count: number): readonly Point3[] {
  const share = (i: number, step: number) => (0.437 + i * step) % 1;
  return Array.from({ length: count }, (_, i) => ({
    x: min.x + share(i, 0.8191725134) * (max.x - min.x),
    y: min.y + share(i, 0.6710436067) * (max.y - min.y),
    z: min.z + share(i, 0.5497004779) * (max.z - min.z),
  }));
}
