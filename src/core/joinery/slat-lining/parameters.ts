import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { SlatLiningParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof SlatLiningParameters>('joinery B4');

const sizes: readonly ParameterInfo[] = [
  numberOf('Size', 'run', 'Along the slats', {
    from: 100,
    to: 6000,
    help: 'Left out: from the measured shape.',
  }),
  numberOf('Size', 'span', 'Across the slats', {
    from: 60,
    to: 4000,
    help: 'Clear, from side to side; on a curve measured round it. Left out: from the measured shape.',
  }),
  choiceOf('Size', 'direction', 'Slats run', {
    choices: { across: 'Across, one above the other', upright: 'Upright, side by side' },
  }),
];

const slats: readonly ParameterInfo[] = [
  numberOf('Slats', 'slatWidth', 'Slat, width', { usual: 45, from: 20, to: 70 }),
  numberOf('Slats', 'slatThickness', 'Slat, thickness', { usual: 10, from: 8, to: 20 }),
  numberOf('Slats', 'gap', 'Gap', { usual: 8, from: 4, to: 15 }),
  choiceOf('Slats', 'adjust', 'To come out even', {
    choices: { gap: 'Change the gap', slat: 'Change the width of the slats' },
    help: 'Change the slats where the gap must be that of other panels.',
  }),
  {
    key: 'endGaps',
    label: 'Gap at both ends too',
    help: 'Else the first and last slat touch the sides.',
    type: 'yes-no',
    group: 'Slats',
    default: true,
    source: 'joinery B4',
  },
];

const cleats: readonly ParameterInfo[] = [
  numberOf('Cleats', 'cleatWidth', 'Cleat, width', { usual: 30, from: 20, to: 60 }),
  numberOf('Cleats', 'cleatThickness', 'Cleat, thickness', { usual: 15, from: 10, to: 40 }),
  numberOf('Cleats', 'cleatSpacing', 'Cleats apart, at most', {
    usual: 400,
    from: 200,
    to: 400,
    help: 'Middle to middle.',
  }),
];

/** What can be chosen for a slatted lining (joinery B4). */
export const slatLiningParameters: readonly ParameterInfo[] = [
  ...sizes,
  ...slats,
  ...cleats,
  materialRow('slats', 'Slats', 'solid', { help: 'Straight grain along the slat.' }),
  materialRow('cleats', 'Cleats', 'solid', { help: 'Not seen.' }),
];
