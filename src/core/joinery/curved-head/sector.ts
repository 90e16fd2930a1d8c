import type { Outline, Placement, Point } from '#core/geometry';
import { placeAt } from '../parts.ts';
import type { HeadLayout } from './sizes.ts';

/** How far round one end of a ring sector lies, clockwise from its middle, on its outer and its inner face; radians. */
export interface SectorEnd {
  readonly outer: number;
  readonly inner: number;
}

/**
 * A ring sector in its own frame: x along it, y from the crown of its outer face inwards. Its ends are square to the
 * curve, or plumb where the head goes on into the jambs.
 */
export interface Sector {
  readonly inner: number;
  readonly outer: number;
  readonly start: SectorEnd;
  readonly end: SectorEnd;
}

/** A sector alike to both sides. */
export function evenSector(inner: number, outer: number, end: SectorEnd): Sector {
  return { inner, outer, start: { outer: -end.outer, inner: -end.inner }, end };
}

/** How far its middle lies from its left end, mm. */
function middleOf({ inner, outer, start }: Sector): number {
  return Math.max(-outer * Math.sin(start.outer), -inner * Math.sin(start.inner));
}

/** A point of a sector, `turn` clockwise from its middle. */
export function pointAt(sector: Sector, radius: number, turn: number): Point {
  return { x: middleOf(sector) + radius * Math.sin(turn), y: sector.outer - radius * Math.cos(turn) };
}

export function sectorOutline(sector: Sector): Outline {
  const { inner, outer, start, end } = sector;
  return [
    { ...pointAt(sector, outer, start.outer), bulge: Math.tan((end.outer - start.outer) / 4) },
    pointAt(sector, outer, end.outer),
    { ...pointAt(sector, inner, end.inner), bulge: -Math.tan((end.inner - start.inner) / 4) },
    pointAt(sector, inner, start.inner),
  ];
}

/** Where a sector lies whose middle is `turn` clockwise from the crown. */
export function placeSector({ book: { value: v } }: HeadLayout, sector: Sector, turn: number): Placement {
  const [s, c] = [Math.sin(turn), Math.cos(turn)];
  const back = middleOf(sector);
  const origin = {
    x: v('c') / 2 + sector.outer * s - back * c,
    y: v('f') - v('R') + sector.outer * c + back * s,
    z: 0,
  };
  return placeAt(origin, { x: c, y: -s, z: 0 }, { x: -s, y: -c, z: 0 });
}
