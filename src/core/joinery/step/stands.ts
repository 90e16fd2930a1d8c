import { boxStands } from './box-parts.ts';
import { flightStands } from './flight-parts.ts';
import type { Stand } from './joints.ts';
import type { StepLayout } from './sizes.ts';

/** All boards that stand on a side, as on the higher foot, or on a string. */
export function standsOf(layout: StepLayout): readonly Stand[] {
  return layout.choices.form === 'box' ? boxStands(layout, 0) : flightStands(layout);
}
