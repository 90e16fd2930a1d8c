import type { DoorFrameParameters, FrameCorner } from './types.ts';
import { materialRow } from '../parameter-rows.ts';
import type { AskedWhen, ParameterInfo } from '../piece-types.ts';

type Ungrouped = Omit<ParameterInfo, 'group'>;

const inGroup = (group: string, infos: readonly Ungrouped[]): readonly ParameterInfo[] =>
  infos.map((info) => ({ ...info, group }));

const lengthOf = (
  key: keyof DoorFrameParameters,
  label: string,
  range: readonly [usual: number, min: number, max: number],
  help = '',
): Ungrouped => ({
  key,
  label,
  help,
  type: 'length',
  default: range[0],
  min: range[1],
  max: range[2],
  source: 'joinery B1',
});

const choiceOf = (
  key: keyof DoorFrameParameters,
  label: string,
  choices: Readonly<Record<string, string>>,
  help = '',
): Ungrouped => ({
  key,
  label,
  help,
  type: 'choice',
  default: Object.keys(choices)[0] ?? '',
  choices: Object.entries(choices).map(([value, name]) => ({ value, label: name })),
  source: 'joinery B1',
});

const yesNo = (key: keyof DoorFrameParameters, label: string, help = ''): Ungrouped => ({
  key,
  label,
  help,
  type: 'yes-no',
  default: false,
  source: 'joinery B1',
});

const corners: Readonly<Record<FrameCorner, string>> = {
  rebate: 'Rebate: the jamb stands in a step of the head',
  tongue: 'Tongue on the jamb, trench in the head',
  'housing-over': 'Housing: the jamb in a trench of the head',
  'housing-between': 'Housing: the head in trenches of the jambs',
  dowel: 'Dowels: the head between the jambs (deep linings)',
  'loose-tenon': 'Loose tenon: the head between the jambs (deep linings)',
  'half-lap': 'Half-lap (flat frame)',
  bridle: 'Bridle (flat frame)',
  mitre: 'Mitre with spline (flat frame)',
  butt: 'Butt and screw',
};

const fit = [
  choiceOf('mode', 'How it follows the opening', {
    auto: 'As the covers allow',
    square: 'Square, gaps packed and covered',
    fitted: 'Fitted to the opening',
  }),
  choiceOf(
    'datum',
    'What counts as upright',
    {
      mean: 'Mean of both sides',
      left: 'The left side',
      right: 'The right side',
      boat: "The boat's vertical",
    },
    'The line the eye compares the frame with.',
  ),
  lengthOf('packingSides', 'Packing each side', [5, 3, 10]),
  lengthOf('packingHead', 'Packing above the head', [5, 3, 10]),
  lengthOf('packingSill', 'Packing under the sill', [0, 0, 10], '0 where bedded.'),
  lengthOf(
    'bulkheadMax',
    'Bulkhead thickness, thickest',
    [18, 6, 120],
    'Of six points, caliper, bare faces.',
  ),
  lengthOf('bulkheadMin', 'Bulkhead thickness, thinnest', [18, 6, 120]),
];

const members = [
  lengthOf(
    'jambThickness',
    'Jamb thickness',
    [20, 15, 90],
    'Flat frames: its width seen from the front. 15 to 30 for a lining.',
  ),
  lengthOf('headThickness', 'Head thickness', [20, 15, 90]),
  yesNo('sill', 'Timber sill', 'Jambs stand on it.'),
  lengthOf('sillThickness', 'Sill thickness', [20, 15, 90]),
  lengthOf('sillNosing', 'Sill nosing', [20, 0, 40], 'Beyond the lining on the near side.'),
  choiceOf('sillJoint', 'Jambs on the sill', {
    tongue: 'Tongue 7 into the sill',
    butt: 'Butt and screw',
  }),
];

const joint = [
  choiceOf('corner', 'Joint of jamb and head', corners),
  lengthOf('jointDepth', 'Depth of the joint', [10, 5, 45], 'Rebate: half the head. Housing and tongue: 7.'),
  lengthOf('tongueThickness', 'Tongue thickness', [8, 5, 15], '0.4 of the jamb.'),
  lengthOf('horn', 'Wood beyond a housing', [15, 15, 60], 'Head past the jamb, or jamb past the head.'),
];

const doorAndStop = [
  choiceOf('stop', 'Door stop', {
    planted: 'Planted strip',
    rebated: 'Rebate in the lining',
    cover: 'The cover on the far face',
    none: 'None',
  }),
  lengthOf('stopThickness', 'Stop thickness', [12, 8, 20], 'How far it stands in.'),
  lengthOf('stopRebate', 'Rebate for the door', [12, 10, 15]),
  lengthOf('doorThickness', 'Door thickness', [18, 10, 45]),
  lengthOf('doorGapSide', 'Door gap, sides', [3, 2, 12]),
  lengthOf('doorGapTop', 'Door gap, top', [3, 2, 12]),
  lengthOf('doorGapBottom', 'Door gap, bottom', [10, 2, 12], '3 above a sill, 10 without one for air.'),
];

const covers = [
  choiceOf('covers', 'Cover mouldings', {
    both: 'Both faces',
    near: 'Near face',
    far: 'Far face',
    none: 'None',
  }),
  lengthOf('coverWidth', 'Cover width', [45, 30, 120]),
  lengthOf('coverThickness', 'Cover thickness', [12, 6, 25]),
  lengthOf('reveal', 'Reveal', [5, 0, 12], 'Edge of the lining left to be seen.'),
];

const infill: readonly Ungrouped[] = [
  yesNo('infill', 'Panel above the head', 'Where the opening runs on to the deckhead.'),
  {
    key: 'infillOrdinates',
    label: 'Heights above the head',
    help: 'From the top of the head to the deckhead, left to right at equal steps.',
    type: 'lengths',
    min: 30,
    max: 600,
    source: 'joinery B1',
  },
];

const withSill: AskedWhen = { key: 'sill', is: [true] };
const covered: AskedWhen = { key: 'covers', is: ['both', 'near', 'far'] };

/** What is asked only when another choice calls for it. */
const asked: Readonly<Partial<Record<keyof DoorFrameParameters, AskedWhen>>> = {
  sillThickness: withSill,
  sillNosing: withSill,
  sillJoint: withSill,
  horn: { key: 'corner', is: ['housing-over', 'housing-between'] },
  stopThickness: { key: 'stop', is: ['planted'] },
  stopRebate: { key: 'stop', is: ['rebated'] },
  coverWidth: covered,
  coverThickness: covered,
  infillOrdinates: { key: 'infill', is: [true] },
};

const table: readonly ParameterInfo[] = [
  ...inGroup('Fit', fit),
  ...inGroup('Members', members),
  ...inGroup('Corner joint', joint),
  ...inGroup('Door and stop', doorAndStop),
  ...inGroup('Covers', covers),
  ...inGroup('Infill', infill),
  materialRow('frame', 'Frame', 'solid'),
  materialRow('covers', 'Covers', 'solid', { help: 'Left out: as the frame.', required: false }),
  materialRow('infill', 'Infill panel', 'either', { required: false }),
];

/** What can be chosen for a door frame (joinery B1). */
export const doorFrameParameters: readonly ParameterInfo[] = table.map((info) => {
  const when = asked[info.key as keyof DoorFrameParameters];
  return when ? { ...info, when } : info;
});
