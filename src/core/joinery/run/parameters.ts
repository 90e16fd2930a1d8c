import { cabinetFrontParameters } from '../cabinet-front/parameters.ts';
import { carcaseParameters } from '../carcase/parameters.ts';
import { countertopParameters } from '../countertop/parameters.ts';
import { drawerParameters } from '../drawer/parameters.ts';
import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { RunParameters } from './types.ts';

const source = 'joinery B5 to B9';
const { choiceOf } = rowsFor<keyof RunParameters>(source);

/** Rows of a member's own table. */
function pick(
  table: readonly ParameterInfo[],
  keys: readonly (keyof RunParameters)[],
): readonly ParameterInfo[] {
  return table.filter(({ key }) => (keys as readonly string[]).includes(key));
}

const hull = (key: 'hullHeights' | 'hullLeft' | 'hullRight', label: string, help: string): ParameterInfo => ({
  key,
  label,
  help,
  type: 'lengths',
  group: 'Hull',
  max: 3000,
  source: 'joinery B7',
});

const yes = (key: 'doorShelf' | 'top', label: string, help: string): ParameterInfo => ({
  key,
  label,
  help,
  type: 'yes-no',
  group: 'Inside',
  default: true,
  source,
});

const grid: readonly (keyof RunParameters)[] = [
  'width',
  'height',
  'columns',
  'rows',
  'topRail',
  'midRail',
  'bottomRail',
];
const front: readonly (keyof RunParameters)[] = [
  'thickness',
  'joint',
  'grading',
  'step',
  'ratio',
  'heights',
  'cells',
  'fronts',
  'gap',
  'overlay',
  'continuous',
];

/** Wide enough that the guides of drawers on both sides clear the ends of two carcases behind it. */
const stile = pick(cabinetFrontParameters, ['stileWidth']).map((info) => ({ ...info, default: 50 }));
const bays = pick(cabinetFrontParameters, grid).map((info) =>
  info.key === 'columns' ? { ...info, default: 3 } : info,
);

/** Where fronts stand in the openings there is no room to lift a drawer. */
const leftOut =
  'Left out: with lift and slide notch where fronts lie over the frame, on plain runners where they stand in it.';

const runners = pick(drawerParameters, ['runner']).map(({ group, label, choices = [] }) =>
  choiceOf(group, 'runner', label, {
    choices: Object.fromEntries(choices.map((one) => [one.value, one.label])),
    help: leftOut,
    noDefault: true,
  }),
);

/** What can be chosen for a run (joinery B5 to B9); rows of its members keep their names and limits. */
export const runParameters: readonly ParameterInfo[] = [
  ...bays,
  ...stile,
  ...pick(cabinetFrontParameters, front),
  hull('hullHeights', 'Heights of the ordinates', 'Not used when it is fitted to hull sections.'),
  hull('hullLeft', 'Depths at the left end', 'From the plane of the front to the bare hull.'),
  hull('hullRight', 'Depths at the right end', 'Left out: as at the left end.'),
  ...pick(carcaseParameters, ['foot', 'start', 'clearance', 'obstacles', 'load']),
  yes('doorShelf', 'A shelf behind each door', 'At half its height.'),
  ...runners,
  ...pick(cabinetFrontParameters, ['notch']).map((info) => ({
    ...info,
    help: 'Left out: 10; only with the lift and slide notch.',
    group: 'Runners',
  })),
  ...pick(drawerParameters, ['corner', 'bottomStyle']),
  choiceOf('Fronts', 'doors', 'Doors', { choices: { lipped: 'With solid lippings', plain: 'Plain sheet' } }),
  yes('top', 'A top', 'Over the front and all carcases.'),
  choiceOf('Inside', 'openEnds', 'Ends of the top that stand free', {
    choices: { none: 'None', left: 'Left', right: 'Right', both: 'Both' },
  }),
  ...pick(countertopParameters, [
    'overhang',
    'radius',
    'lipping',
    'fiddleHeight',
    'cutouts',
    'cutoutRadius',
    'bodyDepth',
  ]),
  materialRow('frame', 'Face frame, lippings, runners', 'solid'),
  materialRow('fronts', 'Doors and drawer fronts', 'sheet'),
  materialRow('panel', 'Ends and shelves', 'sheet'),
  materialRow('box', 'Drawer boxes', 'either'),
  materialRow('bottom', 'Drawer bottoms', 'sheet'),
  materialRow('top', 'Top', 'sheet', { required: false }),
];
