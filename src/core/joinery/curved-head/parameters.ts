import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { CurvedHeadParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof CurvedHeadParameters>('joinery B17');

const size: readonly ParameterInfo[] = [
  numberOf('Size', 'span', 'Span', {
    from: 200,
    to: 2000,
    help: 'Clear, between the springings. Left out: the head of the measured opening.',
  }),
  numberOf('Size', 'rise', 'Rise', {
    from: 10,
    to: 600,
    help: 'Of the inner face, from the springings to the crown. Left out: the bow of the measured head.',
  }),
  numberOf('Size', 'depth', 'Depth, face to back', {
    usual: 45,
    from: 15,
    to: 120,
    help: 'As the lining of the door.',
  }),
];

const how: readonly ParameterInfo[] = [
  choiceOf('Making', 'method', 'Made', {
    choices: { laminated: 'Laminated over a mould', sawn: 'Sawn from a wide board' },
  }),
  numberOf('Making', 'plies', 'Plies', {
    usual: 5,
    from: 4,
    to: 14,
    type: 'whole',
    help: 'More of them spring back less.',
  }),
  numberOf('Making', 'plyThickness', 'Ply, thickness', {
    usual: 4,
    from: 1.5,
    to: 8,
    help: 'A 125th of the radius at most.',
  }),
  numberOf('Making', 'faceWidth', 'Sawn head, width of its face', { usual: 45, from: 30, to: 120 }),
  choiceOf('Making', 'segments', 'Sawn from', {
    choices: {
      auto: 'One board, two where the grain runs out',
      one: 'One board',
      two: 'Two, joined at the crown',
    },
  }),
];

const springings: readonly ParameterInfo[] = [
  choiceOf('Springings', 'springing', 'Head and jambs', {
    choices: {
      butt: 'Butt, square to the curve',
      housed: 'Housed, the head let into the jambs',
      rebated: 'Rebated, the head in a step of the jambs',
      halved: 'Halved, the head lapped over the jambs',
    },
    help: 'All but the butt let the head run on beyond the springings, its ends plumb.',
  }),
  numberOf('Springings', 'jambLength', 'Jambs, from the springings to the foot', {
    from: 200,
    to: 2200,
    help: 'Left out: they are made elsewhere, and only the head is cut for them.',
  }),
  numberOf('Springings', 'jambThickness', 'Jambs, thickness', { usual: 20, from: 15, to: 60 }),
  numberOf('Springings', 'jointDepth', 'Into the jambs', {
    from: 4,
    to: 30,
    help: 'Left out: 7 of a housing, half of the jamb of a rebate.',
    when: { key: 'springing', is: ['housed', 'rebated'] },
  }),
  numberOf('Springings', 'horn', 'Jamb above the head', {
    usual: 15,
    from: 15,
    to: 200,
    help: 'A housing needs 15 of wood beyond it.',
    when: { key: 'springing', is: ['housed'] },
  }),
];

/** What can be chosen for a curved head (joinery B17). */
export const curvedHeadParameters: readonly ParameterInfo[] = [
  ...size,
  ...how,
  ...springings,
  materialRow('head', 'Head', 'solid', {
    help: 'Straight grain without knots, it bends and does not break.',
  }),
  materialRow('mould', 'Mould', 'sheet', { help: 'Any sheet that is thick and flat.' }),
];
