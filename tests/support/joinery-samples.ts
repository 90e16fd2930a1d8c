import type { Shape } from '#core/geometry';
import { defaultSettings } from '#core/joinery';
import type { BuildContext, DoorFrameParameters, Material, Piece } from '#core/joinery';

export const mahogany: Material = {
  id: 'mahogany',
  kind: 'solid',
  name: 'Mahogany, sawn',
  species: 'Mahogany',
  state: 'sawn',
  density: 550,
};
export const ply9: Material = { id: 'ply9', kind: 'sheet', name: 'Gaboon ply', thickness: 9.2, density: 450 };
export const materials: readonly Material[] = [mahogany, ply9];

export type Corners = Readonly<Record<'BL' | 'BR' | 'TR' | 'TL', readonly [number, number]>>;

/** A measured opening with these corners; tops known to `sigma` mm sideways, together as a lean, all else well. */
export function openingShape(
  corners: Corners,
  options: Partial<Shape> & { readonly sigma?: number } = {},
): Shape {
  const { sigma = 1.3, ...rest } = options;
  const order = ['BR.x', 'TR.x', 'TR.y', 'TL.x', 'TL.y'];
  const deviation = [0, sigma, 0.4, sigma, 0.4]; // the width at the foot taken as exact, as in the worked frame
  const together = (i: number, j: number) => i === j || (i + j === 4 && i % 2 === 1);
  return {
    seenFrom: 'from the saloon, looking forward',
    points: Object.fromEntries(Object.entries(corners).map(([name, [x, y]]) => [name, { x, y }])),
    edges: [
      { name: 'left', from: 'BL', to: 'TL' },
      { name: 'right', from: 'BR', to: 'TR' },
      { name: 'head', from: 'TL', to: 'TR' },
      { name: 'sill', from: 'BL', to: 'BR' },
    ],
    order,
    covariance: deviation.map((a, i) => deviation.map((b, j) => (together(i, j) ? a * b : 0))),
    tilt: 0,
    ...rest,
  };
}

/** The opening of the rulebook's worked door frame (joinery B1): leans and is 6 to 8 out of square. */
export const curlewOpening: Corners = { BL: [0, 0], BR: [641, 0], TR: [649, 1752], TL: [14, 1746] };

export function contextFor(shape: Shape | null, more: Partial<BuildContext> = {}): BuildContext {
  return { shape, shapeName: 'Galley door', materials, settings: defaultSettings, ...more };
}

/** A door frame with letter A; parameters as given, frame of mahogany. */
export function doorFrame(
  parameters: Partial<DoorFrameParameters> = {},
): Extract<Piece, { kind: 'door-frame' }> {
  return {
    kind: 'door-frame',
    id: 'frame',
    letter: 'A',
    name: 'Galley door frame',
    shape: 'opening',
    parameters: {
      bulkheadMax: 18.4,
      bulkheadMin: 18,
      materials: { frame: 'mahogany', infill: 'ply9' },
      ...parameters,
    },
  };
}
