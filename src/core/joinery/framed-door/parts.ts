import { markSize } from '#core/units';
import { cutFrame, type CutFrame, type LaidRail, type RailName } from './members.ts';
import type { FramedLayout } from './sizes.ts';
import type { FramedDoorJoint } from './types.ts';
import { bevelLeading, towards } from '../hung-door/corners.ts';
import { hingeHeights, cutHingeBeds } from '../hung-door/hinges.ts';
import { makePart, makeRecess, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part } from '../types.ts';

/** Numbers of the parts of a framed door in their addresses. */
export const framedNumbers = {
  left: 1,
  right: 2,
  top: 3,
  bottom: 4,
  mid: 5,
  midStile: 6,
  panel: 7,
  looseTop: 8,
  looseBottom: 9,
  looseMid: 10,
  looseStile: 11,
} as const;

const { right, left, up, down } = towards;

/**
 * The parts of a framed door (joinery B3). Frame of the piece: origin at the lower left of the door, x right, y up, z to
 * the viewer, z = 0 on the face with the hinge knuckles.
 */
export function framedDoorParts(piece: Piece, layout: FramedLayout): readonly Part[] {
  const frame = cutFrame(layout);
  const drafts = [
    stileDraft(layout, frame, 'left'),
    stileDraft(layout, frame, 'right'),
    ...(['top', 'bottom', 'mid'] as const).flatMap((name) => railDraft(layout, frame, name)),
    ...midStileDraft(layout, frame),
    panelDraft(layout, frame),
    ...(layout.choices.joint === 'loose-tenon' ? looseDrafts(layout, frame) : []),
  ];
  return drafts.map((draft) => makePart(piece, draft));
}

const usual = 'face side to the knuckles of the hinges';

/** Joints whose mortises near the ends of the stiles want horns until they are glued. */
export const hasHorns = (joint: FramedDoorJoint): boolean =>
  !['groove-tongue', 'scribed-moulding', 'dowel', 'half-lap'].includes(joint);

function stileDraft({ book, choices }: FramedLayout, frame: CutFrame, side: 'left' | 'right'): PartDraft {
  const v = book.value;
  const hinge = choices.hinged === side;
  const heights = hinge ? hingeHeights(book) : [];
  const beds = cutHingeBeds(
    book,
    heights.map((height) => (side === 'left' ? height : v('Hd') - height)),
  );
  const tenoned = hasHorns(choices.joint);
  return {
    number: framedNumbers[side],
    name: `Stile, ${hinge ? 'hinge' : 'lock'} edge`,
    material: choices.stock.frame,
    finished: { length: v('Hd'), width: v('ws'), thickness: v('T') },
    working: { length: 'Hd', width: 'ws', thickness: 'T' },
    hand: side,
    roughStyle: tenoned ? 'horns' : 'plain',
    ...(side === 'right' && { besideOf: framedNumbers.left }),
    machining: [...frame[side], ...beds, ...(hinge ? [] : bevelLeading(v('beta'), 'face-edge'))],
    placements: [
      side === 'left'
        ? placeAt({ x: 0, y: 0, z: 0 }, up, right)
        : placeAt({ x: v('Wd'), y: v('Hd'), z: 0 }, down, left),
    ],
    faceSide: `${usual}, face edge outwards`,
    notes: [
      `Straightest grain, no knots within ${markSize(30)} of a joint; both stiles from one board.`,
      ...(tenoned ? ['Horns stay on until the frame is glued.'] : []),
    ],
  };
}

const railWords = { top: 'Top rail', bottom: 'Bottom rail', mid: 'Mid rail' } as const;

function railDraft({ book, choices }: FramedLayout, frame: CutFrame, name: RailName): readonly PartDraft[] {
  const v = book.value;
  const index = frame.rails.findIndex((rail) => rail.name === name);
  const first = frame.rails[index];
  if (!first) return [];
  const { length, width, thickness } = first.size;
  const ends = first.left < 1e-9 ? bevelLeading(v('beta'), choices.hinged === 'left' ? 'end' : 'start') : [];
  const cut = { length: length + 4, width, thickness };
  const lengths = name === 'mid' ? 'mid_rail_L' : 'rail_L';
  return [
    {
      number: framedNumbers[name],
      name: railWords[name],
      material: choices.stock.frame,
      finished: { length, width, thickness },
      ...(choices.joint === 'through-tenon' && { cut }),
      working: { length: lengths, width: { top: 'wt', bottom: 'wb', mid: 'wm' }[name], thickness: 'T' },
      machining: [...(frame.ofRail[index] ?? []), ...ends],
      placements: frame.rails.filter((rail) => rail.name === name).map(placeRail),
      faceSide: `${usual}, face edge up`,
    },
  ];
}

const placeRail = (rail: LaidRail) => placeAt({ x: rail.left, y: rail.top, z: 0 }, right, down);

