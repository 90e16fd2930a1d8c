import type { Point } from '#core/geometry';
import { putParameters } from '../parameter-book.ts';
import type { WorkingBook } from '../working.ts';
import type { CarcaseChoices } from './choices.ts';
import { carcaseParameters } from './parameters.ts';
import { rule, type Side } from './sides.ts';

/** Vent holes low and high by turns, left and right, clear of the shelves. */
export function placeVents(
  book: WorkingBook,
  choices: CarcaseChoices,
): Readonly<Record<Side, readonly Point[]>> {
  const { vents, ventDiameter, given } = choices;
  const from = { infos: carcaseParameters, values: choices, given };
  putParameters(book, from, { vents: 'vents', ventDiameter: 'vent_D' });
  book.work('air', 'vents*pi*vent_D**2/4', 'area of the vents, mm²', rule, 'ratio');
  book.work(
    'air_needed',
    '0.005*W*H',
    'half a hundredth of the front, mm²',
    `${rule}, common practice`,
    'ratio',
  );
  const away = ventDiameter / 2 + 25;
  const low = book.value('y0') + away;
  const high = book.value('top') - book.value('T') - away;
  const perSide = (side: Side): readonly Point[] => {
    const count = Math.floor(vents / 2) + (side === 'l' ? vents % 2 : 0);
    const depth = book.value(`end_${side}_least`) / 2;
    const free = book.value(`end_${side}_least`) > ventDiameter + 40 && high > low;
    return Array.from({ length: free ? count : 0 }, (_, i) => {
      const tier = Math.floor(i / 2) * (ventDiameter + 20);
      return {
        x: depth,
        y: clearOfShelves(choices, i % 2 === 0 ? low + tier : high - tier, i % 2 === 0 ? 1 : -1),
      };
    }).filter(({ y }) => y >= low && y <= high);
  };
  return { l: perSide('l'), r: perSide('r') };
}

/** The next height from y, upwards or downwards, at which a hole is clear of all shelves and cleats. */
function clearOfShelves(choices: CarcaseChoices, y: number, way: 1 | -1, left = choices.shelves): number {
  const { shelfThickness, cleat, ventDiameter } = choices;
  const room = ventDiameter / 2 + 10;
  const blocking = left.find((under) => y + room > under - cleat && y - room < under + shelfThickness);
  if (blocking === undefined) return y;
  const clear = way > 0 ? blocking + shelfThickness + room : blocking - cleat - room;
  return clearOfShelves(
    choices,
    clear,
    way,
    left.filter((one) => one !== blocking),
  );
}
