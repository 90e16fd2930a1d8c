import { expect } from 'vitest';
import { placePoint } from '#core/geometry';
import type { BuiltPiece, Part } from '#core/joinery';
import { spreadPoints } from './joinery-boxes.ts';
import { occupies, occupiesDeep } from './joinery-solid.ts';

/** No two copies of parts in the same wood, at so many points of the envelope. */
export function expectApart(built: BuiltPiece, points = 400): void {
  const { min, max } = built.envelope;
  const copies = built.parts.flatMap((part) => part.placements.map((at) => ({ ...part, placements: [at] })));
  for (const point of spreadPoints(min, max, points)) {
    const there = copies.filter((copy) => occupiesDeep(copy, point)).map(({ name }) => name);
    expect(there.length, there.join(' + ')).toBeLessThanOrEqual(1);
  }
}

/** Points on the ends of a part, as shares of its width; `beyond` mm outside and the same inside, where there is wood inside. */
export interface Ends {
  readonly widths: readonly number[];
  readonly beyond: number;
}

/**
 * The ends of a part meet other wood: wherever there is wood just inside an end, there is wood of one of the others just
 * beyond it. Returns how many points were looked at, so that a test can see that it looked.
 */
export function expectEndsMeet(part: Part, others: readonly Part[], { widths, beyond }: Ends): number {
  const { length, width, thickness } = part.finished;
  let looked = 0;
  for (const at of part.placements)
    for (const x of [0, length])
      for (const share of widths)
        for (const level of [0.1, 0.5, 0.9]) {
          const inwards = x === 0 ? beyond : -beyond;
          const point = (by: number) => ({ x: x + by, y: width * share, z: thickness * level });
          if (!occupies(part, placePoint(at, point(inwards)), at)) continue;
          const outside = placePoint(at, point(-inwards));
          const met = others.some((other) =>
            other.placements.some((place) => occupies(other, outside, place)),
          );
          const where = `${part.name} at ${x === 0 ? 'its start' : 'its end'}, ${share} across, ${level} deep`;
          expect(met, where).toBe(true);
          looked++;
        }
  return looked;
}
