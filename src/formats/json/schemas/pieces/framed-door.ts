import { exact, someText } from '../basic-schemas.ts';
import { choice, count, flag, size } from './fields.ts';
import { hungDoorEntries } from './hung-door.ts';

export const framedDoorParameters = exact({
  ...hungDoorEntries,
  thickness: size,
  stile: size,
  topRail: size,
  bottomRail: size,
  midRails: count,
  midRail: size,
  midStile: choice('auto', 'none', 'one'),
  joint: choice(
    'haunched-tenon',
    'through-tenon',
    'stub-tenon',
    'groove-tongue',
    'bridle',
    'scribed-moulding',
    'loose-tenon',
    'dowel',
    'half-lap',
  ),
  tenon: size,
  grooveDepth: size,
  panelThickness: size,
  panelEdge: size,
  panelMargin: size,
  panelGap: size,
  panelGlued: flag,
  panelMatch: choice('plain', 'book'),
  materials: exact({ frame: someText, panel: someText }),
});
