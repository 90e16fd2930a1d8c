import { exact, someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

export const curvedHeadParameters = exact({
  span: size,
  rise: size,
  depth: size,
  method: choice('laminated', 'sawn'),
  plies: count,
  plyThickness: size,
  faceWidth: size,
  segments: choice('auto', 'one', 'two'),
  springing: choice('butt', 'housed', 'rebated', 'halved'),
  jambLength: size,
  jambThickness: size,
  jointDepth: size,
  horn: size,
  materials: exact({ head: someText, mould: someText }),
});
