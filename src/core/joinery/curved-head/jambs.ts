import type { Outline } from '#core/geometry';
import { mirrorAll } from '../joints/mirror.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { placeAt, type PartDraft } from '../parts.ts';
import type { Machining } from '../types.ts';
import { pointAt, type Sector } from './sector.ts';
import type { HeadLayout } from './sizes.ts';

type Draft = Omit<PartDraft, 'number'>;

/** What lies between two radii and two distances to the left of the left springing. */
interface Slice {
  readonly inner: number;
  readonly outer: number;
  readonly from: number;
  readonly to: number;
}

/** The jambs under a curved head, each with what its joint asks for; none when they are made elsewhere (joinery B17). */
export function jambDrafts(layout: HeadLayout): readonly Draft[] {
  const { book, choices } = layout;
  if (!book.has('jamb_L')) return [];
  const v = book.value;
  const finished = { length: v('jamb_L'), width: v('depth'), thickness: v('tj') };
  const cuts = jambCuts(layout);
  const foot = -v('jamb_below');
  const draft = (side: 'left' | 'right'): Draft => ({
    name: `Jamb, ${side}`,
    material: choices.stock.head,
    finished,
    working: { length: 'jamb_L', width: 'depth', thickness: 'tj' },
    hand: side,
    machining: side === 'left' ? cuts : mirrorAll(cuts, 'x', finished),
    placements: [
      side === 'left'
        ? placeAt({ x: 0, y: foot, z: 0 }, { x: 0, y: 1, z: 0 }, { x: 0, y: 0, z: -1 })
        : placeAt({ x: v('c'), y: foot + v('jamb_L'), z: 0 }, { x: 0, y: -1, z: 0 }, { x: 0, y: 0, z: -1 }),
    ],
    faceSide: 'face side to the door opening, face edge to the viewer',
    notes: ['Straightest grain; both jambs from one board, marked as a pair.'],
  });
  return [draft('left'), draft('right')];
}

/** Cuts of the left jamb: x up, y from the near face, z outwards. */
function jambCuts(layout: HeadLayout): readonly Machining[] {
  const { book, choices } = layout;
  const v = book.value;
  const [R, T, depth] = [v('R'), thickOf(layout), v('depth')];
  switch (choices.springing) {
    case 'butt':
      return [{ kind: 'bevel', edge: 'end', degrees: 90 - v('a'), note: 'on the end of the head' }];
    case 'housed': {
      const play = gluedGap(choices.glue); // above and below the head (joinery C7)
      const slice = { inner: R - play, outer: R + T + play, from: 0, to: v('e_s') };
      const outline = sliceOutline(layout, slice);
      return [
        { kind: 'prism', name: 'slot', from: 'face-edge', outline, depth, note: 'housing of the head' },
      ];
    }
    case 'rebated': {
      const outline = sliceOutline(layout, { inner: R, outer: R + T, from: 0, to: v('e_s') }, v('jamb_L'));
      return [{ kind: 'prism', name: 'lap', from: 'face-edge', outline, depth, note: 'rebate for the head' }];
    }
    case 'halved': {
      const outline = sliceOutline(layout, { inner: R, outer: R + T, from: 0, to: v('tj') });
      return [
        { kind: 'prism', name: 'lap', from: 'face-edge', outline, depth: depth / 2, note: 'half of the lap' },
        { kind: 'bevel', edge: 'end', degrees: -v('top_fall'), note: 'along the outer face of the head' },
      ];
    }
  }
}

/** A slice in the frame of the left jamb, seen on its near edge: x up, y outwards; up to a level top where one is given. */
function sliceOutline(layout: HeadLayout, { inner, outer, from, to }: Slice, top?: number): Outline {
  const v = layout.book.value;
  const centre = v('jamb_below') + v('f') - v('R');
  const turnAt = (radius: number, out: number) => Math.asin((v('c') / 2 + out) / radius);
  const at = (radius: number, out: number) => ({
    x: centre + radius * Math.cos(turnAt(radius, out)),
    y: out,
  });
  const bulge = (radius: number) => Math.tan((turnAt(radius, to) - turnAt(radius, from)) / 4);
  const above =
    top === undefined
      ? [
          { ...at(outer, from), ...(layout.choices.springing === 'housed' && { bulge: bulge(outer) }) },
          at(outer, to),
        ]
      : [
          { x: top, y: from },
          { x: top, y: to },
        ];
  return [at(inner, from), ...above, { ...at(inner, to), bulge: -bulge(inner) }];
}

/** Thickness of the head along the radius. */
export function thickOf({ book, choices }: HeadLayout): number {
  return book.value(choices.method === 'laminated' ? 'T' : 'w');
}

/** What a halved head loses at its ends: half its depth from the back, under the line of the jamb's top. */
export function lapCuts(
  layout: HeadLayout,
  sector: Sector,
  turn: number,
  ends: readonly (1 | -1)[],
): readonly Machining[] {
  const { book, choices } = layout;
  if (choices.springing !== 'halved') return [];
  const v = book.value;
  const outermost = Math.abs(sector.outer - v('R') - thickOf(layout)) < 1e-6;
  return ends.map((side) => {
    const shoulder = (radius: number) => side * Math.asin(v('c') / 2 / radius) - turn;
    const tip = side === 1 ? sector.end : sector.start;
    const { inner, outer } = sector;
    const arc = (radius: number, from: number, to: number) => ({
      ...pointAt(sector, radius, from),
      bulge: Math.tan((to - from) / 4),
    });
    const points: Outline = [
      outermost ? pointAt(sector, outer, shoulder(outer)) : arc(outer, shoulder(outer), tip.outer),
      pointAt(sector, outer, tip.outer),
      arc(inner, tip.inner, shoulder(inner)),
      pointAt(sector, inner, shoulder(inner)),
    ];
    return {
      kind: 'prism',
      name: 'lap',
      from: 'back',
      outline: side === 1 ? points : reversed(points),
      depth: v('depth') / 2,
      note: 'half of the lap over the jamb',
    };
  });
}

/** The same figure the other way round, arcs with it. */
function reversed(points: Outline): Outline {
  return points
    .map(({ x, y }, i) => {
      const before = points[(i + points.length - 1) % points.length]?.bulge;
      return { x, y, ...(before && { bulge: -before }) };
    })
    .reverse();
}
