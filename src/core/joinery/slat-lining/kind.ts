import type { KindOfPiece } from '../kind.ts';
import { slatLiningParameters } from './parameters.ts';
import { buildSlatLining, newSlatLining } from './slat-lining.ts';

export const slatLiningKind: KindOfPiece<'slat-lining'> = {
  words: {
    name: 'Slatted lining',
    purpose: 'Slats with even gaps over cleats, for a ceiling, a side or the hull',
    help: [
      'Slats of one width run over cleats every 300 to 400 and are screwed from behind. Their number is worked out so that they come out even; either the gap gives way or the width of the slats.',
      'Keep the gap of neighbouring panels by changing the slats. Solid slats swell: the gap must leave room for it and 2 more.',
      'On a curved side the slats run along the boat and the gaps are kept on the girth, measured round the curve.',
    ],
  },
  inParts: true,
  parameters: slatLiningParameters,
  shape: { kinds: ['opening', 'sections'], required: false },
  unglued: true,
  seen: { across: ['run', 's', 'g'], up: ['O', 's', 'g', 'first'] },
  build: buildSlatLining,
  make: newSlatLining,
};
