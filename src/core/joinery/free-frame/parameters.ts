import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { FreeFrameParameters } from './types.ts';

const source = 'joinery B1';
const { numberOf, choiceOf } = rowsFor<keyof FreeFrameParameters>(source);

const list = (group: string, key: keyof FreeFrameParameters, label: string, help: string): ParameterInfo => ({
  ...{ key, label, group, help, source, type: 'lengths', max: 5000 },
});

/** What can be chosen for a free frame. */
export const freeFrameParameters: readonly ParameterInfo[] = [
  numberOf('Outline', 'width', 'Width of the opening', {
    from: 60,
    to: 3000,
    when: { fitted: false },
  }),
  numberOf('Outline', 'height', 'Height of the opening', { from: 60, to: 3000, when: { fitted: false } }),
  {
    ...list(
      'Outline',
      'corners',
      'Corners, x and y in turn',
      'Counter-clockwise from the lower left, in place of width and height.',
    ),
    when: { fitted: false },
  },
  numberOf('Outline', 'gap', 'Gap, each side', {
    usual: 5,
    from: 0,
    to: 20,
    help: 'Packed when it is fixed.',
  }),
  list(
    'Outline',
    'gaps',
    'Gap of each side',
    'In order counter-clockwise from the bottom one, where they differ.',
  ),
  numberOf('Members', 'memberWidth', 'Width of the members', { usual: 45, from: 15, to: 200 }),
  list('Members', 'widths', 'Width of each member', 'In order, where they differ.'),
  numberOf('Members', 'thickness', 'Thickness', {
    usual: 20,
    from: 12,
    to: 60,
    help: 'Left out: of a sheet as measured.',
  }),
  choiceOf('Corners', 'joint', 'Corner joint', {
    choices: {
      spline: 'Mitre with a spline',
      mitre: 'Mitre, glued only',
      'half-lap': 'Half-lap',
      'loose-tenon': 'Butt with a loose tenon',
      bridle: 'Bridle',
      butt: 'Butt, screwed',
    },
    help: 'A spline or a lap holds; a bare mitre is for light work.',
  }),
  choiceOf('Corners', 'through', 'Runs through', {
    choices: {
      upright: 'The more upright member',
      level: 'The more level member',
      round: 'Each at its start, round the frame',
    },
    help: 'At corners that are not mitred.',
  }),
  numberOf('Corners', 'jointDepth', 'Spline or tenon, depth in each', { usual: 12, from: 6, to: 40 }),
  numberOf('Corners', 'jointThickness', 'Spline or tenon, thickness', {
    from: 3,
    to: 20,
    help: 'Left out: a third of the thickness, rounded to whole mm.',
  }),
  materialRow('frame', 'Members', 'either'),
];
