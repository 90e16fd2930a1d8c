import { markSize } from '#core/units';
import type { HungChoices } from './hung-choices.ts';
import { clearHeight, holeRadius, isLetIn, lockOf, reachedBy, type LockSite } from './lock.ts';
import { isRebated } from './pair.ts';
import { checkWall, type Say } from '../piece-findings.ts';
import type { WorkingBook } from '../working.ts';

const show = markSize;
const cp = 'common practice, no source';

/** Findings on the lock of a door: wood beside and behind it, joints it would cut through, holes, hand (joinery C0.2, B2.5). */
export function checkLock(say: Say, book: WorkingBook, choices: HungChoices, site: LockSite): void {
  const lock = lockOf(choices);
  if (lock === 'mortise-lock' && isRebated(choices)) {
    say('stop', 'lock-at-rebate', {
      message: `A mortise lock cannot be let into the rebate where the doors meet: ${show(book.value('T_lead'))} of wood beside it. It is left out.`,
      remedy: 'Let the doors meet with a gap, or take a rim lock.',
      source: cp,
    });
  }
  if (!book.has('lock_at')) return;
  checkReach(say, book, site);
  checkHoles(say, book, site);
  if (isLetIn(choices)) checkCase(say, book, site);
  if (lock === 'rim-lock' && site.stile !== null && book.value('case_D') > site.stile) {
    say('warn', 'rim-lock-wide', {
      message: `The case of the rim lock is ${show(book.value('case_D'))} wide, the stile has ${show(site.stile)} of wood: its screws miss it.`,
      remedy: `Take a lock up to ${show(site.stile)} deep, or wider stiles.`,
      source: cp,
    });
  }
  if (lock === 'turn-button') return;
  say('note', 'lock-hand', {
    message: `The lock, its handle ${show(book.value('lock_at'))} above the foot, is for a door with its hinges on the ${choices.hinged}, seen from their knuckles, opening towards the viewer.`,
    remedy: 'Buy it for that hand, or one whose latch turns over.',
    source: cp,
  });
}

function checkCase(say: Say, { value: v }: WorkingBook, { stile }: LockSite): void {
  const T = v('T');
  checkWall(say, 'Door beside the case of the lock', (T - v('case_T')) / 2, T);
  if (stile !== null) checkWall(say, 'Stile behind the case of the lock', stile - v('case_D'), T);
  if (v('forend_W') > T - 3 + 1e-9) {
    say('warn', 'forend-too-wide', {
      message: `The forend is ${show(v('forend_W'))} wide on an edge of ${show(T)}; 1.5 should stay on either side.`,
      remedy: `Take a lock with a forend up to ${show(T - 3)}, or a thicker door.`,
      source: cp,
    });
  }
  if (v('backset') + 6 <= v('case_D')) return;
  say('warn', 'backset-outside-case', {
    message: `The handle sits ${show(v('backset'))} in, the case of the lock ends at ${show(v('case_D'))}.`,
    remedy: 'Enter backset and depth as the lock measures.',
    source: cp,
  });
}

/** A lock that runs into joints, or off the door. */
function checkReach(say: Say, book: WorkingBook, site: LockSite): void {
  const v = book.value;
  const [below, above] = extent(book);
  const [low, high] = [v('lock_at') - below, v('lock_at') + above];
  if (low < 0 || high > v('Hd')) {
    say('stop', 'lock-off-door', {
      message: `The lock reaches from ${show(low)} to ${show(high)} above the foot of a door ${show(v('Hd'))} high.`,
      remedy: `Set its handle between ${show(below)} and ${show(v('Hd') - above)}.`,
      source: cp,
    });
    return;
  }
  const inWay = reachedBy(book, site);
  const [met] = inWay.filter(({ up }) => high > up[0] + 1e-9 && low < up[1] - 1e-9);
  if (!met) return;
  const better = clearHeight(v('lock_at'), [below, above], inWay);
  say('warn', 'lock-meets-joint', {
    message: `The lock, ${show(low)} to ${show(high)} above the foot, is cut through ${met.what} at ${show(met.up[0])} to ${show(met.up[1])}.`,
    remedy:
      better === v('lock_at')
        ? 'Take a smaller lock, or wider stiles.'
        : `Set its handle at ${show(better)}, or take a smaller lock.`,
    source: `joinery C0.2; ${cp}`,
  });
}

/** How far the lock, or its finger hole, goes below and above the middle of its handle. */
function extent(book: WorkingBook): readonly [number, number] {
  const v = book.value;
  if (!book.has('case_H')) return [holeRadius(book), holeRadius(book)];
  const more = book.has('forend_H') ? Math.max(0, (v('forend_H') - v('case_H')) / 2) : 0;
  return [v('case_H') - v('case_up') + more, v('case_up') + more];
}

const besideHole = 4; // mm of wood round a hole, common practice, no source

function checkHoles(say: Say, book: WorkingBook, { stile }: LockSite): void {
  const v = book.value;
  const radius = holeRadius(book);
  const beside = Math.min(v('backset') - radius, stile === null ? Infinity : stile - v('backset') - radius);
  if (beside >= besideHole - 1e-9) return;
  say('warn', 'lock-hole-near-edge', {
    message: `A hole of ${show(2 * radius)} with its middle ${show(v('backset'))} from the lock edge leaves ${show(beside)} of wood beside it; ${besideHole} is the least.`,
    remedy:
      stile === null ? 'Take more backset.' : `Take a backset near ${show(stile / 2)}, or wider stiles.`,
    source: cp,
  });
}
