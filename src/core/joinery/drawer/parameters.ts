import { cellRows } from '../front-cell.ts';
import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { DrawerCorner, DrawerParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof DrawerParameters>('joinery B5');

const corners: Readonly<Record<DrawerCorner, string>> = {
  box: 'Box joint',
  'through-dovetail': 'Through dovetail',
  'lapped-dovetail': 'Lapped dovetail front, through dovetail back',
  rebate: 'Rebated front and back',
  'housed-back': 'Rebated front, back housed in the sides',
  'lock-rebate': 'Lock rebate',
  butt: 'Butt and screw',
};

const opening = [
  ...cellRows,
  numberOf('Opening', 'openingWidth', 'Opening width', {
    from: 60,
    to: 1200,
    help: 'The smallest of three depths; in a front: as its opening unless entered.',
  }),
  numberOf('Opening', 'openingHeight', 'Opening height', {
    from: 40,
    to: 600,
    help: 'The smallest of three; in a front: as its opening unless entered.',
  }),
  numberOf('Opening', 'clearDepth', 'Clear depth', {
    from: 100,
    to: 1000,
    help: 'From the face of the opening, free of hull and pipes.',
    required: true,
  }),
  numberOf('Opening', 'heightAbove', 'Opening above the level of the hull', {
    usual: 0,
    from: 0,
    to: 2500,
    help: 'From the level that the sections were measured from; used with a shape of the hull.',
  }),
  numberOf('Opening', 'openingVariation', 'Width varies by', {
    usual: 0,
    from: 0,
    to: 10,
    help: 'Largest less smallest width over the depth.',
  }),
  numberOf('Opening', 'railDepth', 'Rail under it, front to back', { usual: 20, from: 10, to: 60 }),
];

const box = [
  numberOf('Box', 'sideThickness', 'Side thickness', {
    usual: 12,
    from: 9,
    to: 25,
    help: 'Sheet: its measured thickness. 12 or more for sides over 450 long.',
  }),
  numberOf('Box', 'frontThickness', 'Box front thickness', { usual: 12, from: 9, to: 30 }),
  numberOf('Box', 'backThickness', 'Back thickness', { usual: 12, from: 9, to: 25 }),
  numberOf('Box', 'bottomThickness', 'Bottom thickness', {
    usual: 6,
    from: 3,
    to: 15,
    help: '4 up to 300 wide, 6 up to 500, 9 beyond. Measured.',
  }),
  choiceOf('Box', 'corner', 'Corners', { choices: corners }),
  choiceOf('Box', 'bottomStyle', 'Bottom', {
    choices: {
      captured: 'In grooves all round',
      'slides-under-back': 'Slides in under the back',
    },
  }),
  numberOf('Box', 'grooveDepth', 'Groove depth', {
    usual: 6,
    from: 3,
    to: 12,
    help: 'At most half the side; 5 stay behind it.',
  }),
  numberOf('Box', 'grooveUp', 'Groove above the lower edge', {
    usual: 12,
    from: 8,
    to: 40,
    help: 'Over a notch: its depth and 8 more.',
  }),
];

const running = [
  choiceOf('Runners', 'runner', 'How it runs', {
    choices: {
      'bottom-notch': 'On runners, lift and slide notch',
      bottom: 'On runners',
      'side-rail': 'On side rails in grooves',
      metal: 'On metal side runners',
    },
  }),
  numberOf('Runners', 'runnerLength', 'Runner length', {
    from: 100,
    to: 900,
    help: 'Left out: the longest multiple of 50 that fits.',
  }),
  numberOf('Runners', 'notch', 'Lift', {
    usual: 10,
    from: 6,
    to: 15,
    help: 'How far the drawer is lifted to open.',
  }),
];

const front = [
  choiceOf('Front', 'front', 'False front', {
    choices: {
      overlay: 'Over the frame',
      inset: 'In the opening',
      none: 'None',
    },
  }),
  numberOf('Front', 'overlay', 'Overlay', { usual: 8, from: 4, to: 30, help: 'Each side.' }),
  numberOf('Front', 'insetGap', 'Gap round an inset front', { usual: 2, from: 2, to: 15 }),
  numberOf('Front', 'setback', 'Box set back', {
    usual: 0,
    from: 0,
    to: 40,
    when: { key: 'front', is: ['none'] },
    help: 'By the thickness of a front that stands in the opening and that another piece makes; in a front: as its fronts.',
  }),
  numberOf('Front', 'falseFrontThickness', 'False front thickness', {
    usual: 18,
    from: 9,
    to: 30,
    help: 'Sheet: its measured thickness.',
  }),
];

/** What can be chosen for a drawer (joinery B5). */
export const drawerParameters: readonly ParameterInfo[] = [
  ...opening,
  ...running,
  ...box,
  ...front,
  {
    key: 'count',
    label: 'How many alike',
    help: 'Identical drawers.',
    type: 'whole',
    group: 'Front',
    default: 1,
    min: 1,
    max: 20,
    source: 'joinery B5',
  },
  materialRow('box', 'Sides, box front, back', 'either'),
  materialRow('bottom', 'Bottom', 'sheet', { help: 'Plywood: solid timber would swell the box apart.' }),
  materialRow('front', 'False front', 'either', { help: 'Left out: as the box.', required: false }),
  materialRow('runners', 'Runners, kickers, guides', 'solid', {
    help: 'Hard and straight; left out: as the box.',
    required: false,
  }),
];
