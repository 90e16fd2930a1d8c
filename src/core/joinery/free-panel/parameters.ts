import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { FreePanelParameters } from './types.ts';

const source = 'joinery A11, D3';
const { numberOf, choiceOf } = rowsFor<keyof FreePanelParameters>(source);

const list = (
  group: string,
  key: keyof FreePanelParameters,
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

/** What can be chosen for a free panel. */
export const freePanelParameters: readonly ParameterInfo[] = [
  numberOf('Outline', 'width', 'Width of the opening', {
    from: 20,
    to: 2500,
    when: { fitted: false },
  }),
  numberOf('Outline', 'height', 'Height of the opening', { from: 20, to: 2500, when: { fitted: false } }),
  list('Outline', 'corners', 'Corners, x and y in turn', {
    type: 'lengths',
    most: 5000,
    help: 'Counter-clockwise from the lower left, in place of width and height.',
    when: { fitted: false },
  }),
  numberOf('Outline', 'gap', 'Gap, each side', { usual: 2, from: 0, to: 20 }),
  list('Outline', 'gaps', 'Gap of each side', {
    type: 'lengths',
    most: 50,
    help: 'In order counter-clockwise from the bottom one, where they differ.',
  }),
  numberOf('Outline', 'radius', 'Corner radius', { usual: 0, from: 0, to: 400 }),
  list('Outline', 'radii', 'Radius of each corner', {
    type: 'lengths',
    most: 1000,
    help: 'In order, the first where the first side begins.',
  }),
  list('Holes', 'holes', 'Round holes: x, y and diameter in turn', {
    type: 'lengths',
    most: 5000,
    help: 'Middle of each, from the lower left of the panel.',
  }),
  list('Holes', 'cutouts', 'Cut-outs: x, y, width and height in turn', {
    type: 'lengths',
    most: 5000,
    help: 'Lower left corner of each, from the lower left of the panel.',
  }),
  numberOf('Holes', 'cutoutRadius', 'Corner radius of the cut-outs', {
    usual: 6,
    from: 0,
    to: 100,
    help: 'A square inner corner starts a crack; 3 or more.',
  }),
  list('Edges', 'lippedSides', 'Sides with a solid edge, by number', {
    type: 'numbers',
    most: 40,
    help: 'Counted counter-clockwise, 1 the bottom one.',
  }),
  list('Edges', 'scribedSides', 'Sides scribed on site, by number', {
    type: 'numbers',
    most: 40,
    help: 'They get wood left on.',
  }),
  numberOf('Edges', 'lipping', 'Solid edge', { usual: 8, from: 5, to: 15 }),
  numberOf('Edges', 'scribe', 'Left on to scribe', {
    from: 5,
    to: 25,
    help: 'Left out: what the survey asks for, 5 at least.',
  }),
  numberOf('Panel', 'thickness', 'Thickness', {
    usual: 18,
    from: 4,
    to: 40,
    help: 'Left out: of a sheet as measured.',
  }),
  choiceOf('Panel', 'grain', 'Grain', { choices: { up: 'Upright', across: 'Level', any: 'Any' } }),
  choiceOf('Panel', 'match', 'Figure of a solid panel', {
    choices: { plain: 'As the boards come', book: 'Opened like a book: leaves of one board, mirrored' },
  }),
  choiceOf('Panel', 'fixed', 'Held by', {
    choices: { screwed: 'Screws', glued: 'Glue', loose: 'Nothing, it lifts out' },
  }),
  materialRow('panel', 'Panel', 'either'),
  materialRow('lipping', 'Solid edges', 'solid', {
    help: 'Left out: the first solid timber.',
    required: false,
  }),
];
