import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { HatchSurroundParameters } from './types.ts';

const { numberOf, choiceOf } = rowsFor<keyof HatchSurroundParameters>('joinery B16');

/** What can be chosen for a hatch surround (joinery B16). */
export const hatchSurroundParameters: readonly ParameterInfo[] = [
  numberOf('Aperture', 'width', 'Width of the aperture', {
    from: 150,
    to: 1200,
    when: { fitted: false },
  }),
  numberOf('Aperture', 'height', 'Height of the aperture', { from: 150, to: 1200, when: { fitted: false } }),
  numberOf('Aperture', 'cornerRadius', 'Corner radius of the aperture', {
    usual: 70,
    from: 20,
    to: 300,
    help: 'Measured at each corner, with a coin or a gauge; the largest.',
  }),
  {
    ...{ key: 'depths', label: 'Depth through deck and lining', type: 'lengths', group: 'Aperture' },
    ...{ help: 'At eight places round the aperture.', min: 5, max: 200, source: 'joinery B16' },
  },
  choiceOf('Ring', 'form', 'Ring', {
    choices: { segments: 'Straights and corner segments', 'one-piece': 'In one piece from a sheet' },
    help: 'One piece wastes most of its blank; other parts can come from the inside.',
  }),
  numberOf('Ring', 'segments', 'Segments in each corner', {
    usual: 2,
    from: 1,
    to: 6,
    type: 'whole',
    help: 'Two or more, or the grain runs out at the ends; with half-laps three unless you say else.',
  }),
  numberOf('Ring', 'ringWidth', 'Width of the ring', { usual: 45, from: 20, to: 150 }),
  numberOf('Ring', 'thickness', 'Thickness of the ring', {
    usual: 18,
    from: 9,
    to: 40,
    help: 'Left out: of a sheet as measured.',
  }),
  numberOf('Ring', 'reveal', 'Reveal', {
    usual: 5,
    from: 0,
    to: 20,
    help: 'How far the ring stands back from the edge of the aperture.',
  }),
  choiceOf('Ring', 'joint', 'Joints of the ring', {
    choices: {
      'loose-tenon': 'Loose tenons',
      'mitre-and-spline': 'Splines right across',
      'half-lap': 'Half-laps',
    },
    when: { key: 'form', is: ['segments'] },
    help: 'Half-laps lengthen the segments: take three or more in a corner. A scarf finds no room in a curve.',
  }),
  numberOf('Ring', 'tenonDepth', 'Tenon or spline, depth in each piece', {
    ...{ usual: 12, from: 8, to: 30 },
    when: { key: 'joint', is: ['loose-tenon', 'mitre-and-spline'] },
  }),
  numberOf('Ring', 'lapLength', 'Half-lap, length', {
    ...{ usual: 25, from: 15, to: 80 },
    when: { key: 'joint', is: ['half-lap'] },
  }),
  choiceOf('Lining', 'lining', 'Lining of the aperture', {
    choices: { solid: 'Boards, and bent corners of thin plies', none: 'None' },
  }),
  numberOf('Lining', 'liningThickness', 'Thickness of the lining', { usual: 9, from: 4, to: 20 }),
  materialRow('ring', 'Ring', 'either'),
  materialRow('lining', 'Lining', 'either', { help: 'Left out: as the ring.', required: false }),
];
