import { doorLeafRows, doorLockRows } from '../hung-door/lock-rows.ts';
import { doorHingeRows, doorSizeRows, lockerGaps } from '../hung-door/rows.ts';
import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { LouvredDoorParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof LouvredDoorParameters>('joinery B4');

const frame: readonly ParameterInfo[] = [
  numberOf('Frame', 'thickness', 'Thickness', { usual: 22, from: 18, to: 35 }),
  numberOf('Frame', 'stile', 'Stiles', { usual: 55, from: 40, to: 120 }),
  numberOf('Frame', 'topRail', 'Top rail', { usual: 55, from: 40, to: 150 }),
  numberOf('Frame', 'bottomRail', 'Bottom rail', { usual: 75, from: 40, to: 200 }),
  numberOf('Frame', 'midRails', 'Mid rails', {
    usual: 0,
    from: 0,
    to: 3,
    type: 'whole',
    help: 'They part the slats into even fields and keep the stiles together: one in a door over 1200 high.',
  }),
  numberOf('Frame', 'midRail', 'Width of mid rails', {
    usual: 55,
    from: 40,
    to: 150,
    when: { key: 'midRails', is: [1, 2, 3] },
  }),
  choiceOf('Frame', 'joint', 'Corners', {
    choices: { 'stub-tenon': 'Stub mortise and tenon', 'loose-tenon': 'Loose tenon' },
  }),
  numberOf('Frame', 'tenon', 'Tenon, reach', {
    from: 15,
    to: 60,
    help: 'Left out: half of the stile. Also how deep a loose tenon goes into each part.',
  }),
];

const slats: readonly ParameterInfo[] = [
  choiceOf('Slats', 'section', 'Edges of the slats', {
    choices: { square: 'Square', flush: 'Bevelled flush with both faces' },
  }),
  numberOf('Slats', 'angleDegrees', 'Angle from the plane of the door', {
    usual: 40,
    from: 20,
    to: 60,
    type: 'number',
    help: 'Degrees; 35 to 45 lets enough air through.',
  }),
  numberOf('Slats', 'slatThickness', 'Slat, thickness', { usual: 7, from: 5, to: 12 }),
  numberOf('Slats', 'slatWidth', 'Slat, width', {
    from: 12,
    to: 80,
    help: 'Left out: as wide as goes into the thickness of the door.',
  }),
  numberOf('Slats', 'setback', 'Slats behind each face', { usual: 0, from: 0, to: 8 }),
  numberOf('Slats', 'overlap', 'Overlap, at least', {
    usual: 3,
    from: 0,
    to: 20,
    help: '0 or more: nobody sees through.',
  }),
  numberOf('Slats', 'slats', 'Slats in a field', {
    from: 2,
    to: 100,
    type: 'whole',
    help: 'Left out: as many as the overlap asks for. Fewer let more air through, and eyes.',
  }),
  numberOf('Slats', 'housing', 'Housing, depth', { usual: 6, from: 5, to: 8 }),
];

/** What can be chosen for a louvred door (joinery B4). */
export const louvredDoorParameters: readonly ParameterInfo[] = [
  ...doorSizeRows(lockerGaps),
  ...frame,
  ...slats,
  ...doorHingeRows,
  ...doorLockRows,
  ...doorLeafRows,
  materialRow('frame', 'Frame', 'solid', { help: 'All members of one thickness, from one setting.' }),
  materialRow('slats', 'Slats', 'solid', { help: 'Straight grain; all ripped at one setting.' }),
];
