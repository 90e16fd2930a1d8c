import type { Outline, Point } from '#core/geometry';
import { markSize } from '#core/units';
import { layFlat, type LaidFlat, type Plane } from '../flat/lay-flat.ts';
import { keepLeft, leftOf, step } from '../flat/polygon.ts';
import { placeAt, type PartDraft } from '../parts.ts';
import { endCuts, uprightCuts, type Stand } from './joints.ts';
import type { StepLayout } from './sizes.ts';

type Draft = Omit<PartDraft, 'number'>;
export type Hand = 'left' | 'right';

/** Puts the length of the strings of a flight into the working. */
export function sizeStrings(layout: StepLayout): StepLayout {
  const { book, choices } = layout;
  if (choices.form !== 'flight' || book.value('n') < 2) return layout;
  for (const hand of ['left', 'right'] as const) {
    book.put(
      `string_L_${hand}`,
      layString(layout, hand).length,
      `${hand} string, length over its points`,
      'foot level, top plumb',
    );
  }
  return layout;
}

/** Seen from outside: of the right string backwards is to the right, of the left one forwards. */
function planeOf({ book }: StepLayout, hand: Hand): Plane {
  const sign = hand === 'right' ? -1 : 1;
  return {
    origin: { x: hand === 'right' ? book.value('W') : 0, y: 0, z: 0 },
    right: { x: 0, y: 0, z: sign },
    up: { x: 0, y: 1, z: 0 },
  };
}

/** A point in the side view (a backwards from the lowest nosing, y up) in the plane of a string. */
const seen = (hand: Hand, points: readonly Point[]): Outline =>
  hand === 'right' ? points : points.map(({ x, y }) => ({ x: -x, y })).reverse();

/** A string where it lies: a strip along the slope, level at the foot, plumb at the top. */
function layString(layout: StepLayout, hand: Hand): LaidFlat {
  const { book, choices } = layout;
  const v = book.value;
  const slope = (v('slope') * Math.PI) / 180;
  const along = { x: Math.cos(slope), y: Math.sin(slope) };
  const aside = leftOf(along);
  const middle = { x: v('depth') / 2, y: v('riser') - v('tt') / 2 };
  const half = v('string_W') / 2;
  const far = 4 * v('Ht') + 4 * v('run');
  const corner = (way: number, out: number) => step(step(middle, along, way * far), aside, out * half);
  const strip = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  const foot = choices.fallsTo === hand ? -v('foot_diff') : 0;
  const clipped = keepLeft(strip, [
    { at: { x: 0, y: foot }, along: { x: 1, y: 0 } },
    { at: { x: v('run'), y: 0 }, along: { x: 0, y: 1 } },
    { at: { x: 0, y: v('Ht') }, along: { x: -1, y: 0 } },
  ]);
  const way = hand === 'right' ? along : { x: -along.x, y: along.y };
  return layFlat(seen(hand, clipped), way, planeOf(layout, hand));
}

/** What stands on the inside of a string, in the side view. */
export function flightStands(layout: StepLayout): readonly Stand[] {
  const v = layout.book.value;
  return treadsOf(layout).map(({ nose, top }, i) => ({
    ...{ name: `housing of tread ${i + 1}`, what: 'tread', along: { x: 1, y: 0 }, across: { x: 0, y: 1 } },
    at: { x: nose, y: top - v('tt') / 2 },
    size: { length: v('tread_L'), width: v('depth'), thickness: v('tt') },
  }));
}

/** Nosing (backwards from the lowest one) and top of each tread. */
function treadsOf({ book }: StepLayout): readonly { readonly nose: number; readonly top: number }[] {
  return Array.from({ length: book.value('treads') }, (_, i) => ({
    nose: i * book.value('going'),
    top: (i + 1) * book.value('riser'),
  }));
}

/** The parts of a flight: two strings, and the treads as one part of several copies. */
export function flightDrafts(layout: StepLayout): readonly Draft[] {
  return [stringDraft(layout, 'left'), stringDraft(layout, 'right'), treadDraft(layout)];
}

function stringDraft(layout: StepLayout, hand: Hand): Draft {
  const { book, choices } = layout;
  const v = book.value;
  const laid = layString(layout, hand);
  const names = { length: `string_L_${hand}`, width: 'string_W', thickness: 'T' };
  const finished = { length: v(names.length), width: v('string_W'), thickness: v('T') };
  const machining = uprightCuts(layout, flightStands(layout), {
    size: finished,
    to: (point) => laid.toPart(seen(hand, [point]))[0] ?? point,
  });
  return {
    name: `String, ${hand}`,
    material: choices.stock.sides,
    finished,
    cut: { ...finished, length: finished.length + 2 * v('S') },
    working: names,
    hand,
    outline: laid.outline,
    machining,
    edges: [{ edge: 'start', treatment: 'scribed', amount: v('S') }],
    faceSide: 'face side outwards, start down',
    placements: [laid.placement],
    notes: ['Foot to the sole, top plumb.'],
  };
}

function treadDraft(layout: StepLayout): Draft {
  const { book, choices } = layout;
  const v = book.value;
  const finished = { length: v('tread_L'), width: v('depth'), thickness: v('tt') };
  return {
    name: 'Tread',
    material: choices.stock.treads,
    flat: true,
    finished,
    working: { length: 'tread_L', width: 'depth', thickness: 'tt' },
    machining: endCuts(layout, { what: 'tread', size: finished }),
    edges: [{ edge: 'far-edge', treatment: 'rounded', amount: 6 }],
    faceSide: 'face side up, far edge to the front',
    placements: treadsOf(layout).map(({ nose, top }) =>
      placeAt(
        { x: v('T') - v('house'), y: top, z: -nose - v('depth') },
        { x: 1, y: 0, z: 0 },
        { x: 0, y: 0, z: 1 },
      ),
    ),
    notes: [`Non-slip strip ${markSize(30)} behind the nosing.`],
  };
}
