import { clipOutline } from '../clip.ts';
import { layRails, railWidths, tenonAcross, type LaidRail, type RailName } from './rails.ts';
import type { LouvredLayout } from './sizes.ts';
import { bevelLeading, cutBothEnds, flipRange, towards } from '../hung-door/corners.ts';
import { cutHingeBeds, hingeHeights } from '../hung-door/hinges.ts';
import { cutLoosePockets, cutPlacedTenon } from '../joints/tenon.ts';
import { makePart, placeAt, type PartDraft, type Range } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part } from '../types.ts';
import type { Point } from '#core/geometry';
import { formatNumber, markSize } from '#core/units';

/** Numbers of the parts of a louvred door in their addresses. */
export const louvredNumbers = {
  left: 1,
  right: 2,
  top: 3,
  bottom: 4,
  slats: 5,
  looseTop: 6,
  looseBottom: 7,
  mid: 8,
  looseMid: 9,
} as const;

const numbers = {
  top: [louvredNumbers.top, louvredNumbers.looseTop],
  bottom: [louvredNumbers.bottom, louvredNumbers.looseBottom],
  mid: [louvredNumbers.mid, louvredNumbers.looseMid],
} as const;

const slatPlay = 0.1; // a housing on each side of its slat (joinery C7)
const spareSlats = 2; // (joinery B4)

/**
 * The parts of a louvred door (joinery B4). Frame of the piece: origin at the lower left of the door, x right, y up, z to
 * the viewer, z = 0 on the face with the hinge knuckles. The slats fall towards the viewer.
 */
export function louvredDoorParts(piece: Piece, layout: LouvredLayout): readonly Part[] {
  const laid = layRails(layout);
  const ends = laid.map((rail) => ({ ...meetStiles(layout, rail) }));
  const names = (['top', 'bottom', 'mid'] as const).filter((name) => laid.some((rail) => rail.name === name));
  const drafts = [
    ...(['left', 'right'] as const).map((side) =>
      stileDraft(
        layout,
        side,
        ends.flatMap((end) => end[side]),
      ),
    ),
    ...names.map((name) =>
      railDraft(layout, name, ends[laid.findIndex((rail) => rail.name === name)]?.rail ?? []),
    ),
    slatDraft(layout),
    ...(layout.choices.joint === 'loose-tenon' ? names.map((name) => looseDraft(layout, name)) : []),
  ];
  return drafts.map((draft) => makePart(piece, draft));
}

function meetStiles(layout: LouvredLayout, rail: LaidRail) {
  const v = layout.book.value;
  const z: Range = [(v('T') - v('tenon_t')) / 2, (v('T') + v('tenon_t')) / 2];
  const upright = tenonAcross(layout, rail.name);
  const stile = { length: v('Hd'), width: v('ws'), thickness: v('T') };
  return cutBothEnds(rail, stile, (meeting, turned) => {
    const y = turned ? flipRange(upright, rail.size.width) : upright;
    return layout.choices.joint === 'loose-tenon'
      ? cutLoosePockets(meeting, { depth: v('reach'), y, z, gap: v('gap') })
      : cutPlacedTenon(meeting, { reach: v('reach'), y, z, gap: v('gap') });
  });
}

/** Section of slat `i` as it stands in the door: x up, y from the face into the door; first the face edge, seen side first. */
function sectionOf(layout: LouvredLayout, i: number, play: number): readonly Point[] {
  const { book, choices } = layout;
  const v = book.value;
  const [s, c] = [Math.sin((v('phi') * Math.PI) / 180), Math.cos((v('phi') * Math.PI) / 180)];
  const { up, depth } = edgeOf(layout, i);
  const shift = play / s; // up and down, so that the slat's own thickness is what grows
  const at = (along: number, into: number, by: number): Point => ({
    x: up + along * c - into * s + by,
    y: depth + along * s + into * c,
  });
  const [b, ts] = [v('b'), v('ts')];
  const lost = choices.section === 'flush' ? (ts * c) / s : 0; // edges bevelled to the faces of the door
  return [at(lost, 0, shift), at(b, 0, shift), at(b - lost, ts, -shift), at(0, ts, -shift)];
}

/** The edge of slat `i` next to the face, on its seen side: height above the foot of the door, and depth from the face. */
function edgeOf(
  { book, choices }: LouvredLayout,
  i: number,
): { readonly up: number; readonly depth: number } {
  const v = book.value;
  const phi = (v('phi') * Math.PI) / 180;
  const field = Math.floor(i / v('nl'));
  const foot = v('wb') + (field > 0 ? field * (v('clear') + v('wm')) : 0);
  const up = foot + (i % v('nl')) * v('p') + v('ts') * Math.sin(phi);
  const depth = choices.section === 'flush' ? -v('ts') * Math.cos(phi) : (v('T') - v('depth')) / 2;
  return { up, depth };
}

