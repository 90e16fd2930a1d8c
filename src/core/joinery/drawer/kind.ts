import type { KindOfPiece } from '../kind.ts';
import { buildDrawer, newDrawer } from './drawer.ts';
import { drawerParameters } from './parameters.ts';

export const drawerKind: KindOfPiece<'drawer'> = {
  words: {
    name: 'Drawer',
    purpose: 'Box, bottom, runners and front for an opening',
    help: [
      'A box of sides, front and back with a bottom in grooves; a false front is screwed on from inside. At sea it needs a notch to lift over, or a latch.',
      'Measure the opening at three depths: the smallest counts. The corner joint decides how long sides and ends are cut.',
      'Rip all sides in one setting, groove them, cut the joints, dry fit, glue with the bottom as the square; the front goes on with spacers.',
    ],
  },
  parameters: drawerParameters,
  shape: { kinds: ['sections'], required: false },
  seen: { across: ['false_W', 'Wb'], up: ['false_H', 'h', 'boxfront_h', 'notch_depth'] },
  build: buildDrawer,
  requires: ({ parameters }) => (parameters.cabinetFront === undefined ? [] : [parameters.cabinetFront]),
  make: newDrawer,
};
