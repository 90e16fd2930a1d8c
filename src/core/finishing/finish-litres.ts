import type { Coating } from '#core/materials';
import type { CoatedArea } from './finish-area.ts';

/** Coats on the faces that show and on those that do not. */
export interface Coats {
  readonly shown: number;
  readonly hidden: number;
}

/** The first coat on bare wood takes this much of the others: 1.5 to 2 (common practice, no source). */
const firstCoat = 1.5;

/** Litres of a coating for an area, each face in its coats, the first on bare wood half as much again. */
export function finishLitres(area: CoatedArea, coats: Coats, { spreadM2 }: Coating): number {
  const spread = (m2: number, count: number): number =>
    count <= 0 ? 0 : (m2 * (count - 1 + firstCoat)) / spreadM2;
  return spread(area.shown, coats.shown) + spread(area.hidden, coats.hidden);
}

/** The coats that come to a dry film, mm, of a coating: at least its fewest inside; of an oil, which leaves no film, its fewest. */
export function coatsFor(film: number, { filmPerCoat, coats }: Coating): number {
  return filmPerCoat > 0 ? Math.max(coats[0], Math.round(film / filmPerCoat)) : coats[0];
}
