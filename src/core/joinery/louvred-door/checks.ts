import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import type { LouvredLayout } from './sizes.ts';
import { lockSite } from './rails.ts';
import { checkHanging } from '../hung-door/checks.ts';
import { checkLock } from '../hung-door/lock-checks.ts';
import { checkMoisture, checkWall, openFindings, type Say } from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';

const show = markSize;

const leastAir = 6; // between slats, mm (joinery B4)
const spanOfThickness = 60; // longest slat in thicknesses (joinery B4.4)
const highestPlain = 1200; // door without a mid rail, mm: where a third hinge is wanted too (joinery B2.6)
const leastBehind = 6; // from a housing to the edge of its stile, mm (joinery B4.2)

/** Findings on the form of a louvred door (joinery B4.1 to B4.4, C0.2, C4, D2). */
export function checkLouvred(layout: LouvredLayout, settings: JoinerySettings): readonly Problem[] {
  const { say, all } = openFindings();
  const { book, choices } = layout;
  checkHanging(say, book, choices);
  checkLock(say, book, choices, lockSite(layout));
  checkSlats(say, layout);
  checkSection(say, layout);
  const v = book.value;
  const behind = v('ws') - v('hd');
  if (behind < leastBehind) {
    say('stop', 'housing-near-edge', {
      message: `The housings of the slats leave ${show(behind)} of the stile; ${show(leastBehind)} is the least.`,
      remedy: 'Make the stiles wider or the housings shallower.',
      source: 'joinery B4.2',
    });
  }
  checkWall(say, 'Stile behind the mortise', v('ws') - v('reach') - 1.5, v('T'));
  checkWall(say, 'Stile beside the mortise', (v('T') - v('tenon_t')) / 2, v('T'));
  checkMoisture(say, settings, true);
  checkHeight(say, layout);
  say('note', 'stiles-mirrored', {
    message: `The ${v('nl_all')} housings of one stile are the mirror image of those of the other: two drawings, no copy.`,
    remedy: 'Lay both stiles face up, inner edges together, and mark across both.',
    source: 'joinery B4.3, G11',
  });
  return all();
}

/** A high door whose stiles only its slats hold together between two rails. */
function checkHeight(say: Say, { book: { value: v }, choices }: LouvredLayout): void {
  if (v('Hd') <= highestPlain || choices.midRails > 0) return;
  say('warn', 'mid-rail-wanted', {
    message: `The door is ${show(v('Hd'))} high without a mid rail; over ${highestPlain} the stiles bow out between two rails, for the slats hold nothing.`,
    remedy: 'Put in a mid rail.',
    source: 'common practice; the height from joinery B2.6',
  });
}

function checkSlats(say: Say, { book }: LouvredLayout): void {
  const v = book.value;
  if (v('overlap') < 0) {
    say('note', 'see-through', {
      message: `The slats overlap by ${show(v('overlap'))}: one can see through between them.`,
      remedy: `Ask for an overlap of ${show(3)} or more, or wider slats.`,
      source: 'joinery B4.1',
    });
  }
  if (v('air') < leastAir - 1e-9) {
    say('warn', 'little-air', {
      message: `The gap between the slats is ${show(v('air'))}, square to them; ${show(leastAir)} is the least for air.`,
      remedy: 'Take less overlap, thinner slats or a larger angle.',
      source: 'joinery B4',
    });
  }
  const most = spanOfThickness * v('ts');
  if (v('Ls') <= most) return;
  const wanted = Math.ceil(v('Ls') / spanOfThickness);
  say('warn', 'slat-span', {
    message: `The slats span ${show(v('Ls'))}, more than ${spanOfThickness} times their ${show(v('ts'))}: ${show(most)}.`,
    remedy: `Take slats ${wanted} thick, or make two doors that meet in the opening.`,
    source: 'joinery B4.4',
  });
}

function checkSection(say: Say, { book, choices }: LouvredLayout): void {
  const v = book.value;
  if (choices.section === 'flush') {
    if (v('tilt') <= 45) return;
    say('note', 'slat-edge-steep', {
      message: `The edges of the slats want the saw tilted ${formatNumber(v('tilt'))}° from square; saws tilt 45.`,
      remedy: `Take an angle of 45 or more, or rip the edges with the slat on edge in a carrier at ${formatNumber(v('phi'))}°.`,
      source: 'joinery B4',
    });
    return;
  }
  const room = v('T') - 2 * v('setback');
  if (v('depth') <= room + 1e-9) return;
  const phi = (v('phi') * Math.PI) / 180;
  const fits = Math.floor(((room - v('ts') * Math.cos(phi)) / Math.sin(phi)) * 2) / 2;
  say('warn', 'slat-too-deep', {
    message: `A slat ${show(v('b'))} wide at ${formatNumber(v('phi'))}° is ${show(v('depth'), 2)} from face to back; the door leaves ${show(room)}.`,
    remedy: `Make it ${show(fits)} wide, or bevel the edges flush.`,
    source: 'joinery B4',
  });
}
