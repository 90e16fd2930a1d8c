import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import type { PanelLayout } from './sizes.ts';
import { checkWideSolid, openFindings, type Say } from '../piece-findings.ts';
import { leastFinishedGap } from '../rules.ts';
import type { Part } from '../types.ts';

const show = markSize;

const leastLap = 10; // on the surround, on the cleats, and of a closed button on the panel, mm (joinery B14)
const clearOpen = 2; // open button to the edge of the panel, mm (joinery B14)
const pullBeyond = 20; // room beyond the thickness to pull a panel straight out, mm (joinery B14)

/** Findings on an access panel (joinery B14, 0.7, D3). */
export function checkPanel(layout: PanelLayout, parts: readonly Part[]): readonly Problem[] {
  const { say, all } = openFindings();
  checkHold(say, layout);
  checkButtons(say, layout);
  checkRoom(say, layout);
  checkWideSolid(say, parts);
  return all();
}

function checkHold(say: Say, { book, choices }: PanelLayout): void {
  const v = book.value;
  const lap = choices.mount === 'lap';
  const hold = v(lap ? 'lap' : 'bearing');
  if (hold < leastLap - 1e-9) {
    say('warn', 'panel-hold-small', {
      message: `The panel ${lap ? 'laps' : 'bears'} ${show(hold)} on ${lap ? 'the surround' : 'its cleats'}; ${show(leastLap)} is the least.`,
      remedy: lap
        ? `Make the lap ${show(leastLap)} or more.`
        : `Make the cleats ${show(leastLap + v('g'))} wide or more.`,
      source: 'joinery B14',
    });
  }
  const left = lap ? leastFinishedGap : v('g') - 2 * v('f_v');
  if (left < leastFinishedGap - 1e-9) {
    say('stop', 'no-room-once-finished', {
      message: `No room to take the panel out once varnished: gap ${show(v('g'))}, films ${show(2 * v('f_v'))}, left ${show(left)} of ${show(leastFinishedGap)}.`,
      remedy: `Make the gap ${show(leastFinishedGap + 2 * v('f_v'))} or more.`,
      source: 'joinery 0.7, G6',
    });
  }
  if (!(lap && choices.skew > v('lap') - leastLap) && choices.skew < 1) return;
  say('note', 'hole-not-square', {
    message: lap
      ? `The hole is ${show(choices.skew)} off a rectangle; the panel is one round all of it: it laps ${show(v('lap'))} at the least, and up to about ${show(v('lap') + choices.skew)}.`
      : `The hole is ${show(choices.skew)} off a rectangle; the panel follows it, with an even gap all round: it fits one way only.`,
    remedy: lap
      ? 'Look whether so uneven a lap disturbs; a wider one makes the difference look smaller.'
      : 'Cut it by its outline, not as a rectangle, and mark face and top on the blank.',
    source: 'joinery B14',
  });
}

function checkButtons(say: Say, { book }: PanelLayout): void {
  const v = book.value;
  if (v('reach') < leastLap - 1e-9) {
    say('warn', 'button-short', {
      message: `A closed button reaches ${show(v('reach'))} over the panel; ${show(leastLap)} is the least.`,
      remedy: `Make it ${show(v('e') + leastLap)} from pivot to tip.`,
      source: 'joinery B14',
    });
  }
  if (v('clear') >= clearOpen - 1e-9) return;
  say(v('clear') < 0 ? 'stop' : 'warn', 'button-in-the-way', {
    message: `An open button ${show(v('bw'))} wide is ${show(v('clear'))} from the edge of the panel; ${clearOpen} lets it out.`,
    remedy: `Set the pivot ${show(v('bw') / 2 + clearOpen)} from the edge of the panel, or take a narrower button.`,
    source: 'joinery B14',
  });
}

function checkRoom(say: Say, { book, choices }: PanelLayout): void {
  const needed = book.value('T') + pullBeyond;
  if (choices.pullRoom === undefined || choices.pullRoom >= needed) return;
  say('warn', 'panel-cannot-be-pulled', {
    message: `There is ${show(choices.pullRoom)} in front of the panel; to pull it straight out takes ${show(needed)}.`,
    remedy: 'Try with a piece of cardboard whether it can be tilted out, or split the panel.',
    source: 'joinery B14',
  });
}
