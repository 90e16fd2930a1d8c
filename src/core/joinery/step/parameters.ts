import { endOnFaceChoices } from '../joints/end-on-face.ts';
import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { StepParameters } from './types.ts';

const { numberOf, choiceOf } = rowsFor<keyof StepParameters>('joinery B13');

/** What can be chosen for a companion or box step (joinery B13). */
export const stepParameters: readonly ParameterInfo[] = [
  choiceOf('Way up', 'form', 'Form', {
    choices: { box: 'Box that lifts out', flight: 'Flight of treads between strings' },
  }),
  numberOf('Way up', 'totalRise', 'Height from sole to landing', {
    from: 150,
    to: 2000,
    required: true,
    help: 'Measured at both sides; the larger.',
  }),
  numberOf('Way up', 'mostRiser', 'Highest riser', {
    usual: 250,
    from: 200,
    to: 300,
    help: 'All risers come out alike. Over 400 is dangerous at sea.',
  }),
  numberOf('Way up', 'going', 'Going', {
    usual: 170,
    from: 150,
    to: 250,
    help: 'From nosing to nosing, level.',
  }),
  numberOf('Size', 'width', 'Width outside', { usual: 420, from: 350, to: 900 }),
  numberOf('Size', 'treadDepth', 'Depth of the tread', { usual: 260, from: 150, to: 400 }),
  numberOf('Size', 'boxRisers', 'Risers of the box', { usual: 1, from: 1, to: 4, type: 'whole' }),
  numberOf('Size', 'overhang', 'Tread stands out', {
    usual: 15,
    from: 0,
    to: 30,
    help: 'Of a box, beyond its sides and front.',
  }),
  numberOf('Size', 'kickHeight', 'Kick space, height', { usual: 60, from: 0, to: 120 }),
  numberOf('Size', 'kickDepth', 'Kick space, depth', { usual: 30, from: 15, to: 80 }),
  numberOf('Sole', 'soleSlopeDegrees', 'Sole falls across by', {
    usual: 0,
    from: 0,
    to: 6,
    type: 'number',
    help: 'Degrees, seen from the front.',
  }),
  choiceOf('Sole', 'fallsTo', 'Sole falls to', { choices: { right: 'The right', left: 'The left' } }),
  numberOf('Sole', 'between', 'Must go between', {
    from: 200,
    to: 1500,
    help: 'Clear width of what it lifts out through.',
  }),
  numberOf('Size', 'treadThickness', 'Thickness of the treads', {
    usual: 18,
    from: 12,
    to: 40,
    help: 'Left out: of a sheet as measured.',
  }),
  choiceOf('Joints', 'joint', 'Treads and risers to the sides', {
    choices: { ...endOnFaceChoices, rebate: 'Risers in rebates, treads housed' },
    help: 'The top tread of a box lies on its sides, glued and screwed.',
  }),
  materialRow('sides', 'Sides, risers and kick', 'either', { help: 'Plywood for a box.' }),
  materialRow('treads', 'Treads', 'either'),
];
