import { giversOfDoor } from '../front-cell.ts';
import type { KindOfPiece } from '../kind.ts';
import { buildLouvredDoor, newLouvredDoor } from './louvred-door.ts';
import { louvredDoorParameters } from './parameters.ts';

export const louvredDoorKind: KindOfPiece<'louvred-door'> = {
  words: {
    name: 'Louvred door',
    purpose: 'Slanting slats housed in the stiles: air without a view',
    help: [
      'Stiles and rails with slats between them, housed 6 into the stiles. The pitch is worked out so that the first slat touches the lower rail and the last the upper one. Mid rails part a high door into even fields.',
      'Decide the angle (35 to 45° lets air through), the overlap, and whether the edges are left square within the thickness or bevelled flush with both faces.',
      'The two stiles are mirror images: two copies of one are the usual mistake. Finish the slats before they go in; they are fed in without glue and the second stile closes the door.',
      'A latch, lock or turn button is chosen under Lock; its strike comes into the jamb of the frame. Of two doors make the first, then another in the same frame: it becomes the second by itself.',
    ],
  },
  parameters: louvredDoorParameters,
  shape: { kinds: [], required: false },
  seen: { across: ['Wd', 'ws', 'Ls'], up: ['Hd', 'wt', 'wb', 'clear', 'p'] },
  build: buildLouvredDoor,
  make: newLouvredDoor,
  requires: ({ parameters }) => giversOfDoor(parameters),
};
