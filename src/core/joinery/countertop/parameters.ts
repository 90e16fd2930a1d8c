import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { CountertopParameters } from './types.ts';

const source = 'joinery B9';
const { numberOf } = rowsFor<keyof CountertopParameters>(source);

const list = (
  group: string,
  key: keyof CountertopParameters,
  label: string,
  row: Pick<ParameterInfo, 'type' | 'help' | 'when'> & { readonly most: number },
): ParameterInfo => ({
  key,
  label,
  group,
  type: row.type,
  help: row.help,
  max: row.most,
  source,
  ...(row.when && { when: row.when }),
});

const outline = [
  numberOf('Outline', 'width', 'Width', {
    from: 200,
    to: 3000,
    when: { fitted: false },
  }),
  numberOf('Outline', 'depth', 'Depth', { from: 150, to: 1500, when: { fitted: false } }),
  list('Outline', 'corners', 'Corners of what it covers, x and y in turn', {
    type: 'lengths',
    most: 5000,
    help: 'Seen from above, counter-clockwise from the left end of the front, in place of width and depth.',
    when: { fitted: false },
  }),
  list('Outline', 'openSides', 'Open sides, by number', {
    type: 'numbers',
    most: 40,
    help: 'Counted counter-clockwise, 1 the front. Left out: the front alone. The others stand against walls.',
  }),
  numberOf('Outline', 'overhang', 'Overhang of open sides', { usual: 15, from: 0, to: 60 }),
  numberOf('Outline', 'wallGap', 'Gap at the walls', { usual: 2, from: 0, to: 10 }),
  numberOf('Outline', 'radius', 'Radius of open corners', {
    usual: 40,
    from: 0,
    to: 300,
    help: 'At hip height 40 or more.',
  }),
  list('Outline', 'radii', 'Radius of each corner', {
    type: 'lengths',
    most: 1000,
    help: 'In order, the first where the front begins; in place of the one radius.',
  }),
];

const cutouts = [
  list('Cut-outs', 'cutouts', 'Middle x, y, body width, depth, flange width, depth', {
    type: 'lengths',
    most: 5000,
    help: 'Six numbers for each, from the lower left of the top; from the template of the appliance.',
  }),
  numberOf('Cut-outs', 'cutoutRadius', 'Corner radius', {
    usual: 60,
    from: 6,
    to: 150,
    help: 'Laminate cracks at sharp corners: 6 or more.',
  }),
  numberOf('Cut-outs', 'cutoutClearance', 'Clearance round the body', { usual: 2, from: 1, to: 10 }),
  numberOf('Cut-outs', 'bodyDepth', 'Bodies hang below the top', { usual: 180, from: 20, to: 600 }),
  numberOf('Cut-outs', 'doubler', 'Doubler, width', {
    usual: 60,
    from: 0,
    to: 120,
    help: 'Under the edges of the cut-outs; 0 for none.',
  }),
];

const edges = [
  numberOf('Edges', 'thickness', 'Thickness', {
    usual: 18,
    from: 9,
    to: 40,
    help: 'Left out: of the sheet as measured.',
  }),
  numberOf('Edges', 'lipping', 'Solid edge of open sides', { usual: 20, from: 0, to: 45 }),
  list('Edges', 'fiddleSides', 'Sides with a fiddle, by number', {
    type: 'numbers',
    most: 40,
    help: 'Left out: the front. A single 0 for none.',
  }),
  numberOf('Edges', 'fiddleHeight', 'Fiddle, height', {
    usual: 35,
    from: 15,
    to: 80,
    help: 'Counters 32 to 38.',
  }),
  numberOf('Edges', 'fiddleThickness', 'Fiddle, thickness', { usual: 15, from: 8, to: 30 }),
  numberOf('Edges', 'cornerOpen', 'Fiddle open at the corners', { usual: 40, from: 0, to: 150 }),
  list('Edges', 'supports', 'Held from below at', {
    type: 'lengths',
    most: 5000,
    help: 'Places along the front from the lower left. Left out: at its ends.',
  }),
  {
    key: 'railed',
    label: 'Rails under front and back',
    help: 'Then it spans from front to back only.',
    type: 'yes-no',
    group: 'Edges',
    default: false,
    source,
  } satisfies ParameterInfo,
  {
    key: 'laminate',
    label: 'Laminate on top, balancer below',
    help: '',
    type: 'yes-no',
    group: 'Edges',
    default: true,
    source,
  } satisfies ParameterInfo,
];

/** What can be chosen for a countertop (joinery B9). */
export const countertopParameters: readonly ParameterInfo[] = [
  ...outline,
  ...cutouts,
  ...edges,
  materialRow('top', 'Top', 'sheet'),
  materialRow('lipping', 'Solid edges and fiddles', 'solid', {
    help: 'Left out: the first solid timber.',
    required: false,
  }),
  materialRow('doubler', 'Doublers', 'sheet', { help: 'Left out: as the top.', required: false }),
];
