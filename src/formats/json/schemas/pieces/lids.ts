import { exact, someText } from '../basic-schemas.ts';
import { count, flag, size } from './fields.ts';

export const lidsParameters = exact({
  length: size,
  width: size,
  lids: count,
  gap: size,
  cleatWidth: size,
  cleatThickness: size,
  bearerWidth: size,
  holeDiameter: size,
  holeIn: size,
  vents: flag,
  ventDiameter: size,
  ventPitch: size,
  materials: exact({ lids: someText, cleats: someText }),
});
