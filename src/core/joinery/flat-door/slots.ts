import type { Outline, Point } from '#core/geometry';
import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { slotOutline } from './outlines.ts';
import { lipName } from './lips.ts';
import type { DoorLayout } from './sizes.ts';
import { openFindings, type Say } from '../piece-findings.ts';

const show = markSize;

/** Least wood between slots, mm and in slot widths, and from a band to the edges of the door (joinery B2). */
const leastWeb = { hard: 18, slots: 1.5 } as const;
const leastToEdge = 60;

/** A slot in the frame of the core. */
export interface LaidSlot {
  readonly at: Point;
  readonly outline: Outline;
}

/** The slots of both bands as holes of the core; none when they cannot be made. */
export function layHoles(layout: DoorLayout): readonly LaidSlot[] {
  const { book, choices } = layout;
  if (choices.slots === 0 || findImpossible(layout).length > 0) return [];
  const v = book.value;
  const across = choices.slotsRun === 'across';
  const pitch = choices.slots > 1 ? v('pitch') : 0;
  const middles = [v('slot_edge') + v('band_H') / 2, v('Hd') - v('slot_edge') - v('band_H') / 2];
  return middles.flatMap((middle) =>
    Array.from({ length: choices.slots }, (_, i) => {
      const off = (i - (choices.slots - 1) / 2) * pitch;
      const door = across ? { x: v('Wd') / 2, y: middle + off } : { x: v('Wd') / 2 + off, y: middle };
      const at = { x: door.y - v('a'), y: door.x - v(lipName(layout, 'left')) };
      return { at, outline: slotOutline(at, v('slot_L'), v('s'), across ? 'y' : 'x') };
    }),
  );
}

/** Findings on the vent slots (joinery B2.1, B2.2). */
export function checkSlots(layout: DoorLayout): readonly Problem[] {
  if (layout.choices.slots === 0) return [];
  const impossible = findImpossible(layout);
  if (impossible.length > 0) return impossible;
  const { say, all } = openFindings();
  checkWebs(say, layout);
  return all();
}

/** Why no slots can be cut as asked; they are then left out of the core. */
function findImpossible({ book, choices }: DoorLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const v = book.value;
  const size = `${choices.slots} slots ${show(v('s'))} × ${show(v('slot_L'))}`;
  if (v('slot_L') <= v('s')) {
    say('stop', 'slot-too-short', {
      message: `${size}: they are no longer than they are wide. They are left out.`,
      remedy: `Make them longer than ${show(v('s'))}.`,
      source: 'joinery B2',
    });
  }
  if (choices.slots > 1 && v('web') <= 0) {
    say('stop', 'slots-run-together', {
      message: `${size} in a band of ${show(v('zone'))} run into each other: wood between them ${show(v('web'))}. They are left out.`,
      remedy: `Make the band ${show(widerBand(book.value))} wide, or take fewer slots.`,
      source: 'joinery B2.2',
    });
  }
  checkLippings(say, book, choices.blocks);
  const bands = 2 * (v('slot_edge') + v('band_H'));
  if (bands >= v('Hd')) {
    say('stop', 'slot-bands-meet', {
      message: `The two bands of slots want ${show(bands)} of height; the door is ${show(v('Hd'))}. They are left out.`,
      remedy: 'Take shorter slots, lay the bands nearer to the edges, or take no slots (0).',
      source: 'joinery B2',
    });
  }
  return all();
}

/** B2.1: a slot that crosses a lipping or a corner block. */
function checkLippings(say: Say, book: DoorLayout['book'], blocks: boolean): void {
  const v = book.value;
  const sides = Math.max(v('a_hinge'), v('a_lock'));
  const crossesSide = v('band_side') < sides;
  const crossesEnd = v('slot_edge') < v('a');
  const crossesBlock = blocks && v('band_side') < v('block') && v('slot_edge') < v('block');
  if (!crossesSide && !crossesEnd && !crossesBlock) return;
  const what = crossesSide
    ? `the bands reach to ${show(v('band_side'))} from the sides of the door, the lipping takes ${show(sides)}`
    : crossesEnd
      ? `the bands begin ${show(v('slot_edge'))} from the edge, the lipping takes ${show(v('a'))}`
      : `the bands begin ${show(v('slot_edge'))} and ${show(v('band_side'))} from the edges, a corner block takes ${show(v('block'))} of both`;
  say('stop', 'slot-crosses-lipping', {
    message: `A slot crosses the solid edge: ${what}. The slots are left out.`,
    remedy: `Keep the bands ${show(leastToEdge)} or more from every edge: fewer or shorter slots, or a narrower band.`,
    source: 'joinery B2.1',
  });
}

/** B2.2: webs and distances below their limits. */
function checkWebs(say: Say, { book, choices, battens }: DoorLayout): void {
  const v = book.value;
  const least = Math.max(leastWeb.hard, leastWeb.slots * v('s'));
  if (choices.slots > 1 && v('web') < least - 1e-9) {
    say('warn', 'slot-web-thin', {
      message: `The wood between two slots is ${show(v('web'))}; it should be ${show(least)}.`,
      remedy: `Make the band ${show(widerBand(v))} wide, or take fewer slots.`,
      source: 'joinery B2.2',
    });
  }
  const inner = v('slot_edge') + v('band_H');
  if (battens && v('batten_low') - v('batten_W') / 2 < inner) {
    say('warn', 'batten-covers-slots', {
      message: `The battens cover slots: the bands reach ${show(inner)} in from the ends of the door, the battens begin at ${show(v('batten_low') - v('batten_W') / 2)}.`,
      remedy: 'Take shorter slots or a band nearer to the edge, or no battens on a door that is low enough.',
      source: 'joinery B2, B2.4',
    });
  }
  const edge = Math.min(v('slot_edge'), v('band_side'));
  if (edge >= leastToEdge - 1e-9) return;
  say('warn', 'slots-near-edge', {
    message: `The slots come to ${show(edge)} from the edge of the door; ${show(leastToEdge)} should be left.`,
    remedy: 'Take fewer or shorter slots, or move the bands in.',
    source: 'joinery B2',
  });
}

/** Band in which the webs keep their limit. */
function widerBand(v: DoorLayout['book']['value']): number {
  const web = Math.max(leastWeb.hard, leastWeb.slots * v('s'));
  return v('n') * v('s') + (v('n') - 1) * web;
}
