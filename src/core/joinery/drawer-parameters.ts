import type { DrawerCorner, DrawerParameters, ParameterInfo } from './types.ts';

type Key = keyof DrawerParameters;

const lengthOf = (
  group: string,
  key: Key,
  label: string,
  range: readonly [usual: number | undefined, min: number, max: number],
  help = '',
): ParameterInfo => ({
  key,
  label,
  help,
  type: 'length',
  group,
  ...(range[0] !== undefined && { default: range[0] }),
  min: range[1],
  max: range[2],
  source: 'joinery B5',
});

const choiceOf = (
  group: string,
  key: Key,
  label: string,
  choices: Readonly<Record<string, string>>,
  help = '',
): ParameterInfo => ({
  key,
  label,
  help,
  type: 'choice',
  group,
  default: Object.keys(choices)[0] ?? '',
  choices: Object.entries(choices).map(([value, name]) => ({ value, label: name })),
  source: 'joinery B5',
});

const material = (
  key: keyof DrawerParameters['materials'],
  label: string,
  help: string,
  kind: 'sheet' | 'solid' | 'either',
): ParameterInfo => ({
  key: `materials.${key}`,
  label,
  help,
  type: 'material',
  group: 'Material',
  materialKind: kind,
  required: key === 'box' || key === 'bottom',
});

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
  lengthOf('Opening', 'openingWidth', 'Opening width', [undefined, 60, 1200], 'The smallest of three depths.'),
  lengthOf('Opening', 'openingHeight', 'Opening height', [undefined, 40, 600], 'The smallest of three.'),
  lengthOf('Opening', 'clearDepth', 'Clear depth', [undefined, 100, 1000], 'From the face of the opening, free of hull and pipes.'),
  lengthOf('Opening', 'openingVariation', 'Width varies by', [0, 0, 10], 'Largest less smallest width over the depth.'),
  lengthOf('Opening', 'railDepth', 'Rail under it, front to back', [20, 10, 60]),
].map((info) =>
  info.default === undefined ? { ...info, required: true } : info,
);

const box = [
  lengthOf('Box', 'sideThickness', 'Side thickness', [12, 9, 25], 'Sheet: its measured thickness. 12 or more for sides over 450 long.'),
  lengthOf('Box', 'frontThickness', 'Box front thickness', [12, 9, 30]),
  lengthOf('Box', 'backThickness', 'Back thickness', [12, 9, 25]),
  lengthOf('Box', 'bottomThickness', 'Bottom thickness', [6, 3, 15], '4 up to 300 wide, 6 up to 500, 9 beyond. Measured.'),
  choiceOf('Box', 'corner', 'Corners', corners),
  choiceOf('Box', 'bottomStyle', 'Bottom', {
    captured: 'In grooves all round',
    'slides-under-back': 'Slides in under the back',
  }),
  lengthOf('Box', 'grooveDepth', 'Groove depth', [6, 3, 12], 'At most half the side; 5 stay behind it.'),
  lengthOf('Box', 'grooveUp', 'Groove above the lower edge', [12, 8, 40], 'Over a notch: its depth and 8 more.'),
];

const running = [
  choiceOf('Runners', 'runner', 'How it runs', {
    'bottom-notch': 'On runners, lift and slide notch',
    bottom: 'On runners',
    'side-rail': 'On side rails in grooves',
    metal: 'On metal side runners',
  }),
  lengthOf('Runners', 'runnerLength', 'Runner length', [undefined, 100, 900], 'Left out: the longest multiple of 50 that fits.'),
  lengthOf('Runners', 'notch', 'Lift', [10, 6, 15], 'How far the drawer is lifted to open.'),
];

const front = [
  choiceOf('Front', 'front', 'False front', { overlay: 'Over the frame', inset: 'In the opening', none: 'None' }),
  lengthOf('Front', 'overlay', 'Overlay', [8, 4, 30], 'Each side.'),
  lengthOf('Front', 'insetGap', 'Gap round an inset front', [2, 2, 15]),
  lengthOf('Front', 'falseFrontThickness', 'False front thickness', [18, 9, 30], 'Sheet: its measured thickness.'),
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
  material('box', 'Sides, box front, back', '', 'either'),
  material('bottom', 'Bottom', 'Plywood: solid timber would swell the box apart.', 'sheet'),
  material('front', 'False front', 'Left out: as the box.', 'either'),
  material('runners', 'Runners, kickers, guides', 'Hard and straight; left out: as the box.', 'solid'),
];
