import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { DividersParameters } from './types.ts';

const source = 'joinery B15';
const { numberOf, choiceOf } = rowsFor<keyof DividersParameters>(source);

/** What can be chosen for dividers (joinery B15). */
export const dividersParameters: readonly ParameterInfo[] = [
  numberOf('Locker', 'insideWidth', 'Width inside', { from: 80, to: 2500, required: true }),
  numberOf('Locker', 'insideDepth', 'Depth inside', {
    from: 80,
    to: 1200,
    required: true,
    help: 'Front to back, the least of several.',
  }),
  numberOf('Locker', 'height', 'Height of the dividers', { usual: 120, from: 30, to: 500 }),
  choiceOf('Grid', 'form', 'Grid', { choices: { bins: 'For bins', cells: 'Equal cells' } }),
  numberOf('Grid', 'columns', 'Cells across', {
    usual: 4,
    from: 1,
    to: 20,
    type: 'whole',
    help: 'For equal cells.',
  }),
  numberOf('Grid', 'rows', 'Cells front to back', { usual: 2, from: 1, to: 20, type: 'whole' }),
  choiceOf('Grid', 'walls', 'Walls round it', {
    choices: {
      none: 'None: the locker itself',
      box: 'Tray with box joints',
      rebate: 'Tray with rebated corners',
      butt: 'Tray with butted corners, screwed',
    },
    help: 'A tray lifts out whole; its walls take their thickness from the cells.',
  }),
  numberOf('Bins', 'binLength', 'Bin, longer side of the rim', {
    usual: 400,
    from: 100,
    to: 800,
    help: 'Outside. Modules are 600 × 400, 400 × 300, 300 × 200, 200 × 150: measure the real ones.',
  }),
  numberOf('Bins', 'binWidth', 'Bin, shorter side of the rim', { usual: 300, from: 80, to: 600 }),
  numberOf('Bins', 'binHeight', 'Bin, height', { usual: 120, from: 30, to: 500 }),
  numberOf('Bins', 'binTaper', 'Base smaller than the rim, each side', { usual: 15, from: 0, to: 60 }),
  choiceOf('Bins', 'binWay', 'Bins lie', {
    choices: {
      auto: 'Whichever way holds more',
      'short-across': 'Shorter side across',
      'long-across': 'Longer side across',
    },
  }),
  numberOf('Bins', 'clearance', 'Room for a bin, in all', { usual: 6, from: 2, to: 20 }),
  numberOf('Bins', 'headroom', 'Free height from the floor', {
    from: 50,
    to: 2000,
    help: 'To lift a bin out: its height and 40.',
  }),
  numberOf('Bins', 'frontRoom', 'Free depth in front', {
    from: 0,
    to: 3000,
    help: 'To pull a bin out: its depth and 50.',
  }),
  {
    ...{ key: 'strips', label: 'Strips round the base of each bin', type: 'yes-no', group: 'Bins', source },
    ...{ default: true, help: 'They hold it when the boat heels.' },
  },
  materialRow('dividers', 'Dividers', 'sheet', { help: '5 to 9 thick.' }),
  materialRow('strips', 'Strips', 'solid', { help: 'Left out: the first solid timber.', required: false }),
];
