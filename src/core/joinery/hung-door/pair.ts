import { formatNumber, markSize } from '#core/units';
import type { HungChoices } from './hung-choices.ts';
import { boxAtEdge, outOfLockEdge } from './lock-edge.ts';
import { cutBox } from './cut-box.ts';
import type { DoorLeaf } from './types.ts';
import { putParameters } from '../parameter-book.ts';
import type { Say } from '../piece-findings.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { Fixing, Part } from '../types.ts';
import type { WorkingBook } from '../working.ts';

const show = markSize;
const cp = 'common practice, no source';

interface Leaf {
  readonly leaf: DoorLeaf;
  readonly meeting: 'gap' | 'rebate';
}

/** Whether another door meets it in the same opening. */
export const isPaired = ({ leaf }: Pick<Leaf, 'leaf'>): boolean => leaf !== 'whole';

/** Whether it laps over the other, or is lapped. */
export const isRebated = ({ leaf, meeting }: Leaf): boolean => leaf !== 'whole' && meeting === 'rebate';

/** Name under which the width of the opening's doors is put in: of two doors that of both. */
export const widthName = (leaf: Pick<Leaf, 'leaf'>): 'Wd' | 'W_pair' => (isPaired(leaf) ? 'W_pair' : 'Wd');

/** Width of one door, mm: its own, or of two that meet. */
export function leafWidth(choices: HungChoices): number {
  if (!isPaired(choices)) return choices.width;
  const lap = isRebated(choices) ? choices.meetingRebate : 0;
  return (choices.width - choices.meetingGap + lap) / 2;
}

/** Works out the width of one of two doors and of the rebate at the meeting, when `W_pair` is in. */
export function sizeLeaf(book: WorkingBook, choices: HungChoices, infos: readonly ParameterInfo[]): void {
  if (!isPaired(choices)) return;
  const from = { infos, values: choices, given: choices.given };
  putParameters(book, from, { meetingGap: 'gm' });
  if (!isRebated(choices)) {
    book.work('Wd', '(W_pair - gm)/2', 'door width, one of two', cp);
    return;
  }
  putParameters(book, from, { meetingRebate: 'lap' });
  book.work('Wd', '(W_pair - gm + lap)/2', 'door width, one of two with its lap', cp);
}

/** Works out the depth of the rebate at the meeting, from T and f_v: half of the door, with room for the films. */
export function sizeLap(book: WorkingBook, choices: HungChoices): void {
  if (!isRebated(choices)) return;
  book.work('lap_D', 'T/2 + 0.5 + f_v', 'rebate at the meeting, depth', cp);
  book.work('T_lead', 'T - lap_D', 'wood left beside the rebate', cp);
}

/** What the rebate takes off the mass, as a term; the density of what it is cut from by its name. */
export const lapTerm = (choices: HungChoices, density: string): string =>
  isRebated(choices) ? ` - Hd*lap*lap_D*${density}*1e-6` : '';

/** The parts of a door with the rebate at the meeting and the pockets of its bolts. */
export function cutMeeting(parts: readonly Part[], book: WorkingBook, choices: HungChoices): readonly Part[] {
  const v = book.value;
  const rebated = isRebated(choices)
    ? cutBox(parts, {
        name: 'rebate',
        box: boxAtEdge(book, choices, {
          into: [0, v('lap')],
          up: [0, v('Hd')],
          deep: choices.leaf === 'first' ? [v('T') - v('lap_D'), v('T')] : [0, v('lap_D')],
        }),
        out: { x: 0, y: 0, z: choices.leaf === 'first' ? -1 : 1 },
        note: choices.leaf === 'first' ? 'laps over the other door' : 'under the lap of the other door',
      })
    : parts;
  if (choices.leaf !== 'second') return rebated;
  const ends = [
    [0, v('bolt_L')],
    [v('Hd') - v('bolt_L'), v('Hd')],
  ] as const;
  return ends.reduce<readonly Part[]>(
    (all, up) =>
      cutBox(all, {
        name: 'pocket',
        box: boxAtEdge(book, choices, {
          into: [v('bolt_from'), v('bolt_from') + v('bolt_in')],
          up,
          deep: [v('bolt_z') - v('bolt_W') / 2, v('bolt_z') + v('bolt_W') / 2],
        }),
        out: outOfLockEdge(choices),
        note: 'flush bolt; width, length and depth from the bolt itself',
      }),
    rebated,
  );
}

/** Sizes of the bolts of the door that is bolted, from T and Hd. */
export function sizeBolts(book: WorkingBook, choices: HungChoices): void {
  if (choices.leaf !== 'second') return;
  const rebated = isRebated(choices);
  book.work('bolt_L', 'min(150, Hd/4)', 'flush bolts, length', cp);
  book.put('bolt_W', 10, 'flush bolts, width of the pocket', cp);
  book.put('bolt_in', 12, 'flush bolts, depth of the pocket', cp);
  if (rebated) book.work('bolt_from', 'lap', 'pocket of the bolts begins behind the meeting edge by', cp);
  else book.put('bolt_from', 0, 'pocket of the bolts begins behind the meeting edge by', cp);
  book.work('bolt_z', rebated ? 'lap_D/2' : 'T/2', 'middle of the bolts behind the face', cp);
}

/** Bolts of the door that is bolted. */
export function boltFixings(book: WorkingBook, choices: HungChoices): readonly Fixing[] {
  if (choices.leaf !== 'second') return [];
  return [
    {
      item: `Flush bolt, ${formatNumber(book.value('bolt_L'))}, with keeps`,
      quantity: 2,
      use: 'the door that is bolted, into head and sill',
      source: cp,
    },
  ];
}

/** Findings on two doors that meet. */
export function checkMeeting(say: Say, book: WorkingBook, choices: HungChoices): void {
  if (!isPaired(choices)) return;
  const v = book.value;
  const least = 1.2 + 2 * v('f_v');
  if (v('gm') < least - 1e-9) {
    say('stop', 'no-room-once-finished', {
      message: `No room between the doors once varnished: gap ${show(v('gm'))}, films ${show(2 * v('f_v'))}; ${show(least)} is the least.`,
      remedy: `Make the gap between them ${show(least)} or more, in both doors.`,
      source: 'joinery 0.7, G6',
    });
  }
  if (isRebated(choices) && v('T_lead') < Math.max(5, v('T') / 4)) {
    say('stop', 'wall-too-thin', {
      message: `The rebate where the doors meet leaves ${show(v('T_lead'))} of ${show(v('T'))}; 5 and a quarter of the door are the least.`,
      remedy: 'Let them meet with a gap, or take thicker doors.',
      source: 'joinery C0.2, G21',
    });
  }
}
