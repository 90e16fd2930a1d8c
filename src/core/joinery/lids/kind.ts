import type { KindOfPiece } from '../kind.ts';
import { buildLids, newLids } from './lids.ts';
import { lidsParameters } from './parameters.ts';

export const lidsKind: KindOfPiece<'lids'> = {
  words: {
    name: 'Berth or locker lids',
    purpose: 'Loose lids on cleats and cross bearers, with finger holes and vents',
    help: [
      'Lids of ply lie on cleats round the aperture and on a cross bearer under each joint. Over a tapered or shaped aperture each lid gets its own outline and a number.',
      'So many lids that each can be lifted out (6 kg) and passes the companionway; face grain from cleat to cleat, thick enough for a knee in the middle.',
      'Keep finger holes off the bearers. Vents under a mattress, edges rounded. Hold lids down for a knock-down, and give each a lanyard: turned on edge it falls through its own hole.',
    ],
  },
  inParts: true,
  unglued: true,
  parameters: lidsParameters,
  shape: { kinds: ['opening', 'outline'], required: false },
  gapToShape: 'gap',
  seen: { across: ['L', 'lid_L', 'g', 'cw'], up: ['W', 'lid_W', 'g', 'cw', 'hole_in'] },
  build: buildLids,
  make: newLids,
};
