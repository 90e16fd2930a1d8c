import type { KindOfPiece } from '../kind.ts';
import { accessPanelParameters } from './parameters.ts';
import { buildAccessPanel, newAccessPanel } from './access-panel.ts';

export const accessPanelKind: KindOfPiece<'access-panel'> = {
  words: {
    name: 'Access panel',
    purpose: 'A panel that comes out without tools, held by turn buttons',
    help: [
      'It laps over the surround, which hides an uneven hole, or sits flush on cleats inside the hole, which must then be true. Turn buttons on the long sides hold it.',
      'Decide the mount, the finger hold, and how much room there is to pull it out. A button must reach 10 over the panel closed and clear it open.',
      'Grain as the surround; on the back, THIS WAY UP. Know what is behind before a screw goes in: cables, pipes, the hull.',
    ],
  },
  parameters: accessPanelParameters,
  shape: { kinds: ['opening'], required: false },
  gapToShape: 'gap',
  unglued: true,
  seen: { across: ['panel_W', 'hole_W', 'lap'], up: ['panel_H', 'hole_H', 'lap'] },
  build: buildAccessPanel,
  make: newAccessPanel,
};
