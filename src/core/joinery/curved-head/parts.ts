import { circleOutline, type Point } from '#core/geometry';
import { markSize } from '#core/units';
import type { HeadLayout } from './sizes.ts';
import { jambDrafts, lapCuts } from './jambs.ts';
import { evenSector, placeSector, pointAt, sectorOutline, type Sector, type SectorEnd } from './sector.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part } from '../types.ts';

const radians = Math.PI / 180;
const clampHole = { diameter: 40, below: 50, pitch: 120 } as const; // common practice, no source

/**
 * The parts of a curved head (joinery B17). Frame of the piece: origin at the left springing on the inner face, x right,
 * y up, z to the viewer, z = 0 on the face. Mould and spare ply are made but lie nowhere in the piece.
 */
export function curvedHeadParts(piece: Piece, layout: HeadLayout): readonly Part[] {
  const made = layout.choices.method === 'laminated' ? laminateDrafts(layout) : sawnDrafts(layout);
  const drafts = [...made, ...jambDrafts(layout)];
  return drafts.map((draft, i) => makePart(piece, { ...draft, number: i + 1 }));
}

type Draft = Omit<PartDraft, 'number'>;

function laminateDrafts(layout: HeadLayout): readonly Draft[] {
  const { book, choices } = layout;
  const v = book.value;
  const strip = { length: v('ply_L'), width: v('ply_W'), thickness: v('t') };
  const common = { material: choices.stock.head, cut: strip, rough: strip } as const;
  const bent = Array.from({ length: choices.plies }, (_, i): Draft => {
    const [inner, outer] = [v('R') + i * v('t'), v('R') + (i + 1) * v('t')];
    const sector = evenSector(inner, outer, endOf(layout, inner, outer));
    const [length, width] = [`ply${i + 1}_W`, `ply${i + 1}_H`];
    return {
      ...common,
      name: `Ply ${i + 1}${i === 0 ? ', inner' : i + 1 === choices.plies ? ', outer' : ''}`,
      finished: { length: v(length), width: v(width), thickness: v('depth') },
      working: { length, width, thickness: 'depth' },
      bent: true,
      outline: sectorOutline(sector),
      machining: lapCuts(layout, sector, 0, [-1, 1]),
      placements: [placeSector(layout, sector, 0)],
      faceSide: 'face side to the front of the head',
      notes: [
        `Sawn as a flat strip ${[strip.length, strip.width, strip.thickness].map((size) => markSize(size)).join(' × ')}; drawn as bent, without a full-size template: the mould has the curve. All plies from one board, in their order in it.`,
      ],
    };
  });
  return [...bent, spareDraft(layout, common), mouldDraft(layout)];
}

/** Half the angle of a head on its outer and inner face: square to the curve, or plumb beyond the springing. */
function endOf({ book }: HeadLayout, inner: number, outer: number): SectorEnd {
  const v = book.value;
  if (!book.has('e_s')) return { outer: v('a') * radians, inner: v('a') * radians };
  const end = v('c') / 2 + v('e_s');
  return { outer: Math.asin(end / outer), inner: Math.asin(end / inner) };
}

function spareDraft(
  { book: { value: v } }: HeadLayout,
  common: Pick<Draft, 'material' | 'cut' | 'rough'>,
): Draft {
  return {
    ...common,
    name: 'Ply, spare',
    quantity: 1,
    finished: { length: v('ply_L'), width: v('depth'), thickness: v('t') },
    working: { length: 'ply_L', width: 'depth', thickness: 't' },
    placements: [],
    faceSide: 'either',
    notes: ['For the one that breaks.'],
  };
}

function mouldDraft({ book, choices }: HeadLayout): Draft {
  const v = book.value;
  const half = v('mould_a') * radians;
  const [length, height] = [v('mould_L'), v('mould_W')];
  const ends = height - v('foot');
  const radius = v('Rm') - clampHole.below;
  const count = Math.max(0, Math.floor((2 * half * radius) / clampHole.pitch));
  const holes = Array.from({ length: count }, (_, i) => {
    const turn = count > 1 ? (i / (count - 1) - 0.5) * 2 * half * 0.85 : 0;
    return { x: length / 2 + radius * Math.sin(turn), y: v('Rm') - radius * Math.cos(turn) };
  }).filter(({ x, y }) => x > 40 && x < length - 40 && y < height - 30 && radius > 0);
  return {
    name: 'Mould, layer',
    material: choices.stock.mould,
    quantity: v('layers'),
    finished: { length, width: height, thickness: v('mould_T') },
    working: { length: 'mould_L', width: 'mould_W', thickness: 'mould_T' },
    outline: [
      { x: 0, y: ends, bulge: Math.tan(half / 2) },
      { x: length, y: ends },
      { x: length, y: height },
      { x: 0, y: height },
    ],
    holes: holes.map((at) => circleOutline(at, clampHole.diameter / 2)),
    grain: 'any',
    turn: true,
    placements: [],
    faceSide: 'either; layers screwed and glued together, the curve trued as one and waxed',
    notes: ['Mark the crown and both springings on the curve. Holes are for the clamps.'],
  };
}

