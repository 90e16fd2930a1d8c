import { endOnFaceChoices } from '../joints/end-on-face.ts';
import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { CarcaseParameters } from './types.ts';

const source = 'joinery B7';
const { numberOf, choiceOf } = rowsFor<keyof CarcaseParameters>(source);

const list = (
  group: string,
  key: keyof CarcaseParameters,
  label: string,
  row: Pick<ParameterInfo, 'help'> & { readonly most: number },
): ParameterInfo => ({ key, label, group, type: 'lengths', help: row.help, max: row.most, source });

const size = [
  numberOf('Size', 'width', 'Width', {
    from: 150,
    to: 3000,
    help: 'Over both ends. Left out: from the first to the last section.',
  }),
  numberOf('Size', 'height', 'Height of the ends', {
    from: 100,
    to: 2400,
    help: 'Left out: as high as the hull was measured.',
  }),
  numberOf('Size', 'foot', 'Foot above the level measured from', { usual: 0, from: 0, to: 1000 }),
  numberOf('Size', 'start', 'Left end from the first section', { usual: 0, from: 0, to: 6000 }),
  numberOf('Size', 'frontThickness', 'Front before it, thickness', {
    usual: 20,
    from: 0,
    to: 40,
    help: 'The face frame; 0 for none.',
  }),
];

const hull = [
  list('Hull', 'heights', 'Heights of the ordinates', {
    most: 3000,
    help: 'Rising, about every 100. Not used when it is fitted to hull sections.',
  }),
  list('Hull', 'left', 'Depths at the left end', {
    most: 3000,
    help: 'From the plane of the front to the bare hull, one for each height.',
  }),
  list('Hull', 'right', 'Depths at the right end', { most: 3000, help: 'Left out: as at the left end.' }),
  numberOf('Hull', 'clearance', 'Clear of the hull', {
    usual: 8,
    from: 5,
    to: 25,
    help: 'Square to it. 15 where it is insulated or sweats; a working hull must not hit a hard edge.',
  }),
  list('Hull', 'obstacles', 'In the way: depth from, to, height from, to', {
    most: 3000,
    help: 'Stringers and pipes all along, four numbers each; those of the shape are known.',
  }),
  choiceOf('Hull', 'endBack', 'Back edge of the ends', {
    choices: { square: 'Square, to the smaller face', bevelled: 'Bevelled to the hull' },
  }),
  choiceOf('Hull', 'shelfBack', 'Back edge of the shelves', {
    choices: { square: 'Square', bevelled: 'Bevelled to the hull' },
  }),
];

const inside = [
  list('Inside', 'shelves', 'Undersides of the shelves', {
    most: 3000,
    help: 'Heights from the level measured from, rising.',
  }),
  choiceOf('Inside', 'joint', 'Shelves to the ends', {
    choices: endOnFaceChoices,
    help: 'Dowels and loose tenons want ends and shelves of 15 or more, and go together with the ends.',
  }),
  numberOf('Inside', 'housing', 'Shelves go into the ends', {
    from: 0,
    to: 10,
    help: 'Left out: half the end, 6 at most. 0: they lie on their cleats.',
    when: { key: 'joint', is: ['housing'] },
  }),
  {
    key: 'cleats',
    label: 'Cleats under the shelves',
    help: 'At both ends.',
    type: 'yes-no',
    group: 'Inside',
    default: true,
    source,
  } satisfies ParameterInfo,
  numberOf('Inside', 'cleat', 'Cleat, square', { usual: 20, from: 12, to: 40 }),
  numberOf('Inside', 'railWidth', 'Top rails, width', { usual: 60, from: 30, to: 150 }),
  choiceOf('Inside', 'railJoint', 'Top rails to the ends', {
    choices: {
      butt: endOnFaceChoices.butt,
      rebate: 'Rebate, screwed and glued',
      dowel: endOnFaceChoices.dowel,
      'loose-tenon': endOnFaceChoices['loose-tenon'],
    },
  }),
  numberOf('Inside', 'thickness', 'End thickness', {
    usual: 12,
    from: 9,
    to: 25,
    help: 'Left out: of the sheet as measured.',
  }),
  numberOf('Inside', 'shelfThickness', 'Shelf thickness', {
    usual: 12,
    from: 6,
    to: 25,
    help: 'Left out: of the sheet as measured.',
  }),
  numberOf('Inside', 'load', 'Load on each shelf, kg', { usual: 10, from: 0, to: 100, type: 'number' }),
  numberOf('Inside', 'vents', 'Vent holes', {
    usual: 4,
    from: 0,
    to: 12,
    type: 'whole',
    help: 'Low and high in the ends by turns: a locker without air turns mouldy.',
  }),
  numberOf('Inside', 'ventDiameter', 'Vent diameter', { usual: 40, from: 15, to: 120 }),
];

/** What can be chosen for a carcase (joinery B7). */
export const carcaseParameters: readonly ParameterInfo[] = [
  ...size,
  ...hull,
  ...inside,
  materialRow('panel', 'Ends and rails', 'sheet'),
  materialRow('shelf', 'Shelves', 'sheet', { help: 'Left out: as the ends.', required: false }),
  materialRow('cleats', 'Cleats', 'solid', { help: 'Left out: the first solid timber.', required: false }),
];