function stileDraft(layout: LouvredLayout, side: 'left' | 'right', cuts: readonly Machining[]): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const hinge = choices.hinged === side;
  const along = (height: number) => (side === 'left' ? height : v('Hd') - height);
  const housings = Array.from({ length: v('nl_all') }, (_, i): Machining => {
    const section = sectionOf(layout, i, slatPlay).map(({ x, y }) => ({ x: along(x), y }));
    const outline = clipOutline(side === 'left' ? section : [...section].reverse(), { y: [0, v('T')] });
    return {
      kind: 'prism',
      name: 'slot',
      from: 'far-edge',
      outline,
      depth: v('hd'),
      note: 'housing of a slat',
    };
  });
  const beds = cutHingeBeds(book, hinge ? hingeHeights(book).map(along) : []);
  return {
    number: louvredNumbers[side],
    name: `Stile, ${hinge ? 'hinge' : 'lock'} edge`,
    material: choices.stock.frame,
    finished: { length: v('Hd'), width: v('ws'), thickness: v('T') },
    working: { length: 'Hd', width: 'ws', thickness: 'T' },
    hand: side,
    roughStyle: 'horns',
    ...(side === 'right' && { besideOf: louvredNumbers.left }),
    machining: [...cuts, ...housings, ...beds, ...(hinge ? [] : bevelLeading(v('beta'), 'face-edge'))],
    placements: [
      side === 'left'
        ? placeAt({ x: 0, y: 0, z: 0 }, towards.up, towards.right)
        : placeAt({ x: v('Wd'), y: v('Hd'), z: 0 }, towards.down, towards.left),
    ],
    faceSide: 'face side to the knuckles of the hinges, face edge outwards',
    notes: [
      `Housings at ${formatNumber(v('phi'))}° to the edge, ${markSize(v('p'), 2)} from one to the next.`,
      'Mirror image of the other stile, not a copy: mark both as a pair before housing.',
    ],
  };
}

const railWords = { top: 'Top rail', bottom: 'Bottom rail', mid: 'Mid rail' } as const;

function railDraft(layout: LouvredLayout, name: RailName, machining: readonly Machining[]): PartDraft {
  const v = layout.book.value;
  const rails = layRails(layout).filter((rail) => rail.name === name);
  return {
    number: numbers[name][0],
    name: railWords[name],
    material: layout.choices.stock.frame,
    finished: { length: v('rail_L'), width: v(railWidths[name]), thickness: v('T') },
    working: { length: 'rail_L', width: railWidths[name], thickness: 'T' },
    machining,
    placements: rails.map(({ left, top }) => placeAt({ x: left, y: top, z: 0 }, towards.right, towards.down)),
    faceSide: 'face side to the knuckles of the hinges, face edge up',
  };
}

function slatDraft(layout: LouvredLayout): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const phi = (v('phi') * Math.PI) / 180;
  const right = v('Wd') - v('ws') + v('hd') - 0.25;
  const across = { x: 0, y: Math.cos(phi), z: -Math.sin(phi) };
  const bevels: readonly Machining[] = [
    { kind: 'bevel', edge: 'face-edge', degrees: 90 - v('phi') },
    { kind: 'bevel', edge: 'far-edge', degrees: v('phi') - 90 },
  ];
  return {
    number: louvredNumbers.slats,
    name: 'Slat',
    material: choices.stock.slats,
    finished: { length: v('slat_L'), width: v('b'), thickness: v('ts') },
    working: { length: 'slat_L', width: 'b', thickness: 'ts' },
    quantity: v('nl_all') + spareSlats,
    machining: choices.section === 'flush' ? bevels : [],
    placements: Array.from({ length: v('nl_all') }, (_, i) => {
      const { up, depth } = edgeOf(layout, i);
      return placeAt({ x: right, y: up, z: -depth }, towards.left, across);
    }),
    faceSide: 'face side down and outwards, face edge to the face of the door',
    notes: [
      `${spareSlats} of them spare.`,
      'All ripped at one setting, sanded and finished before they go in.',
    ],
  };
}

function looseDraft(layout: LouvredLayout, name: RailName): PartDraft {
  const v = layout.book.value;
  const rails = layRails(layout).filter((rail) => rail.name === name);
  const z = -(v('T') - v('tenon_t')) / 2;
  return {
    number: numbers[name][1],
    name: `Loose tenon, ${railWords[name].toLowerCase()}`,
    material: layout.choices.stock.frame,
    finished: { length: v('tenon_L'), width: v(`loose_W_${name}`), thickness: v('tenon_t') },
    working: { length: 'tenon_L', width: `loose_W_${name}`, thickness: 'tenon_t' },
    placements: rails.flatMap(({ top }) =>
      [v('ws'), v('Wd') - v('ws')].map((shoulder) =>
        placeAt(
          { x: shoulder - v('tenon_L') / 2, y: top - tenonAcross(layout, name)[0] - 0.5, z },
          towards.right,
          towards.down,
        ),
      ),
    ),
    faceSide: 'either; both long edges rounded as the pocket',
  };
}
