import { exact, someText } from '../basic-schemas.ts';
import { choice, count, size } from './fields.ts';

export const accessPanelParameters = exact({
  width: size,
  height: size,
  mount: choice('lap', 'inset'),
  lap: size,
  gap: size,
  cleatWidth: size,
  cleatThickness: size,
  buttons: count,
  buttonWidth: size,
  buttonThickness: size,
  pivot: size,
  arm: size,
  notch: choice('hole', 'ring', 'none'),
  pullRoom: size,
  materials: exact({ panel: someText, solid: someText }),
});