function sawnDrafts(layout: HeadLayout): readonly Draft[] {
  const { book, choices, segments } = layout;
  const v = book.value;
  const [inner, outer] = [v('R'), v('R') + v('w')];
  const tip = endOf(layout, inner, outer);
  const segment = (
    name: string,
    { sector, turn }: { readonly sector: Sector; readonly turn: number },
    machining: readonly Machining[],
    hand: Part['hand'],
  ): Draft => ({
    name,
    material: choices.stock.head,
    finished: { length: v('seg_L'), width: v('seg_W'), thickness: v('depth') },
    cut: { length: v('seg_L'), width: Math.max(v('board_W'), v('seg_W')), thickness: v('depth') },
    working: { length: 'seg_L', width: 'seg_W', thickness: 'depth' },
    outline: sectorOutline(sector),
    hand,
    machining,
    placements: [placeSector(layout, sector, turn)],
    faceSide: 'face side to the front of the head',
    notes: ['Grain along the chord. Sawn outside the line, faired to a template.'],
  });
  if (segments === 1) {
    const whole = { sector: evenSector(inner, outer, tip), turn: 0 };
    return [segment('Head', whole, lapCuts(layout, whole.sector, 0, [-1, 1]), 'none')];
  }
  const half = v('h') * radians;
  const crown = { outer: half, inner: half };
  const far = { outer: tip.outer - half, inner: tip.inner - half };
  const flip = (end: SectorEnd): SectorEnd => ({ outer: -end.outer, inner: -end.inner });
  const left = { sector: { inner, outer, start: flip(far), end: crown }, turn: -half };
  const right = { sector: { inner, outer, start: flip(crown), end: far }, turn: half };
  const laps = ({ sector, turn }: typeof left, side: 1 | -1) => lapCuts(layout, sector, turn, [side]);
  return [
    segment('Head, left half', left, [pocket(layout, left.sector, 1), ...laps(left, -1)], 'left'),
    segment('Head, right half', right, [pocket(layout, right.sector, -1), ...laps(right, 1)], 'right'),
    crownTenon(layout),
  ];
}

function crownTenon({ book: { value: v }, choices }: HeadLayout): Draft {
  return {
    name: 'Loose tenon',
    material: choices.stock.head,
    finished: { length: v('tenon_L'), width: v('tenon_W'), thickness: v('tenon_t') },
    working: { length: 'tenon_L', width: 'tenon_W', thickness: 'tenon_t' },
    placements: [
      placeAt(
        {
          x: (v('c') - v('tenon_L')) / 2,
          y: v('f') + (v('w') + v('tenon_W')) / 2,
          z: -(v('depth') - v('tenon_t')) / 2,
        },
        { x: 1, y: 0, z: 0 },
        { x: 0, y: -1, z: 0 },
      ),
    ],
    faceSide: 'either; both long edges rounded as the pocket',
  };
}

/** The pocket of the loose tenon in the end of a half that meets the crown: `side` 1 at its right end, -1 at its left. */
function pocket({ book: { value: v }, choices }: HeadLayout, sector: Sector, side: 1 | -1): Machining {
  const turn = (side === 1 ? sector.end : sector.start).outer;
  const inwards = { x: -side * Math.cos(turn), y: -side * Math.sin(turn) };
  const middle = (sector.inner + sector.outer) / 2;
  const corner = (radius: number, into: number): Point => {
    const at = pointAt(sector, radius, turn);
    return { x: at.x + inwards.x * into, y: at.y + inwards.y * into };
  };
  const [low, high] = [middle - v('tenon_b') / 2, middle + v('tenon_b') / 2];
  const outline = [corner(low, 0), corner(high, 0), corner(high, v('pocket')), corner(low, v('pocket'))];
  const from = (v('depth') - v('tenon_t')) / 2;
  const gap = gluedGap(choices.glue); // on each cheek of the tenon
  return {
    kind: 'prism',
    name: 'slot',
    from: 'face',
    outline: side === 1 ? outline : [...outline].reverse(),
    below: from - gap,
    depth: from + v('tenon_t') + gap,
    note: 'pocket of the loose tenon, worked from the end',
  };
}
