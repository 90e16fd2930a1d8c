import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { TrimRunParameters } from './types.ts';

const source = 'joinery B11';
const { numberOf, choiceOf } = rowsFor<keyof TrimRunParameters>(source);
const ends = { square: 'Square, against something', return: 'Returned to the wall' };

/** What can be chosen for a trim run (joinery B11). */
export const trimRunParameters: readonly ParameterInfo[] = [
  {
    ...{ key: 'wallLengths', label: 'Walls from left to right', type: 'lengths', group: 'Walls', source },
    ...{ help: 'At the height of the trim. Not used when it is fitted to a shape.', min: 10, max: 6000 },
  },
  {
    ...{
      key: 'cornerAngles',
      label: 'Corners between them, degrees',
      type: 'numbers',
      group: 'Walls',
      source,
    },
    ...{
      help: 'On the side of the room: inside corners under 180, outside over. 90 where left out.',
      min: 30,
      max: 330,
    },
  },
  choiceOf('Walls', 'leftEnd', 'Left end', { choices: ends }),
  choiceOf('Walls', 'rightEnd', 'Right end', { choices: ends }),
  numberOf('Trim', 'width', 'Width', {
    usual: 45,
    from: 15,
    to: 2400,
    help: 'Up the wall; for panelling its height.',
  }),
  numberOf('Trim', 'thickness', 'Thickness', {
    usual: 14,
    from: 4,
    to: 30,
    help: 'Left out: of a sheet as measured.',
  }),
  numberOf('Trim', 'tiltDegrees', 'Tilt from the level', {
    usual: 90,
    from: 20,
    to: 90,
    type: 'number',
    help: 'Degrees; 90 stands against the wall, less is sprung across the corner.',
  }),
  choiceOf('Trim', 'touches', 'Against the wall', {
    choices: { lower: 'Its lower edge, as under a deckhead', upper: 'Its upper edge, as on a sole' },
    help: 'For sprung trim.',
  }),
  choiceOf('Corners', 'outside', 'Outside corners', {
    choices: { mitre: 'Mitre', post: 'Quarter-round post' },
  }),
  numberOf('Corners', 'postRadius', 'Radius of the post', { usual: 25, from: 10, to: 100 }),
  numberOf('Trim', 'stick', 'Longest stick', { usual: 2400, from: 300, to: 6000 }),
  materialRow('trim', 'Trim', 'either'),
];
