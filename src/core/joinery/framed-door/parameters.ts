import { doorLeafRows, doorLockRows } from '../hung-door/lock-rows.ts';
import { doorHingeRows, doorSizeRows, lockerGaps } from '../hung-door/rows.ts';
import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { FramedDoorParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof FramedDoorParameters>('joinery B3');

const frame: readonly ParameterInfo[] = [
  numberOf('Frame', 'thickness', 'Thickness', { usual: 20, from: 16, to: 28 }),
  numberOf('Frame', 'stile', 'Stiles', { usual: 55, from: 40, to: 120 }),
  numberOf('Frame', 'topRail', 'Top rail', { usual: 55, from: 40, to: 150 }),
  numberOf('Frame', 'bottomRail', 'Bottom rail', {
    usual: 75,
    from: 40,
    to: 200,
    help: 'As wide as the top rail or wider.',
  }),
  numberOf('Frame', 'midRails', 'Mid rails', { usual: 0, from: 0, to: 3, type: 'whole' }),
  numberOf('Frame', 'midRail', 'Width of mid rails and mid stiles', { usual: 55, from: 40, to: 150 }),
  choiceOf('Frame', 'midStile', 'Mid stile', {
    choices: { auto: 'Where the door is over 600 wide', none: 'None', one: 'One' },
  }),
];

const joint: readonly ParameterInfo[] = [
  choiceOf('Joints', 'joint', 'Corners', {
    choices: {
      'haunched-tenon': 'Haunched mortise and tenon',
      'through-tenon': 'Through mortise and tenon, haunched',
      'stub-tenon': 'Stub mortise and tenon',
      'groove-tongue': 'Stub tongue in the groove',
      bridle: 'Bridle',
      'scribed-moulding': 'Scribed moulding (cope and stick)',
      'loose-tenon': 'Loose tenon',
      dowel: 'Dowels',
      'half-lap': 'Half-lap',
    },
    help: 'Left out: mortise and tenon over 0.25 m², else a tongue in the groove.',
    noDefault: true,
  }),
  numberOf('Joints', 'tenon', 'Tenon, reach', {
    from: 10,
    to: 60,
    help: 'Left out: 0.6 of the stile. Also how deep a loose tenon goes into each part.',
  }),
  numberOf('Joints', 'grooveDepth', 'Groove, depth', {
    usual: 10,
    from: 8,
    to: 15,
    help: 'A quarter of the stile at most.',
  }),
];

const panel: readonly ParameterInfo[] = [
  numberOf('Panel', 'panelThickness', 'Solid panel, thickness', {
    usual: 8,
    from: 5,
    to: 20,
    help: 'Of a sheet: as measured.',
  }),
  numberOf('Panel', 'panelEdge', 'Solid panel, thickness in the groove', { usual: 6, from: 4, to: 12 }),
  numberOf('Panel', 'panelMargin', 'Solid panel, reduced this far in from its edge', {
    usual: 25,
    from: 12,
    to: 80,
  }),
  numberOf('Panel', 'panelGap', 'Room to swell at each side', {
    from: 0,
    to: 10,
    help: 'Left out: by the timber and its moisture.',
  }),
  choiceOf('Panel', 'panelMatch', 'Figure of a solid panel', {
    choices: { plain: 'As the boards come', book: 'Opened like a book: leaves of one board, mirrored' },
  }),
  {
    key: 'panelGlued',
    label: 'Panel glued in',
    help: 'Only a sheet may be glued into its groove.',
    type: 'yes-no',
    group: 'Panel',
    default: false,
    source: 'joinery B3.6',
  },
];

/** What can be chosen for a framed door (joinery B3). */
export const framedDoorParameters: readonly ParameterInfo[] = [
  ...doorSizeRows(lockerGaps),
  ...frame,
  ...joint,
  ...panel,
  ...doorHingeRows,
  ...doorLockRows,
  ...doorLeafRows,
  materialRow('frame', 'Frame', 'solid', { help: 'All members of one thickness, from one setting.' }),
  materialRow('panel', 'Panel', 'either', { help: 'A sheet of 6, or solid timber, raised.' }),
];
