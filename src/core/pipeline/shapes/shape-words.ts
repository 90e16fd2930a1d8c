import type { MeasuredShape } from '#core/project';
import { formatNumber } from '#core/units';

import { listWords } from '../words.ts';

/** A curve or a section of a shape in words, as `the curve A–B`. */
export function wordItem(shape: MeasuredShape, id: string): string {
  const curve = shape.kind === 'outline' ? shape.curves?.find((each) => each.id === id) : undefined;
  if (curve) return `the curve ${curve.from}–${curve.to}`;
  const section = shape.kind === 'sections' ? shape.sections.find((each) => each.id === id) : undefined;
  return section ? `the section ${section.name}` : id;
}

/** Ordinates in words, by their stations or heights: `the ordinate at 300 of the curve A–B`. */
export function wordOrdinates(shape: MeasuredShape, item: string, places: readonly number[]): string {
  const stations =
    shape.kind === 'outline'
      ? shape.curves?.find(({ id }) => id === item)?.ordinates.map(({ at }) => at)
      : shape.kind === 'sections'
        ? shape.sections.find(({ id }) => id === item)?.ordinates.map(({ height }) => height)
        : [];
  const at = places.flatMap((place) => {
    const station = stations?.[place];
    return station === undefined ? [] : [formatNumber(station)];
  });
  return `the ${at.length === 1 ? 'ordinate' : 'ordinates'} at ${listWords(at)} of ${wordItem(shape, item)}`;
}
