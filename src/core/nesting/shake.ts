import { byBulk } from './first-fit.ts';
import { measureAll } from './losses.ts';
import { emptyPlace, layDown } from './nest.ts';
import type { Nest, Place } from './nest.ts';
import { holdInside } from './weigh-place.ts';

/** Two bulky parts of different kinds change places: a start somewhere else. */
export function swapTwo(nest: Nest): void {
  const order = byBulk(nest);
  const most = Math.min(order.length, Math.max(2, Math.ceil(order.length / 2)));
  for (let tries = 0; tries < 20 && most >= 2; tries++) {
    const a = order[nest.random.whole(0, most - 1)]!;
    const b = order[nest.random.whole(0, most - 1)]!;
    if (nest.source[a] !== nest.source[b] && swapPlaces(nest, a, b)) break;
  }
  measureAll(nest);
}

function swapPlaces(nest: Nest, a: number, b: number): boolean {
  const toB = centreOn(nest, a, b);
  const toA = centreOn(nest, b, a);
  if (!toA || !toB) return false;
  layDown(nest, a, toB);
  layDown(nest, b, toA);
  return true;
}

/** One part laid with its middle on another's, as it is turned; null when the sheet does not take it. */
function centreOn(nest: Nest, i: number, other: number): Place | null {
  const { width, height } = nest.shapes;
  if (nest.sheet[other]! < 0) return null;
  const place = { ...emptyPlace(), pose: nest.pose[i]!, sheet: nest.sheet[other]! };
  place.x = nest.x[other]! + (width[nest.pose[other]!]! - width[place.pose]!) / 2;
  place.y = nest.y[other]! + (height[nest.pose[other]!]! - height[place.pose]!) / 2;
  return holdInside(nest, place) ? place : null;
}
