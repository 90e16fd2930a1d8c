import { giversOfDoor } from '../front-cell.ts';
import type { KindOfPiece } from '../kind.ts';
import { buildFlatDoor, newFlatDoor } from './flat-door.ts';
import { flatDoorParameters } from './parameters.ts';

export const flatDoorKind: KindOfPiece<'flat-door'> = {
  words: {
    name: 'Flat door',
    purpose: 'Plywood with solid edges and vent slots, for a frame or a size',
    help: [
      'A sheet with solid lippings on four edges; corners may be rounded, bands of slots let air through.',
      'It takes its size from the door frame it hangs in, or from sizes you enter. A lock let in wants a wider lipping on its side.',
      'Horizontal lippings are glued and flushed first, then the upright ones; both faces and all edges get the same number of coats, else it cups.',
      'A latch, lock or turn button is chosen under Lock; its strike comes into the jamb of the frame. Of two doors make the first, then another in the same frame: it becomes the second by itself.',
    ],
  },
  parameters: flatDoorParameters,
  shape: { kinds: [], required: false },
  seen: {
    across: ['Wd', 'core_W', 'band_W', 'a_hinge', 'a_lock'],
    up: ['Hd', 'core_H', 'band_H', 'a', 'slot_edge'],
  },
  build: buildFlatDoor,
  make: newFlatDoor,
  requires: ({ parameters }) => giversOfDoor(parameters),
};
