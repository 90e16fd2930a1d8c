import type { KindOfPiece } from '../kind.ts';
import { buildCabinetFront, newCabinetFront } from './cabinet-front.ts';
import { cabinetFrontParameters } from './parameters.ts';

const rows = Array.from({ length: 10 }, (_, i) => i + 1);

export const cabinetFrontKind: KindOfPiece<'cabinet-front'> = {
  words: {
    name: 'Cabinet front',
    purpose: 'Face frame with doors and drawer fronts in a grid',
    help: [
      'A flat frame of stiles and rails makes a grid of openings; drawers and doors close them, let in with a gap all round or laid over the frame.',
      'Measure the opening it stands in, or enter width and height. Then choose columns, rows, how the heights grow, and what closes each opening.',
      'The frame is glued flat on a level bench with equal diagonals; fronts are cut last, to the openings as they came out.',
    ],
  },
  parameters: cabinetFrontParameters,
  shape: { kinds: ['opening'], required: false },
  seen: {
    across: ['W', 'wo', 'front_w', 'seen_stile', 'gap_row', 'g'],
    up: [
      'H',
      ...rows.map((row) => `h${row}`),
      ...rows.map((row) => `f${row}`),
      'seen_top',
      'seen_bottom',
      'gap',
      'g',
    ],
  },
  build: buildCabinetFront,
  make: newCabinetFront,
};