function midStileDraft({ choices }: FramedLayout, frame: CutFrame): readonly PartDraft[] {
  const first = frame.midStiles[0];
  if (!first) return [];
  return [
    {
      number: framedNumbers.midStile,
      name: 'Mid stile',
      material: choices.stock.frame,
      finished: first.size,
      working: { length: 'mid_stile_L', width: 'wm', thickness: 'T' },
      machining: frame.ofMidStile,
      placements: frame.midStiles.map((mid) => placeAt({ x: mid.left, y: mid.foot, z: 0 }, up, right)),
      faceSide: usual,
    },
  ];
}

function panelDraft({ book, choices, stiles, rails }: FramedLayout, { rails: laid }: CutFrame): PartDraft {
  const v = book.value;
  const finished = { length: v('Hp'), width: v('Wp'), thickness: v('tp') };
  const columns = Array.from(
    { length: stiles + 1 },
    (_, i) => v('ws') + i * (v('wc') + (stiles > 0 ? v('wm') : 0)),
  );
  const feet = laid.slice(1, rails + 2).map((below) => below.top);
  const solid = choices.stock.panel.kind === 'solid';
  return {
    number: framedNumbers.panel,
    name: 'Panel',
    material: choices.stock.panel,
    flat: true,
    bookMatched: choices.panelMatch === 'book',
    finished,
    working: { length: 'Hp', width: 'Wp', thickness: 'tp' },
    machining: solid && v('raise') > 0 ? raisePanel(finished, v('margin'), v('raise')) : [],
    placements: feet.flatMap((foot) =>
      columns.map((at) =>
        placeAt({ x: at - v('gd') + v('gp'), y: foot - v('gd') + 1, z: -v('panel_z') }, up, right),
      ),
    ),
    faceSide: `${usual}, grain upright`,
    notes: [
      'Finished all over before the frame is glued, so that no bare edge shows when it shrinks.',
      ...(solid && v('Wp') > 120
        ? [`Jointed from boards of ${markSize(120)} at most, rings alternating.`]
        : []),
    ],
  };
}

/** A solid panel reduced all round on its face to the thickness that enters the groove. */
function raisePanel(
  { length, width }: { readonly length: number; readonly width: number },
  margin: number,
  depth: number,
): readonly Machining[] {
  const z = [0, depth] as const;
  const strip = (x: readonly [number, number], y: readonly [number, number]) =>
    makeRecess('rebate', 'face', { x, y, z }, 'raised panel');
  return [
    strip([0, length], [0, margin]),
    strip([0, length], [width - margin, width]),
    strip([0, margin], [margin, width - margin]),
    strip([length - margin, length], [margin, width - margin]),
  ];
}

function looseDrafts({ book, choices }: FramedLayout, frame: CutFrame): readonly PartDraft[] {
  const v = book.value;
  const z = -(v('T') - v('tenon_t')) / 2;
  const draft = (number: number, of: string, names: readonly [string, string]) => ({
    number,
    name: `Loose tenon, ${of}`,
    material: choices.stock.frame,
    finished: { length: v(names[0]), width: v(names[1]), thickness: v('tenon_t') },
    working: { length: names[0], width: names[1], thickness: 'tenon_t' },
    faceSide: 'either; both long edges rounded as the pocket',
  });
  const ofRails = (['top', 'bottom', 'mid'] as const).flatMap((name): readonly PartDraft[] => {
    const rails = frame.rails.filter((rail) => rail.name === name);
    const [first] = rails;
    if (!first) return [];
    const outer = name === 'mid' ? v('inner') : 10;
    const from = (name === 'bottom' ? v('inner') : outer) + 0.5;
    const place = (rail: LaidRail, shoulder: number) =>
      placeAt({ x: shoulder - v('tenon_L') / 2, y: rail.top - from, z }, right, down);
    const number = {
      top: framedNumbers.looseTop,
      bottom: framedNumbers.looseBottom,
      mid: framedNumbers.looseMid,
    };
    return [
      {
        ...draft(number[name], railWords[name].toLowerCase(), ['tenon_L', `loose_W_${name}`]),
        placements: rails.flatMap((rail) => [place(rail, v('ws')), place(rail, v('Wd') - v('ws'))]),
      },
    ];
  });
  if (frame.midStiles.length === 0) return ofRails;
  const half = v('tenon_L_stile') / 2;
  const stand = (mid: CutFrame['midStiles'][number], y: number) =>
    placeAt({ x: mid.left + v('inner') + 0.5, y: y - half, z }, up, right);
  return [
    ...ofRails,
    {
      ...draft(framedNumbers.looseStile, 'mid stile', ['tenon_L_stile', 'loose_W_stile']),
      placements: frame.midStiles.flatMap((mid) => [
        stand(mid, mid.foot),
        stand(mid, mid.foot + mid.size.length),
      ]),
    },
  ];
}
