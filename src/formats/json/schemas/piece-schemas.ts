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
import { glueEntries } from './pieces/fields.ts';
import { accessPanelParameters } from './pieces/access-panel.ts';
import { stepParameters } from './pieces/step.ts';
import { curvedHeadParameters } from './pieces/curved-head.ts';

const commonEntries = { id: someText, letter: someText, name: v.string(), shape: v.optional(someText) };

/** A piece of a kind: its own parameters, and those of its glue. */
function piece<const Kind extends string, Entries extends v.ObjectEntries>(
  kind: Kind,
  { entries }: { readonly entries: Entries },
) {
  const parameters = exact({ ...entries, ...glueEntries });
  return exact({ ...commonEntries, kind: v.literal(kind), parameters });
}

export const pieceSchema = v.variant('kind', [
  piece('door-frame', doorFrameParameters),
  piece('carcase', carcaseParameters),
  piece('shelf', shelfParameters),
  piece('countertop', countertopParameters),
  piece('run', runParameters),
  piece('drawer', drawerParameters),
  piece('cabinet-front', cabinetFrontParameters),
  piece('flat-door', flatDoorParameters),
  piece('free-panel', freePanelParameters),
  piece('framed-door', framedDoorParameters),
  piece('free-frame', freeFrameParameters),
  piece('louvred-door', louvredDoorParameters),
  piece('slat-lining', slatLiningParameters),
  piece('hatch-surround', hatchSurroundParameters),
  piece('infill', infillParameters),
  piece('dividers', dividersParameters),
  piece('lids', lidsParameters),
  piece('trim-run', trimRunParameters),
  piece('access-panel', accessPanelParameters),
  piece('step', stepParameters),
  piece('curved-head', curvedHeadParameters),
]);
