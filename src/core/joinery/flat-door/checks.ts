import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import { hingesOffLipping } from './hinges.ts';
import { largestPlain, lockSite, type DoorLayout } from './sizes.ts';
import { checkSlots } from './slots.ts';
import { checkHanging } from '../hung-door/checks.ts';
import { checkLock } from '../hung-door/lock-checks.ts';
import { isLetIn } from '../hung-door/lock.ts';
import { checkMoisture, checkSheetThickness, openFindings, type Say } from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';

const show = markSize;

/** Smallest radius cut into corner blocks, mm (joinery B2). */
const leastBlockRadius = 25;

/** How far a sheet may be off its nominal thickness, mm (joinery 0.6). */
const nominalSlack = 0.9;

const mustBePositive: readonly string[] = [
  'Wd',
  'Hd',
  'core_W',
  'core_H',
  'lip_v_L',
  'lip_h_L',
  'back_W',
  'a_lock_back',
  'hinge_leaf',
  'batten_L',
];

/** Says which size came out at nothing; empty when the door can be made. */
export function checkDoorPossible({ book }: DoorLayout): readonly Problem[] {
  const bad = book
    .steps()
    .find((step) => mustBePositive.includes(step.name) && !(step.value > 0 && Number.isFinite(step.value)));
  if (!bad) return [];
  const size = Number.isFinite(bad.value) ? show(bad.value) : 'nothing';
  return [
    {
      severity: 'stop',
      code: 'door-impossible',
      message: `No door comes of it: ${bad.label} comes out at ${size} in a door ${show(book.value('Wd'))} × ${show(book.value('Hd'))} × ${show(book.value('T'))}.`,
      remedy: 'Check the unit of the sizes, or take narrower lippings, a smaller radius or less bevel.',
      source: 'joinery B2',
    },
  ];
}

/** Findings on the form of a flat door (joinery B2.1 to B2.6, 0.7, C17, D2, G). */
export function checkDoor(layout: DoorLayout, settings: JoinerySettings): readonly Problem[] {
  const { say, all } = openFindings();
  checkHanging(say, layout.book, layout.choices);
  checkLock(say, layout.book, layout.choices, lockSite(layout));
  checkStrength(say, layout);
  checkLippings(say, layout);
  checkHinges(say, layout);
  checkSheetThickness(say, layout.choices.stock.core, layout.book.value('T'), 'Core');
  checkMoisture(say, settings, true);
  return [...checkSlots(layout), ...all()];
}

function checkStrength(say: Say, layout: DoorLayout): void {
  const { book, battens } = layout;
  const v = book.value;
  const area = (v('Wd') * v('Hd')) / 1e6;
  const wanted = v('Hd') > 1200 || area > 0.4 ? 18 : area > 0.15 ? 15 : 12;
  if (v('T') < wanted - nominalSlack) {
    say('warn', 'door-too-thin', {
      message: `A sheet of ${show(v('T'))} is thin for a door ${show(v('Wd'))} × ${show(v('Hd'))}, ${formatNumber(area, 2)} m²; ${wanted} is usual.`,
      remedy: `Take ${wanted}.`,
      source: 'joinery B2',
    });
  }
  if (area <= largestPlain) return;
  say(battens ? 'note' : 'warn', 'door-may-warp', {
    message: `The door is ${formatNumber(area, 2)} m² of a single sheet; over ${largestPlain} it may warp.${battens ? ' Two battens on the back hold it.' : ''}`,
    remedy: battens
      ? `They stand ${show(v('batten_T'))} from the back and end ${show(v('batten_in'))} short of the edges: check that they clear the stops.`
      : 'Put two battens on the back, or make a framed door.',
    source: 'joinery B2.4',
  });
}

function checkLippings(say: Say, { book, choices }: DoorLayout): void {
  const v = book.value;
  const least = Math.min(v('a'), v('a_hinge'), v('a_lock'));
  if (least < v('T') / 3 - 1e-9) {
    say('warn', 'lipping-thin', {
      message: `A lipping of ${show(least)} on a door ${show(v('T'))} thick; a third of the thickness, ${show(v('T') / 3)}, is the least.`,
      remedy: `Make the lippings ${show(Math.ceil(v('T') / 3))} or more.`,
      source: 'joinery C17',
    });
  }
  if (v('a_hinge') < 8) {
    say('warn', 'hinge-lipping-thin', {
      message: `The lipping at the hinge edge is ${show(v('a_hinge'))}; the leaves of the hinges want ${show(8)}.`,
      remedy: `Make it ${show(8)} or more.`,
      source: 'joinery B2',
    });
  }
  if (isLetIn(choices)) checkLockLipping(say, v('a_lock'), v('case_D'));
  if (!choices.blocks) return;
  if (choices.lipJoint !== 'corner-block') {
    say('note', 'corner-blocks-taken', {
      message: `A radius of ${show(v('r'))} is more than the lipping of ${show(least)}: solid blocks ${show(v('block'))} square are let into the corners.`,
      remedy: `Take a radius up to ${show(least)} to do without.`,
      source: 'joinery B2',
    });
  }
  if (v('r') > least && v('r') < leastBlockRadius) {
    say('warn', 'corner-radius-small', {
      message: `A radius of ${show(v('r'))} is too large for the lipping of ${show(least)} and small for a block; ${show(leastBlockRadius)} is the least.`,
      remedy: `Take ${show(leastBlockRadius)} or more, or up to ${show(least)}.`,
      source: 'joinery B2',
    });
  }
}

/** B2.5: a lock let in deeper than there is solid wood. */
function checkLockLipping(say: Say, lipping: number, depth: number): void {
  if (depth > lipping) {
    say('warn', 'lock-deeper-than-lipping', {
      message: `The lock goes ${show(depth)} in, the lipping is ${show(lipping)}: it ends in the edge of the plies.`,
      remedy: `Let a solid block into the core behind it, make the lipping ${show(depth)} or more, or take a latch on the face.`,
      source: 'joinery B2.5',
    });
  }
  if (lipping >= 15) return;
  say('warn', 'lock-lipping-thin', {
    message: `The lipping at the lock edge is ${show(lipping)}; ${show(15)} is the least where a lock is let in.`,
    remedy: `Make it ${show(15)} or more.`,
    source: 'joinery B2',
  });
}

/** B2.6: when two hinges are not enough, and hinges that would sit in a corner block. */
function checkHinges(say: Say, layout: DoorLayout): void {
  const { book } = layout;
  const v = book.value;
  if (v('hinges') > 2) {
    const why = [
      ...(v('mass') > 8
        ? [`weighs ${formatNumber(v('mass'))} kg, more than the 8 kg that two hinges carry`]
        : []),
      ...(v('Hd') > 1200 ? [`is ${show(v('Hd'))} high, more than ${show(1200)}`] : []),
    ];
    say('note', 'three-hinges', {
      message: `The door ${why.join(' and ')}: it takes three hinges.`,
      remedy: `Set them ${show(v('hinge_top'))}, ${show(v('hinge_mid'))} and ${show(v('hinge_low'))} above the lower edge, and in the jamb alike.`,
      source: 'joinery B2.6',
    });
  }
  const off = hingesOffLipping(layout);
  if (off.length === 0) return;
  say('warn', 'hinge-off-lipping', {
    message: `A hinge ${show(v('hinge_L'))} long at ${off.map((height) => show(height)).join(' and ')} does not lie on the hinge lipping as a whole; its bed is left out.`,
    remedy: 'Take shorter hinges or a smaller corner radius.',
    source: 'joinery B2',
  });
}
