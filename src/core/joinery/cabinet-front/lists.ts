import { formatNumber, markSize } from '#core/units';
import { frontNumbers } from './frame.ts';
import type { FrontCell } from './cells.ts';
import { dowelStations, railMember } from './joinery.ts';
import { placeAbove, placeBelow, type RailPlace } from './joint-sizes.ts';
import type { FrontLayout } from './sizes.ts';
import { partAddress } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Fixing, Joint } from '../types.ts';

const show = markSize;

/** The joints of a face frame with the settings for them (joinery C20). */
export function frontJoints(piece: Piece, layout: FrontLayout): readonly Joint[] {
  const { rows, columns, joint } = layout.choices;
  const address = (number: number) => partAddress(piece, number);
  const places: readonly RailPlace[] = rows > 1 ? ['t', 'b', 'm'] : ['t', 'b'];
  const toStiles = places.flatMap((place) =>
    [frontNumbers.left, frontNumbers.right].map((stile): Joint => ({
      kind: joint,
      between: [address(frontNumbers[place]), address(stile)],
      count: place === 'm' ? rows - 1 : 1,
      settings: settingsOf(layout, place),
    })),
  );
  if (columns < 2) return toStiles;
  const inner = Array.from({ length: rows }, (_, i) => i + 1).flatMap((row) =>
    // a row between two rails of one kind meets the same part twice
    [...new Set([placeAbove(row), placeBelow(row, rows)])].map((place): Joint => ({
      kind: joint,
      between: [address(frontNumbers.inner + row - 1), address(frontNumbers[place])],
      count: (columns - 1) * (placeAbove(row) === placeBelow(row, rows) ? 2 : 1),
      settings: settingsOf(layout, place, true),
    })),
  );
  return [...toStiles, ...inner];
}

function settingsOf(layout: FrontLayout, place: RailPlace, inner = false): readonly string[] {
  const { choices, book } = layout;
  const v = book.value;
  const reach = choices.joint === 'butt' ? 0 : v(inner ? `reach_${place}` : 'reach_s');
  const width = inner ? v('ws') : railMember(layout, place).width;
  const shoulder = Math.min(10, width / 4);
  switch (choices.joint) {
    case 'loose-tenon':
      return [
        `Slot ${show(v('tenon_T'))} thick, ${show(width - 2 * shoulder)} long, ${show(reach)} deep in both, faces down on one fence; loose tenon ${show(2 * reach - 2)} long, ${show(width - 2 * shoulder - 1)} wide.`,
      ];
    case 'stub-tenon':
      return [
        `Cheeks: blade ${show((v('T') - v('tenon_T')) / 2)} high, each face down; stop to the far side of the blade ${show(reach)}.`,
        `Mortise ${show(v('tenon_T'))} thick, ${show(width - 2 * shoulder + 0.5)} long, ${show(reach + 1.5)} deep, in the middle of the thickness.`,
      ];
    case 'half-lap':
      return [
        `Blade half the thickness high, ${show(v('T') / 2)}: the rail face up, the other face down; first and last cut against a stop, lap ${show(reach)} long.`,
      ];
    case 'dowel':
      return [
        `${dowelStations(width, v('dowel_D')).length} dowels of ${show(v('dowel_D'))}, holes ${show(reach + 1)} deep, from the face side with a jig.`,
      ];
    case 'butt':
      return [`Pocket screws 4 × 38 from behind, two each, pilot ${show(2.4)}; glue the ends first.`];
  }
}

/** What to buy for a cabinet front. */
export function frontFixings(layout: FrontLayout, cells: readonly FrontCell[]): readonly Fixing[] {
  const { book } = layout;
  const doors = cells.filter((cell) => cell.cell === 'door');
  const drawers = cells.length - doors.length;
  const around = 2 * Math.ceil(book.value('H') / 250) + 2 * Math.ceil(book.value('W') / 250);
  const hinges = doors.reduce((sum, door) => sum + (book.value(`f${door.row}`) > 1200 ? 3 : 2), 0);
  const list: readonly Fixing[] = [
    ...jointFixings(layout),
    {
      item: `Screw 4 × ${Math.ceil((book.value('T') + 28) / 5) * 5}, countersunk, stainless A4`,
      quantity: around,
      use: 'frame to the carcase',
      source: 'joinery C1, spacing 250',
    },
    { item: 'Cabinet hinge with screws', quantity: hinges, use: 'doors', source: 'joinery B-H, B2.6' },
    { item: 'Push-button latch with pull', quantity: doors.length, use: 'doors', source: 'joinery B-H' },
    {
      item: layout.choices.notch > 0 ? 'Drawer pull or finger hole' : 'Push-button latch with pull',
      quantity: drawers,
      use: 'drawers',
      source: 'joinery B5',
    },
    {
      item: 'Screw 4 × 25, panhead with washer, stainless A4',
      quantity: 4 * drawers,
      use: 'drawer fronts, from inside',
      source: 'joinery B5',
    },
    {
      item: 'White glue (D3, water-resistant), small bottle',
      quantity: 1,
      use: 'frame',
      source: 'joinery C',
    },
  ];
  return list.filter((fixing) => fixing.quantity > 0);
}

function jointFixings(layout: FrontLayout): readonly Fixing[] {
  const { choices, book } = layout;
  const { rows, columns } = choices;
  const ends = 2 * (rows + 1) + 2 * rows * (columns - 1);
  switch (choices.joint) {
    case 'loose-tenon':
      return [
        {
          item: `Loose tenon stock ${formatNumber(book.value('tenon_T'))} thick`,
          quantity: ends,
          use: 'frame',
          source: 'joinery C3',
        },
      ];
    case 'dowel': {
      const narrow = dowelStations(book.value('wt'), book.value('dowel_D')).length;
      return [
        {
          item: `Dowel ${formatNumber(book.value('dowel_D'))} × ${formatNumber(2 * Math.floor(book.value('reach_s')))}, fluted`,
          quantity: ends * narrow,
          use: 'frame',
          source: 'joinery C2',
        },
      ];
    }
    case 'butt':
      return [
        { item: 'Pocket screw 4 × 38, stainless A4', quantity: 2 * ends, use: 'frame', source: 'joinery C1' },
      ];
    case 'stub-tenon':
    case 'half-lap':
      return [];
  }
}
