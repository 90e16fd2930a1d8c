import { aboveZero, exact, someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

export const stepParameters = exact({
  form: choice('box', 'flight'),
  totalRise: aboveZero,
  mostRiser: size,
  going: size,
  width: size,
  treadDepth: size,
  boxRisers: count,
  overhang: size,
  kickHeight: size,
  kickDepth: size,
  soleSlopeDegrees: size,
  fallsTo: choice('left', 'right'),
  between: size,
  treadThickness: size,
  joint: choice('housing', 'butt', 'dowel', 'loose-tenon', 'rebate'),
  materials: exact({ sides: someText, treads: someText }),
});
