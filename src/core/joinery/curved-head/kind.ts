import type { KindOfPiece } from '../kind.ts';
import { buildCurvedHead, newCurvedHead } from './curved-head.ts';
import { curvedHeadParameters } from './parameters.ts';

export const curvedHeadKind: KindOfPiece<'curved-head'> = {
  words: {
    name: 'Curved door head',
    purpose: 'An arched head, laminated over a mould or sawn',
    help: [
      'Thin plies are bent over a mould and glued, or the arc is sawn from a wide board. Span and rise give the radius; the head ends at the springings, square to the curve on the jambs; or it runs on into them, housed in their faces, stood in a step of their tops, or halved with them. Enter how long the jambs are and they are made with it.',
      'A laminated head springs back: the mould is made tighter, the less so the more plies there are. Plies no thicker than a 125th of the radius; five or more.',
      'A sawn head is quicker where the arc is flat. Over 45° the grain at its ends is short: saw it from two, joined at the crown.',
    ],
  },
  parameters: curvedHeadParameters,
  shape: { kinds: ['opening'], required: false },
  seen: { across: ['c', 'mould_L'], up: ['f', 'T', 'w'] },
  build: buildCurvedHead,
  make: newCurvedHead,
};
