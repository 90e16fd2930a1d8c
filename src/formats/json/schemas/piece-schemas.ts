import * as v from 'valibot';

import { exact, someText } from './basic-schemas.ts';
import { cabinetFrontParameters } from './pieces/cabinet-front.ts';
import { doorFrameParameters } from './pieces/door-frame.ts';
import { drawerParameters } from './pieces/drawer.ts';
import { flatDoorParameters } from './pieces/flat-door.ts';
import { freePanelParameters } from './pieces/free-panel.ts';
import { framedDoorParameters } from './pieces/framed-door.ts';
import { freeFrameParameters } from './pieces/free-frame.ts';
import { louvredDoorParameters } from './pieces/louvred-door.ts';
import { slatLiningParameters } from './pieces/slat-lining.ts';
import { hatchSurroundParameters } from './pieces/hatch-surround.ts';

const commonEntries = { id: someText, letter: someText, name: v.string(), shape: v.optional(someText) };

export const pieceSchema = v.variant('kind', [
  exact({ ...commonEntries, kind: v.literal('door-frame'), parameters: doorFrameParameters }),
  exact({ ...commonEntries, kind: v.literal('drawer'), parameters: drawerParameters }),
  exact({ ...commonEntries, kind: v.literal('cabinet-front'), parameters: cabinetFrontParameters }),
  exact({ ...commonEntries, kind: v.literal('flat-door'), parameters: flatDoorParameters }),
  exact({ ...commonEntries, kind: v.literal('free-panel'), parameters: freePanelParameters }),
  exact({ ...commonEntries, kind: v.literal('framed-door'), parameters: framedDoorParameters }),
  exact({ ...commonEntries, kind: v.literal('free-frame'), parameters: freeFrameParameters }),
  exact({ ...commonEntries, kind: v.literal('louvred-door'), parameters: louvredDoorParameters }),
  exact({ ...commonEntries, kind: v.literal('slat-lining'), parameters: slatLiningParameters }),
  exact({ ...commonEntries, kind: v.literal('hatch-surround'), parameters: hatchSurroundParameters }),
]);
