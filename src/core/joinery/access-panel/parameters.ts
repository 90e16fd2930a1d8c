import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { AccessPanelParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof AccessPanelParameters>('joinery B14');

const hole: readonly ParameterInfo[] = [
  numberOf('Hole', 'width', 'Hole, width', {
    from: 80,
    to: 1500,
    help: 'Left out: from the measured opening.',
  }),
  numberOf('Hole', 'height', 'Hole, height', {
    from: 80,
    to: 1500,
    help: 'Left out: from the measured opening.',
  }),
  choiceOf('Hole', 'mount', 'Panel', {
    choices: { lap: 'Laps on the surround', inset: 'Inset flush, on cleats behind' },
  }),
  numberOf('Hole', 'lap', 'Lap on the surround', { usual: 15, from: 10, to: 40 }),
  numberOf('Hole', 'gap', 'Gap, inset', { usual: 2, from: 1, to: 4 }),
  numberOf('Hole', 'pullRoom', 'Room to pull it out', {
    from: 10,
    to: 2000,
    help: 'Square to the panel, in front of it. Left out: not checked.',
  }),
];

const cleats: readonly ParameterInfo[] = [
  numberOf('Cleats', 'cleatWidth', 'Cleat, width', { usual: 15, from: 12, to: 40 }),
  numberOf('Cleats', 'cleatThickness', 'Cleat, thickness', { usual: 15, from: 10, to: 40 }),
];

const buttons: readonly ParameterInfo[] = [
  numberOf('Turn buttons', 'buttons', 'Turn buttons', {
    from: 2,
    to: 12,
    type: 'whole',
    help: 'Left out: two, or one for each 400 of the perimeter.',
  }),
  numberOf('Turn buttons', 'buttonWidth', 'Button, width', { usual: 16, from: 12, to: 30 }),
  numberOf('Turn buttons', 'buttonThickness', 'Button, thickness', { usual: 8, from: 6, to: 15 }),
  numberOf('Turn buttons', 'pivot', 'Pivot from the edge of the panel', {
    from: 6,
    to: 40,
    help: 'Left out: half the width of the button and 2.',
  }),
  numberOf('Turn buttons', 'arm', 'Button, from pivot to tip', {
    from: 15,
    to: 80,
    help: 'Left out: reaches 10 over the panel.',
  }),
  choiceOf('Turn buttons', 'notch', 'Finger hold', {
    choices: { hole: 'Hole of 25 near the top', ring: 'Flush ring', none: 'None' },
  }),
];

/** What can be chosen for an access panel (joinery B14). */
export const accessPanelParameters: readonly ParameterInfo[] = [
  ...hole,
  ...cleats,
  ...buttons,
  materialRow('panel', 'Panel', 'either', { help: 'As the surround, grain running on.' }),
  materialRow('solid', 'Buttons and cleats', 'solid', { help: 'Hardwood.' }),
];
