import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { CabinetFrontParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof CabinetFrontParameters>('joinery B6');

const whole = 'whole' as const;

const frame = [
  numberOf('Size', 'width', 'Width', {
    from: 100,
    to: 3000,
    when: { fitted: false },
  }),
  numberOf('Size', 'height', 'Height', {
    from: 100,
    to: 2400,
    when: { fitted: false },
  }),
  numberOf('Size', 'fittingGap', 'Gap round it in the opening', { usual: 2, from: 0, to: 10 }),
  numberOf('Size', 'scribe', 'Left on for scribing', {
    usual: 0,
    from: 0,
    to: 25,
    help: 'On the outer edge of both outer stiles; 0 for a gap instead.',
  }),
  numberOf('Frame', 'columns', 'Openings side by side', { usual: 1, from: 1, to: 8, type: whole }),
  numberOf('Frame', 'rows', 'Openings one above the other', { usual: 4, from: 1, to: 10, type: whole }),
  numberOf('Frame', 'stileWidth', 'Stiles, width', { usual: 40, from: 25, to: 90 }),
  numberOf('Frame', 'topRail', 'Top rail, width', { usual: 35, from: 20, to: 150 }),
  numberOf('Frame', 'midRail', 'Rails between, width', { usual: 30, from: 18, to: 90 }),
  numberOf('Frame', 'bottomRail', 'Bottom rail, width', { usual: 45, from: 20, to: 200 }),
  numberOf('Frame', 'thickness', 'Thickness', { usual: 20, from: 15, to: 32 }),
  choiceOf('Frame', 'joint', 'Joints', {
    choices: {
      'loose-tenon': 'Loose tenon',
      'stub-tenon': 'Stub mortise and tenon',
      'half-lap': 'Half-lap',
      dowel: 'Dowels',
      butt: 'Butt, pocket screws from behind',
    },
  }),
  numberOf('Frame', 'jointLength', 'Joint reaches into the stile', {
    from: 6,
    to: 60,
    help: 'Left out: six tenths of the stile; loose tenons at most 25.',
  }),
];

const heights = [
  choiceOf('Heights', 'grading', 'Heights of the openings', {
    choices: {
      equal: 'All equal',
      arithmetic: 'Each higher by the same step',
      geometric: 'Each higher by the same ratio',
      given: 'As entered',
    },
  }),
  numberOf('Heights', 'step', 'Step', {
    usual: 15,
    from: 0,
    to: 40,
    help: 'Each lower opening is higher by this.',
  }),
  numberOf('Heights', 'ratio', 'Ratio', { usual: 1.12, from: 1, to: 1.35, type: 'number' }),
  {
    key: 'heights',
    label: 'Heights from the top',
    help: 'The bottom one takes what is left.',
    type: 'lengths',
    group: 'Heights',
    min: 30,
    max: 2000,
    source: 'joinery B6',
  } satisfies ParameterInfo,
];

const fronts = [
  {
    key: 'cells',
    label: 'What closes the openings',
    help: 'Rows from the top, each from left to right: drawer, door or open.',
    type: 'cells',
    group: 'Fronts',
    source: 'joinery B6',
  } satisfies ParameterInfo,
  choiceOf('Fronts', 'fronts', 'Fronts', {
    choices: { overlay: 'Over the frame', inset: 'In the openings' },
  }),
  numberOf('Fronts', 'overlay', 'Overlay each side', { usual: 8, from: 3, to: 30 }),
  numberOf('Fronts', 'gap', 'Least gap', {
    usual: 2,
    from: 2,
    to: 15,
    help: 'Round inset fronts; between fronts that overlay.',
  }),
  numberOf('Fronts', 'frontThickness', 'Front thickness', {
    usual: 18,
    from: 9,
    to: 30,
    help: 'Sheet: its measured thickness.',
  }),
  numberOf('Fronts', 'notch', 'Lift of the drawers', {
    from: 0,
    to: 15,
    help: '0 where drawers are held by a latch. Left out: 10 over the frame, 0 in the openings.',
  }),
  choiceOf('Figure', 'grain', 'Grain of the fronts', {
    choices: { horizontal: 'Along the width', vertical: 'Up and down' },
    help: 'Left out: drawers along the width, doors up and down.',
    noDefault: true,
  }),
  choiceOf('Figure', 'continuous', 'Figure runs through', {
    choices: {
      none: 'No',
      tight: 'Cut close: it slips a little at each joint',
      true: 'Truly: what the gaps hide is thrown away',
    },
  }),
  numberOf('Figure', 'kerf', 'Kerf of the saw', { usual: 3, from: 0.8, to: 5 }),
];

/** What can be chosen for a cabinet front (joinery B6). */
export const cabinetFrontParameters: readonly ParameterInfo[] = [
  ...frame,
  ...heights,
  ...fronts,
  materialRow('frame', 'Frame', 'solid'),
  materialRow('fronts', 'Fronts', 'either'),
];
