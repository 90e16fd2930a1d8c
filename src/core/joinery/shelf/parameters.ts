import { materialRow, rowsFor } from '../parameter-rows.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { ShelfParameters } from './types.ts';

const { numberOf, choiceOf } = rowsFor<keyof ShelfParameters>('joinery B8');

const size = [
  numberOf('Size', 'length', 'Length', {
    from: 100,
    to: 2500,
    help: 'Not needed when it is fitted to an outline, or runs from section to section.',
  }),
  numberOf('Size', 'depth', 'Depth', {
    from: 50,
    to: 900,
    help: 'With a fiddle on its edge. Not needed when its back follows the hull or an outline.',
  }),
  numberOf('Size', 'height', 'Height of the underside', {
    usual: 0,
    from: 0,
    to: 2500,
    help: 'From the level that the hull was measured from.',
  }),
  numberOf('Size', 'start', 'Left end from the first section', { usual: 0, from: 0, to: 6000 }),
  numberOf('Size', 'clearance', 'Clear of hull or walls', { usual: 3, from: 0, to: 20 }),
  numberOf('Size', 'thickness', 'Thickness', {
    usual: 12,
    from: 6,
    to: 30,
    help: 'Left out: of a sheet as measured.',
  }),
];

const fiddle = [
  choiceOf('Fiddle', 'fiddle', 'Fiddle', {
    choices: {
      edge: 'Butted on the front edge',
      rebate: 'Over the front edge, in a rebate',
      top: 'On top of the shelf',
      none: 'None',
    },
    help: 'On or over the edge it stiffens the shelf most; a rebate has more glue and hides the edge of plywood.',
  }),
  numberOf('Fiddle', 'fiddleHeight', 'Height above the shelf', {
    usual: 45,
    from: 15,
    to: 150,
    help: 'Shelves 40 to 60, more where bottles stand.',
  }),
  numberOf('Fiddle', 'fiddleThickness', 'Thickness', { usual: 12, from: 8, to: 25 }),
  numberOf('Fiddle', 'cornerOpen', 'Open at the corners', {
    usual: 40,
    from: 0,
    to: 100,
    help: 'For wiping out.',
  }),
  choiceOf('Fiddle', 'endFiddles', 'Fiddles at the ends', {
    choices: { none: 'None', left: 'Left', right: 'Right', both: 'Both' },
  }),
];

const use = [
  numberOf('Use', 'load', 'Load, kg', { usual: 12, from: 0, to: 150, type: 'number' }),
  numberOf('Use', 'itemWidth', 'Item, width', {
    from: 20,
    to: 500,
    help: 'Of what stands on it, across the fiddle: the narrowest.',
  }),
  numberOf('Use', 'itemCentre', 'Item, centre of gravity', { from: 10, to: 500, help: 'Above the shelf.' }),
  numberOf('Use', 'itemHeight', 'Item, height', { from: 20, to: 800 }),
  numberOf('Use', 'angle', 'Worst angle, degrees', {
    usual: 45,
    from: 10,
    to: 80,
    type: 'number',
    help: 'Heel and roll together.',
  }),
  numberOf('Use', 'room', 'Clear height above the shelf', { from: 40, to: 2000 }),
];

const held = [
  choiceOf('Held', 'backHeld', 'Back held by', {
    choices: { cleat: 'A cleat', tabs: 'Bonded tabs', no: 'Nothing' },
    help: 'A curved back has tabs instead of a cleat.',
  }),
  numberOf('Held', 'cleat', 'Cleats, square', { usual: 20, from: 12, to: 40 }),
];

/** What can be chosen for a shelf (joinery B8). */
export const shelfParameters: readonly ParameterInfo[] = [
  ...size,
  ...fiddle,
  ...use,
  ...held,
  materialRow('shelf', 'Shelf', 'either'),
  materialRow('fiddle', 'Fiddle', 'solid', { help: 'Left out: the first solid timber.', required: false }),
  materialRow('cleats', 'Cleats', 'solid', { help: 'Left out: the first solid timber.', required: false }),
];
