import { exact, someText } from '../basic-schemas.ts';
import { choice, flag, size } from './fields.ts';

export const slatLiningParameters = exact({
  run: size,
  span: size,
  direction: choice('across', 'upright'),
  slatWidth: size,
  gap: size,
  adjust: choice('gap', 'slat'),
  endGaps: flag,
  slatThickness: size,
  cleatWidth: size,
  cleatThickness: size,
  cleatSpacing: size,
  materials: exact({ slats: someText, cleats: someText }),
});
