import { addsLength, placeAbove, placeBelow, type RailPlace } from './joint-sizes.ts';
import type { FrontLayout } from './sizes.ts';
import type { JointCuts } from '../joints/fingers.ts';
import {
  cutDowels,
  cutHalfLap,
  cutLooseTenon,
  cutStubTenon,
  type FrameMember,
  type Meeting,
} from '../joints/frame.ts';
import { gluedGap } from '../joints/worked-joint.ts';

/** Where a member of the frame ends: in a stile, or in a rail. */
export type Receiver = 's' | RailPlace;

/** Sizes of the members. */
export function stileMember({ book }: FrontLayout): FrameMember {
  return { length: book.value('H'), width: book.value('ws'), thickness: book.value('T') };
}

export function railMember({ book }: FrontLayout, place: RailPlace): FrameMember {
  return { length: book.value('rail_L'), width: book.value(`w${place}`), thickness: book.value('T') };
}

export function innerMember({ book }: FrontLayout, row: number): FrameMember {
  return { length: book.value(`inner_L${row}`), width: book.value('ws'), thickness: book.value('T') };
}

/** How much longer a member is than its shoulders at an end in this receiver. */
export function addedAt({ book, choices }: FrontLayout, into: Receiver): number {
  return addsLength(choices.joint) ? book.value(`reach_${into}`) : 0;
}

/** Narrow rails keep a quarter of their width as shoulder, wider ones 10 (joinery C3). */
const shoulderOf = (width: number) => Math.min(10, width / 4);

/** The joint of a member's far end in another's far edge (joinery C1 to C6); nothing is cut for a butt joint. */
export function cutFrameJoint(layout: FrontLayout, meeting: Meeting, into: Receiver): JointCuts {
  const { choices, book } = layout;
  if (choices.joint === 'butt') return { male: [], other: [] };
  const reach = book.value(`reach_${into}`);
  switch (choices.joint) {
    case 'half-lap':
      return cutHalfLap(meeting, reach);
    case 'dowel': {
      const diameter = book.value('dowel_D');
      return cutDowels(meeting, {
        diameter,
        depth: reach,
        stations: dowelStations(meeting.male.width, diameter),
      });
    }
    case 'loose-tenon':
    case 'stub-tenon': {
      const tenon = {
        reach,
        thickness: book.value('tenon_T'),
        shoulder: shoulderOf(meeting.male.width),
        gap: gluedGap(choices.glue),
      };
      return choices.joint === 'stub-tenon' ? cutStubTenon(meeting, tenon) : cutLooseTenon(meeting, tenon);
    }
  }
}

/** Two dowels or more across a width, 1.5 diameters from the edges where that leaves wood between them (joinery C2). */
export function dowelStations(width: number, diameter: number): readonly number[] {
  const edge = Math.min(1.5 * diameter, (width - 1.5 * diameter) / 2);
  const gaps = Math.max(1, Math.ceil((width - 2 * edge) / 100));
  return Array.from({ length: gaps + 1 }, (_, i) => edge + (i * (width - 2 * edge)) / gaps);
}

/** Rails from the top: their place, upper edge above the foot of the frame, and number of the row under them. */
export function railsOf({ book, choices }: FrontLayout) {
  let top = book.value('H');
  return Array.from({ length: choices.rows + 1 }, (_, i) => {
    const place: RailPlace = i === 0 ? 't' : i === choices.rows ? 'b' : 'm';
    const width = book.value(`w${place}`);
    const rail = { place, top, width, row: i + 1 };
    top -= width + (i < choices.rows ? book.value(`h${i + 1}`) : 0);
    return rail;
  });
}

/** Upper edge of the openings of a row, and left edge of a column (both counted from 1 and 0). */
export function openingTop(layout: FrontLayout, row: number): number {
  const above = railsOf(layout)[row - 1];
  return above ? above.top - above.width : NaN;
}

export function columnLeft({ book }: FrontLayout, column: number): number {
  return book.value('ws') + column * (book.value('wo') + book.value('ws'));
}

/** The rails an inner stile of a row stands between. */
export function betweenRails(
  { choices }: FrontLayout,
  row: number,
): { readonly above: RailPlace; readonly below: RailPlace } {
  return { above: placeAbove(row), below: placeBelow(row, choices.rows) };
}
