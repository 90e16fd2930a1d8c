import type { Reading } from '#core/measuring';
import type { MeasuredShape } from '#core/project';

import { wallReadings } from './adjust-walls.ts';

/** Every reading of a shape that is adjusted: of walls their lengths and corners too, which are kept as walls. */
export function readingsOf(shape: MeasuredShape): readonly Reading[] {
  return shape.kind === 'walls' ? [...wallReadings(shape), ...shape.readings] : shape.readings;
}
