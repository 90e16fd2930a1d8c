import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { InfillParameters } from './types.ts';

const source = 'joinery B12';
const { numberOf, choiceOf } = rowsFor<keyof InfillParameters>(source);

/** What can be chosen for an infill (joinery B12). */
export const infillParameters: readonly ParameterInfo[] = [
  numberOf('Gap', 'height', 'Height', { from: 50, to: 2400, when: { fitted: false } }),
  {
    ...{ key: 'gaps', label: 'Gaps from the foot upwards', type: 'lengths', group: 'Gap', source },
    help: 'Square to the straight edge; five or more.',
    max: 400,
  },
  {
    ...{ key: 'heights', label: 'Heights of the gaps', type: 'lengths', group: 'Gap', source },
    help: 'Rising, one for each gap. Left out: evenly from foot to top.',
    max: 2400,
  },
  choiceOf('Gap', 'scribed', 'Meets the boat', { choices: { right: 'On its right', left: 'On its left' } }),
  numberOf('Gap', 'sigma', 'Uncertainty of the gaps', {
    usual: 1,
    from: 0.2,
    to: 5,
    help: 'One standard deviation: template 1, tape 0.5 to 1.',
  }),
  numberOf('Filler', 'reveal', 'Gap left to the boat', { usual: 0, from: 0, to: 10 }),
  numberOf('Filler', 'thickness', 'Thickness', {
    usual: 20,
    from: 9,
    to: 40,
    help: 'As the frame beside it; left out: of a sheet as measured.',
  }),
  numberOf('Filler', 'bevelDegrees', 'Back bevel', {
    usual: 7,
    from: 0,
    to: 15,
    type: 'number',
    help: 'Degrees, 5 to 10: only the show edge touches.',
  }),
  materialRow('filler', 'Filler', 'either', { help: 'Grain upright.' }),
];
