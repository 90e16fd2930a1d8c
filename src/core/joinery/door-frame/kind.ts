import type { KindOfPiece } from '../kind.ts';
import { buildDoorFrame, newDoorFrame } from './door-frame.ts';
import { doorFrameParameters } from './parameters.ts';

export const doorFrameKind: KindOfPiece<'door-frame'> = {
  words: {
    name: 'Door frame',
    purpose: 'Lining for a measured opening, however crooked',
    help: [
      'Two jambs and a head (and a sill where wanted) are boxed round the cut edge of a bulkhead; covers hide the gap that is packed out, a stop takes the door.',
      'Measure the opening with the twelve readings of its checklist, the thickness of the bulkhead at six places, and how the faces are covered.',
      'It is glued on the bench as a unit if it can be carried in whole; aboard it is wedged from the head corners, the hinge jamb first, and the latch jamb set to the door.',
    ],
  },
  parameters: doorFrameParameters,
  shape: { kinds: ['opening'], required: true },
  seen: { across: ['Wc', 'Fw', 'rv', 'ts_st'], up: ['Hc', 'Fh', 'rv', 'ts_st'] },
  build: buildDoorFrame,
  make: newDoorFrame,
};
