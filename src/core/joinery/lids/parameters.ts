import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { LidsParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf } = rowsFor<keyof LidsParameters>('joinery B10');

const sizes: readonly ParameterInfo[] = [
  numberOf('Aperture', 'length', 'Aperture, length', {
    from: 200,
    to: 4000,
    help: 'Along the row of lids. Left out: from the measured shape.',
  }),
  numberOf('Aperture', 'width', 'Aperture, width', {
    from: 200,
    to: 1500,
    help: 'From front to back. Left out: from the measured shape.',
  }),
  numberOf('Aperture', 'gap', 'Gap', { usual: 3, from: 2, to: 6, help: 'All round each lid.' }),
  numberOf('Aperture', 'lids', 'Lids', {
    from: 1,
    to: 12,
    type: 'whole',
    help: 'Left out: one for each 650.',
  }),
];

const under: readonly ParameterInfo[] = [
  numberOf('Cleats and bearers', 'cleatWidth', 'Cleat, width', { usual: 20, from: 18, to: 45 }),
  numberOf('Cleats and bearers', 'cleatThickness', 'Cleat and bearer, depth', {
    usual: 20,
    from: 15,
    to: 45,
  }),
  numberOf('Cleats and bearers', 'bearerWidth', 'Cross bearer, width', {
    usual: 45,
    from: 35,
    to: 90,
    help: 'Under each joint of two lids.',
  }),
];

const holes: readonly ParameterInfo[] = [
  numberOf('Holes', 'holeDiameter', 'Finger hole', { usual: 28, from: 25, to: 32 }),
  numberOf('Holes', 'holeIn', 'Finger hole, middle from the front edge', { usual: 60, from: 40, to: 200 }),
  {
    key: 'vents',
    label: 'Vent holes',
    help: 'Under a mattress; they may not lie over a bearer.',
    type: 'yes-no',
    group: 'Holes',
    default: true,
    source: 'joinery B10',
  },
  numberOf('Holes', 'ventDiameter', 'Vent hole', { usual: 25, from: 15, to: 40, help: 'Edges rounded.' }),
  numberOf('Holes', 'ventPitch', 'Vent holes apart', { usual: 100, from: 60, to: 200 }),
];

/** What can be chosen for lids (joinery B10). */
export const lidsParameters: readonly ParameterInfo[] = [
  ...sizes,
  ...under,
  ...holes,
  materialRow('lids', 'Lids', 'sheet', { help: '12 up to a span of 600; face grain from cleat to cleat.' }),
  materialRow('cleats', 'Cleats', 'solid', { help: 'Also for bearers and their blocks.' }),
];
