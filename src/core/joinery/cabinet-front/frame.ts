import {
  addedAt,
  betweenRails,
  columnLeft,
  cutFrameJoint,
  innerMember,
  openingTop,
  railMember,
  railsOf,
  stileMember,
} from './joinery.ts';
import type { RailPlace } from './joint-sizes.ts';
import type { FrontLayout } from './sizes.ts';
import { mirrorAll } from '../joints/mirror.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part } from '../types.ts';

/** Numbers of the parts of the frame; inner stiles of row 1, 2, ... follow, then the fronts. */
export const frontNumbers = { left: 1, right: 2, t: 3, b: 4, m: 5, inner: 6 } as const;

const right = { x: 1, y: 0, z: 0 };
const left = { x: -1, y: 0, z: 0 };
const up = { x: 0, y: 1, z: 0 };
const down = { x: 0, y: -1, z: 0 };

const railNames: Readonly<Record<RailPlace, string>> = { t: 'Top rail', m: 'Rail', b: 'Bottom rail' };

/**
 * Stiles, rails and inner stiles. Frame of the piece: origin at the lower left corner of the frame, x right, y up, z to
 * the viewer, z = 0 at the face of the frame.
 */
export function frameParts(piece: Piece, layout: FrontLayout): readonly Part[] {
  const { rows, columns, frame } = layout.choices;
  const places: readonly RailPlace[] = rows > 1 ? ['t', 'b', 'm'] : ['t', 'b'];
  const drafts = [
    ...stileDrafts(layout),
    ...places.map((place) => railDraft(layout, place)),
    ...(columns > 1 ? Array.from({ length: rows }, (_, i) => innerDraft(layout, i + 1)) : []),
  ];
  return drafts.map((draft) => makePart(piece, { ...draft, material: frame }));
}

type Draft = Omit<PartDraft, 'material'>;

function stileDrafts(layout: FrontLayout): readonly Draft[] {
  const { book, choices } = layout;
  const finished = stileMember(layout);
  const { scribe } = choices;
  const cuts = stileCuts(layout);
  const common: Omit<Draft, 'number' | 'name' | 'placements'> = {
    finished,
    cut: { ...finished, width: finished.width + scribe },
    roughStyle: choices.joint === 'stub-tenon' || choices.joint === 'loose-tenon' ? 'horns' : 'plain',
    working: { length: 'H', width: 'ws', thickness: 'T' },
    faceSide: 'face side to the cabin, far edge inwards',
    edges: scribe > 0 ? [{ edge: 'face-edge', treatment: 'scribed', amount: scribe }] : [],
    notes: ['The two stiles are a pair: mark them side by side.'],
  };
  return [
    {
      ...common,
      number: frontNumbers.left,
      name: 'Stile, left',
      hand: 'left',
      machining: cuts,
      placements: [placeAt({ x: 0, y: 0, z: 0 }, up, right)],
    },
    {
      ...common,
      number: frontNumbers.right,
      name: 'Stile, right',
      hand: 'right',
      machining: mirrorAll(cuts, 'x', finished),
      placements: [placeAt({ x: book.value('W'), y: finished.length, z: 0 }, down, left)],
    },
  ];
}

/** Cuts of the left stile: X up, inner edge is the far one. */
function stileCuts(layout: FrontLayout): readonly Machining[] {
  const other = stileMember(layout);
  return railsOf(layout).flatMap(({ place, top, width }) => {
    const meeting = { male: railMember(layout, place), other, centre: top - width / 2 };
    return cutFrameJoint(layout, meeting, 's').other;
  });
}

function railDraft(layout: FrontLayout, place: RailPlace): Draft {
  const finished = railMember(layout, place);
  const meeting = { male: finished, other: stileMember(layout), centre: 0 };
  const end = cutFrameJoint(layout, meeting, 's').male;
  const x = layout.book.value('ws') - addedAt(layout, 's');
  return {
    number: frontNumbers[place],
    name: railNames[place],
    finished,
    working: { length: 'rail_L', width: `w${place}`, thickness: 'T' },
    faceSide: 'face side to the cabin, face edge up',
    machining: [...end, ...mirrorAll(end, 'x', finished), ...uprightCuts(layout, place)],
    placements: railsOf(layout)
      .filter((rail) => rail.place === place)
      .map((rail) => placeAt({ x, y: rail.top, z: 0 }, right, down)),
  };
}

/** Cuts of a rail for the inner stiles that stand under it (far edge) and on it (face edge). */
function uprightCuts(layout: FrontLayout, place: RailPlace): readonly Machining[] {
  const { columns } = layout.choices;
  const other = railMember(layout, place);
  const start = layout.book.value('ws') - addedAt(layout, 's');
  return Array.from({ length: columns - 1 }, (_, c) => {
    const centre = columnLeft(layout, c + 1) - layout.book.value('ws') / 2 - start;
    const cuts = cutFrameJoint(layout, { male: innerMember(layout, 1), other, centre }, place).other;
    return [...(place === 'b' ? [] : cuts), ...(place === 't' ? [] : mirrorAll(cuts, 'y', other))];
  }).flat();
}

function innerDraft(layout: FrontLayout, row: number): Draft {
  const { choices, book } = layout;
  const finished = innerMember(layout, row);
  const { above, below } = betweenRails(layout, row);
  const cut = (place: RailPlace) =>
    cutFrameJoint(layout, { male: finished, other: railMember(layout, place), centre: 0 }, place).male;
  const y = openingTop(layout, row) - book.value(`h${row}`) - addedAt(layout, below);
  return {
    number: frontNumbers.inner + row - 1,
    name: `Inner stile, row ${row}`,
    finished,
    working: { length: `inner_L${row}`, width: 'ws', thickness: 'T' },
    faceSide: 'face side to the cabin, far end up',
    machining: [...cut(above), ...mirrorAll(cut(below), 'x', finished)],
    placements: Array.from({ length: choices.columns - 1 }, (_, c) =>
      placeAt({ x: columnLeft(layout, c + 1) - book.value('ws'), y, z: 0 }, up, right),
    ),
  };
}
