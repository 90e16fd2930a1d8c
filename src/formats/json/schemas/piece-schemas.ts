import * as v from 'valibot';

import { exact, someText } from './basic-schemas.ts';
import { cabinetFrontParameters } from './pieces/cabinet-front.ts';
import { carcaseParameters } from './pieces/carcase.ts';
import { shelfParameters } from './pieces/shelf.ts';
import { countertopParameters } from './pieces/countertop.ts';
import { runParameters } from './pieces/run.ts';
import { doorFrameParameters } from './pieces/door-frame.ts';
import { drawerParameters } from './pieces/drawer.ts';
import { flatDoorParameters } from './pieces/flat-door.ts';
import { freePanelParameters } from './pieces/free-panel.ts';
import { framedDoorParameters } from './pieces/framed-door.ts';
import { freeFrameParameters } from './pieces/free-frame.ts';
import { louvredDoorParameters } from './pieces/louvred-door.ts';
import { slatLiningParameters } from './pieces/slat-lining.ts';
import { hatchSurroundParameters } from './pieces/hatch-surround.ts';
import { infillParameters } from './pieces/infill.ts';
import { dividersParameters } from './pieces/dividers.ts';
import { lidsParameters } from './pieces/lids.ts';
import { trimRunParameters } from './pieces/trim-run.ts';
import { accessPanelParameters } from './pieces/access-panel.ts';
import { stepParameters } from './pieces/step.ts';
import { curvedHeadParameters } from './pieces/curved-head.ts';

const commonEntries = { id: someText, letter: someText, name: v.string(), shape: v.optional(someText) };

export const pieceSchema = v.variant('kind', [
  exact({ ...commonEntries, kind: v.literal('door-frame'), parameters: doorFrameParameters }),
  exact({ ...commonEntries, kind: v.literal('carcase'), parameters: carcaseParameters }),
  exact({ ...commonEntries, kind: v.literal('shelf'), parameters: shelfParameters }),
  exact({ ...commonEntries, kind: v.literal('countertop'), parameters: countertopParameters }),
  exact({ ...commonEntries, kind: v.literal('run'), parameters: runParameters }),
  exact({ ...commonEntries, kind: v.literal('drawer'), parameters: drawerParameters }),
  exact({ ...commonEntries, kind: v.literal('cabinet-front'), parameters: cabinetFrontParameters }),
  exact({ ...commonEntries, kind: v.literal('flat-door'), parameters: flatDoorParameters }),
  exact({ ...commonEntries, kind: v.literal('free-panel'), parameters: freePanelParameters }),
  exact({ ...commonEntries, kind: v.literal('framed-door'), parameters: framedDoorParameters }),
  exact({ ...commonEntries, kind: v.literal('free-frame'), parameters: freeFrameParameters }),
  exact({ ...commonEntries, kind: v.literal('louvred-door'), parameters: louvredDoorParameters }),
  exact({ ...commonEntries, kind: v.literal('slat-lining'), parameters: slatLiningParameters }),
  exact({ ...commonEntries, kind: v.literal('hatch-surround'), parameters: hatchSurroundParameters }),
  exact({ ...commonEntries, kind: v.literal('infill'), parameters: infillParameters }),
  exact({ ...commonEntries, kind: v.literal('dividers'), parameters: dividersParameters }),
  exact({ ...commonEntries, kind: v.literal('lids'), parameters: lidsParameters }),
  exact({ ...commonEntries, kind: v.literal('trim-run'), parameters: trimRunParameters }),
  exact({ ...commonEntries, kind: v.literal('access-panel'), parameters: accessPanelParameters }),
  exact({ ...commonEntries, kind: v.literal('step'), parameters: stepParameters }),
  exact({ ...commonEntries, kind: v.literal('curved-head'), parameters: curvedHeadParameters }),
]);
