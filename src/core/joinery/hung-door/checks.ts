import { formatNumber, markSize } from '#core/units';
import type { HungChoices } from './hung-choices.ts';
import { checkMeeting, isPaired } from './pair.ts';
import type { Say } from '../piece-findings.ts';
import { leastFinishedGap } from '../rules.ts';
import type { WorkingBook } from '../working.ts';

const show = markSize;

/** Difference to the door a frame reckons with that is worth a word, mm: a sheet is often 0.9 off its nominal (joinery 0.6). */
const thicknessSlack = 0.9;

/** Bevel beyond which a leading edge is weak, degrees (joinery B2). */
const largestBevel = 4;

type Hung = HungChoices;

/** Findings on how a door hangs: its frame, its gaps once finished, its swing (joinery B1, 0.7, B2.3, G6, G7). */
export function checkHanging(say: Say, book: WorkingBook, hung: Hung): void {
  checkFrame(say, book, hung);
  checkGaps(say, book);
  checkMeeting(say, book, hung);
  if (hung.leaf !== 'second') checkSwing(say, book);
}

function checkFrame(say: Say, book: WorkingBook, hung: Hung): void {
  const { frame, given } = hung;
  if (!frame) return;
  const name = `${frame.built.letter} ${frame.built.name}`;
  const entered = ['width', 'height', 'gapSide', 'gapTop', 'gapBottom'].filter(
    (key) => key in frame.sizes && given.has(key),
  );
  if (entered.length > 0) {
    say('note', 'size-from-frame', {
      message: `Size and gaps come from ${name}: ${show(book.value('Wd'))} × ${show(book.value('Hd'))}${isPaired(hung) ? ' each' : ''}; what was entered for the door itself is not used.`,
      remedy: 'Change the gaps in the frame, or take the frame out to enter the size.',
      source: 'joinery B1',
    });
  }
  if (frame.thickness !== null && Math.abs(frame.thickness - book.value('T')) > thicknessSlack) {
    say('warn', 'door-thickness-differs', {
      message: `The door is ${show(book.value('T'))} thick; ${name} reckons with ${show(frame.thickness)} for its stops and rebates.`,
      remedy: `Enter ${show(book.value('T'))} as the door thickness of the frame, or take another sheet.`,
      source: 'joinery B1',
    });
  }
  if (frame.skew < 1) return;
  say('warn', 'frame-not-square', {
    message: `${name} follows its opening: a corner is ${show(frame.skew)} off square over the height of the door, and the door is a rectangle with gaps of ${show(book.value('gs'))}.`,
    remedy: 'Plane the door to the frame after a first hanging, or make the frame square.',
    source: 'joinery B1',
  });
}

/** 0.7, G6: what the films leave of the gaps. */
function checkGaps(say: Say, book: WorkingBook): void {
  const v = book.value;
  const films = 2 * v('f_v');
  const gaps = { 'at the sides': v('gs'), 'at the top': v('gt'), 'at the bottom': v('gb') };
  for (const [place, gap] of Object.entries(gaps)) {
    if (gap - films >= leastFinishedGap - 1e-9) continue;
    say('stop', 'no-room-once-finished', {
      message: `No room to open once varnished, ${place}: gap ${show(gap)}, films ${show(films)}, left ${show(gap - films)} of ${show(leastFinishedGap)}.`,
      remedy: `Make the gap ${show(leastFinishedGap + films)} or more.`,
      source: 'joinery 0.7, G6',
    });
  }
}

/** B2.3, G7: the back corner of the leading edge against the jamb. */
function checkSwing(say: Say, book: WorkingBook): void {
  const v = book.value;
  const gap = v(book.has('gm') ? 'gm' : 'gs');
  if (gap >= v('need') - 1e-9) return;
  const edge = v(book.has('T_lead') ? 'T_lead' : 'T');
  const reach = (gap - v('need') + v('g_min') + v('e') + v('Wd')) ** 2 - (edge + v('k')) ** 2;
  const bevel =
    reach > 0 ? (Math.atan2(v('Wd') + v('e') - Math.sqrt(reach), v('T')) * 180) / Math.PI : Infinity;
  const up = Math.ceil(bevel * 10) / 10;
  const helps = !book.has('T_lead') && bevel > v('beta') && up <= largestBevel;
  say('warn', 'door-strikes-jamb', {
    message: `The back corner of the door strikes ${book.has('gm') ? 'the other door' : 'the jamb'}: gap ${show(gap, 2)}, needed ${show(v('need'), 2)} (the swing takes ${show(v('g_min'), 2)}, the films ${show(2 * v('f_v'), 2)}, 0.8 to spare).`,
    remedy: `${helps ? `Bevel the leading edge ${formatNumber(up)}°, or make` : 'Make'} the gap ${book.has('gm') ? 'between the doors' : 'at the sides'} ${show(Math.ceil(v('need') * 10) / 10)}${v('e') > 0 ? ', or bring the pivot nearer to the edge' : ''}.`,
    source: 'joinery B2.3, G7',
  });
}
