import { giversOfDoor } from '../front-cell.ts';
import type { KindOfPiece } from '../kind.ts';
import { buildFramedDoor, newFramedDoor } from './framed-door.ts';
import { framedDoorParameters } from './parameters.ts';

export const framedDoorKind: KindOfPiece<'framed-door'> = {
  words: {
    name: 'Framed door',
    purpose: 'Stiles, rails and a loose panel, for a frame or a size',
    help: [
      'Stiles run the full height, rails between them; a panel of ply or solid timber sits loose in a groove. Mid rails and a mid stile divide large doors.',
      'Corners: mortise and tenon for anything over a quarter of a square metre, a tongue in the groove or a scribed moulding for light doors, bridle, half-lap, loose tenon or dowels where those are what you can cut.',
      'A solid panel needs room to swell: the gap is worked out from the timber and its moisture. Finish the panel before gluing the frame, and never glue it in.',
      'A latch, lock or turn button is chosen under Lock; its strike comes into the jamb of the frame. Of two doors make the first, then another in the same frame: it becomes the second by itself.',
    ],
  },
  parameters: framedDoorParameters,
  shape: { kinds: [], required: false },
  seen: { across: ['Wd', 'ws', 'wc'], up: ['Hd', 'wt', 'wb', 'hs', 'wm'] },
  build: buildFramedDoor,
  make: newFramedDoor,
  requires: ({ parameters }) => giversOfDoor(parameters),
};
