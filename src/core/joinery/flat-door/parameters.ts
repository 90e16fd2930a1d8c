import { doorLeafRows, doorLockRows } from '../hung-door/lock-rows.ts';
import { doorHingeRows, doorSizeRows, passageGaps } from '../hung-door/rows.ts';
import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { FlatDoorParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof FlatDoorParameters>('joinery B2');

const core: readonly ParameterInfo[] = [
  numberOf('Sheet and lippings', 'thickness', 'Thickness', {
    usual: 18,
    from: 9,
    to: 30,
    help: 'Left out: as measured. 18 for a passage or over 1200 high, 15 up to 0.4 m², 12 up to 0.15 m².',
  }),
  numberOf('Sheet and lippings', 'lipping', 'Lipping', {
    usual: 8,
    from: 5,
    to: 15,
    help: 'Of all edges unless said; a third of the thickness or more.',
  }),
  numberOf('Sheet and lippings', 'hingeLipping', 'Lipping, hinge edge', {
    from: 8,
    to: 30,
    help: 'Left out: as the others.',
  }),
  numberOf('Sheet and lippings', 'lockLipping', 'Lipping, lock edge', {
    from: 5,
    to: 30,
    help: 'Left out: as the others; 15 where a lock is let in.',
  }),
  choiceOf('Sheet and lippings', 'lipJoint', 'Corners of the lippings', {
    choices: {
      butt: 'Butt, the upright ones run through',
      mitre: 'Mitre',
      'corner-block': 'Solid block let into the corner',
    },
    help: 'A radius larger than the lipping takes blocks.',
  }),
  numberOf('Sheet and lippings', 'cornerRadius', 'Corner radius', {
    usual: 0,
    from: 0,
    to: 150,
    help: 'Up to the lipping just rounded; else 25 or more, with blocks.',
  }),
  numberOf('Sheet and lippings', 'bevelDegrees', 'Bevel of the leading edge', {
    usual: 2.5,
    from: 0,
    to: 4,
    type: 'number',
    help: 'Degrees; the back is the narrower face.',
  }),
  choiceOf('Sheet and lippings', 'battens', 'Battens on the back', {
    choices: { auto: 'Where the door is over 0.9 m²', always: 'Two', none: 'None' },
  }),
];

const slots: readonly ParameterInfo[] = [
  numberOf('Vent slots', 'slots', 'Slots in each band', {
    usual: 6,
    from: 0,
    to: 24,
    type: 'whole',
    help: 'One band at the top, one at the bottom; 0 for none.',
  }),
  choiceOf('Vent slots', 'slotsRun', 'Slots run', {
    choices: { upright: 'Upright, side by side', across: 'Across, one above the other' },
  }),
  numberOf('Vent slots', 'slotWidth', 'Slot width', { usual: 10, from: 6, to: 25 }),
  numberOf('Vent slots', 'slotLength', 'Slot length', { usual: 120, from: 20, to: 400 }),
  numberOf('Vent slots', 'slotZone', 'Width of the band', {
    usual: 190,
    from: 40,
    to: 800,
    help: 'Over all its slots, outside to outside.',
  }),
  numberOf('Vent slots', 'slotEdge', 'From the edge of the door to the band', {
    usual: 100,
    from: 60,
    to: 600,
  }),
];

const hardware: readonly ParameterInfo[] = doorHingeRows
  .filter(({ key }) => key !== 'bevelDegrees')
  .map((info) => (info.key === 'hingeLength' ? { ...info, default: 75 } : info));

/** What can be chosen for a flat door (joinery B2). */
export const flatDoorParameters: readonly ParameterInfo[] = [
  ...doorSizeRows(passageGaps),
  ...core,
  ...slots,
  ...hardware,
  ...doorLockRows,
  ...doorLeafRows,
  choiceOf('Two doors', 'figure', 'Figure of the sheet', {
    choices: { own: 'Each by itself', through: 'Runs on over both doors' },
    help: 'Both come out of one strip of one sheet, side by side in order; the door that opens first says so.',
    when: { key: 'leaf', is: ['first'] },
  }),
  materialRow('core', 'Sheet', 'sheet', { help: 'Both faces alike, or it warps.' }),
  materialRow('lipping', 'Lippings', 'solid', { help: 'Also for blocks and battens.' }),
];
