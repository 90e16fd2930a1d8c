import * as v from 'valibot';

import { aboveZero, exact, someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

export const drawerParameters = exact({
  cabinetFront: v.optional(someText),
  row: count,
  column: count,
  openingWidth: v.optional(aboveZero),
  openingHeight: v.optional(aboveZero),
  clearDepth: aboveZero,
  heightAbove: size,
  openingVariation: size,
  sideThickness: size,
  frontThickness: size,
  backThickness: size,
  bottomThickness: size,
  grooveDepth: size,
  grooveUp: size,
  runner: choice('metal', 'side-rail', 'bottom-notch', 'bottom'),
  runnerLength: size,
  notch: size,
  railDepth: size,
  bottomStyle: choice('captured', 'slides-under-back'),
  corner: choice(
    'box',
    'through-dovetail',
    'lapped-dovetail',
    'rebate',
    'housed-back',
    'lock-rebate',
    'butt',
  ),
  front: choice('overlay', 'inset', 'none'),
  overlay: size,
  insetGap: size,
  setback: size,
  falseFrontThickness: size,
  count,
  materials: exact({
    box: someText,
    bottom: someText,
    front: v.optional(someText),
    runners: v.optional(someText),
  }),
});
