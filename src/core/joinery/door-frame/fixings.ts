import type { FrameLayout } from './layout.ts';
import { pluggedFixings } from './plugged.ts';
import { coveredFaces } from './trim-sizes.ts';
import { fixingSpacing } from '../rules.ts';
import type { Fixing, Part } from '../types.ts';

const edgeDistance = 11.25; // 2.5 times a 4.5 screw (joinery C1)

/** Where screws go along a member of this length: within 150 of both ends and at most 450 apart (joinery A11). */
export function screwStations(length: number): readonly number[] {
  const end = Math.min(fixingSpacing.fromEnd, length / 4);
  const gaps = Math.max(1, Math.ceil((length - 2 * end) / fixingSpacing.most));
  return Array.from({ length: gaps + 1 }, (_, i) => end + (i * (length - 2 * end)) / gaps);
}

/** Rows of corner screws across a width: two where both keep their edge distance and stand apart, else one. */
export function screwRows(width: number): readonly number[] {
  return width >= 4 * edgeDistance ? [width / 4, (3 * width) / 4] : [width / 2];
}

const screw = (length: number) => `Screw 4.5 × ${upTo5(length)}, countersunk, stainless A4`;

/** What to buy for a door frame. */
export function frameFixings(layout: FrameLayout, parts: readonly Part[]): readonly Fixing[] {
  const { book, choices } = layout;
  const jamb = book.value(layout.jamb);
  const intoBulkhead = countHoles(parts, 'into the bulkhead, through the packing');
  const corners = countHoles(parts, 'corner screw');
  const near =
    choices.corner === 'rebate' || choices.corner === 'housing-over'
      ? book.value(layout.head) - choices.jointDepth
      : jamb;
  const wedges = intoBulkhead + 2;
  const tall = book.value('Hd') > 1200;
  return [
    { item: screw(jamb + 30), quantity: intoBulkhead, use: 'jambs to the bulkhead', source: 'joinery B1' },
    ...(corners
      ? [{ item: screw(near + 45), quantity: corners, use: 'frame corners', source: 'joinery B1, C1' }]
      : []),
    ...pluggedFixings(layout),
    {
      item: 'Folding wedges, pair',
      quantity: wedges,
      use: 'packing behind every screw and at the head',
      source: 'joinery A11',
    },
    ...(choices.corner === 'mitre'
      ? [
          {
            item: 'Spline, plywood',
            quantity: choices.sill ? 4 : 2,
            use: 'mitred corners',
            source: 'joinery C14',
          },
        ]
      : []),
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'frame corners', source: 'joinery B1' },
    ...trimFixings(layout, parts),
    {
      item: 'Hinge, 75 to 100, with screws',
      quantity: tall ? 3 : 2,
      use: 'door',
      source: 'joinery B1, B2.6',
    },
    { item: 'Latch with strike', quantity: 1, use: 'door', source: 'joinery B1' },
    { item: 'Hook-back', quantity: 1, use: 'door, held open', source: 'joinery B1' },
  ];
}

function trimFixings(layout: FrameLayout, parts: readonly Part[]): readonly Fixing[] {
  const pins = (wanted: (part: Part) => boolean) =>
    parts.filter(wanted).reduce((sum, part) => sum + screwStations(part.finished.length).length, 0);
  const covers = pins((part) => part.name.startsWith('Cover'));
  const stops = pins((part) => part.name.startsWith('Stop'));
  const thickness = layout.choices.coverThickness;
  return [
    ...(coveredFaces(layout).length
      ? [
          {
            item: `Panel pin ${upTo5(thickness + 20)}, bronze`,
            quantity: covers * 2,
            use: 'covers, to the lining and the bulkhead',
            source: 'common practice',
          },
        ]
      : []),
    ...(stops
      ? [
          {
            item: `Screw 3.5 × ${upTo5(layout.choices.stopThickness + 13)}, stainless A4`,
            quantity: stops,
            use: 'stops',
            source: 'common practice',
          },
        ]
      : []),
  ];
}

function countHoles(parts: readonly Part[], note: string): number {
  return parts.reduce(
    (sum, part) =>
      sum + part.quantity * part.machining.filter((one) => one.kind === 'hole' && one.note === note).length,
    0,
  );
}

function upTo5(length: number): number {
  return Math.ceil(length / 5 - 1e-9) * 5;
}
