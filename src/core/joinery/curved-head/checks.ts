import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import { widestSegment, type HeadLayout } from './sizes.ts';
import { checkMoisture, checkWall, openFindings, type Say } from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';

const show = markSize;

const steepestDegrees = 70;
const steepest = Math.sin((steepestDegrees * Math.PI) / 180);
const flattest = 45; // degrees a saw tilts (joinery C20)
const fewestPlies = 5; // preferred (joinery B17)

/** A rise of more than half the span, or plies without end. */
export function refuseHead({ book: { value: v }, choices }: HeadLayout): readonly Problem[] {
  if (v('f') > v('c') / 2 + 1e-9) {
    return [
      {
        severity: 'stop',
        code: 'rise-too-high',
        message: `A rise of ${show(v('f'))} is more than half of the span of ${show(v('c'))}: no arc of a circle springs like that.`,
        remedy: `Make the rise ${show(v('c') / 2)} or less.`,
        source: 'joinery B17',
      },
    ];
  }
  if (choices.springing !== 'butt' && v('c') / 2 + v('e_s') > v('R') * steepest) {
    return [
      {
        severity: 'stop',
        code: 'springing-too-steep',
        message: `The head rises ${formatNumber(v('a'))}° at the springings; run on ${show(v('e_s'))} into the jambs it would turn past ${steepestDegrees}°, more along them than into them.`,
        remedy: 'Let it butt on the ends of the jambs, or take less rise or depth.',
        source: 'joinery B17, common practice',
      },
    ];
  }
  if (choices.method === 'sawn' || choices.plies <= 60) return [];
  return [
    {
      severity: 'stop',
      code: 'plies-too-many',
      message: `${choices.plies} plies were asked for.`,
      remedy: 'Enter 14 or fewer.',
      source: 'joinery B17',
    },
  ];
}

/** Findings on a curved head (joinery B17, C0.2, C0.3, D2). */
export function checkHead(layout: HeadLayout, settings: JoinerySettings): readonly Problem[] {
  const { say, all } = openFindings();
  if (layout.choices.method === 'laminated') checkPlies(say, layout);
  else checkSawn(say, layout);
  checkSpringings(say, layout);
  checkMoisture(say, settings, true);
  return all();
}

/** The joints with the jambs (joinery B17, B1.10, C0.2). */
function checkSpringings(say: Say, { book, choices }: HeadLayout): void {
  const v = book.value;
  if (choices.springing === 'housed' || choices.springing === 'rebated') {
    const what = choices.springing === 'housed' ? 'housing' : 'rebate';
    checkWall(say, `Jamb behind the ${what} of the head`, v('tj') - v('e_s'), v('tj'));
  }
  if (choices.springing === 'halved') {
    checkWall(say, 'Half of the lap over the jamb', v('depth') / 2, v('depth'));
  }
  if (choices.springing !== 'butt' || !book.has('jamb_L') || 90 - v('a') <= flattest) return;
  say('warn', 'springing-flat', {
    message: `The head comes to the jambs ${formatNumber(v('a'))}° off level: their tops would be sawn ${formatNumber(90 - v('a'))}° off square, ${show(v('jamb_over'))} long.`,
    remedy: 'House the head in the jambs, or stand it in a rebate.',
    source: 'joinery B17',
  });
}

function checkPlies(say: Say, { book }: HeadLayout): void {
  const v = book.value;
  const thin = Math.floor((v('R') / 125) * 10) / 10;
  if (v('t') > v('t_max') + 1e-9) {
    const breaks = v('t') > v('R') / 100;
    say(breaks ? 'stop' : 'warn', 'ply-too-thick', {
      message: `A ply of ${show(v('t'))} over a radius of ${show(v('R'))} is stretched ${formatNumber(v('strain'), 2)} %; dry strips take 0.4, and ${breaks ? 'at 0.5 they break' : 'this may break'}.`,
      remedy: `Make the plies ${show(thin)} or thinner, more of them, or steam them.`,
      source: 'joinery B17, common practice',
    });
  }
  if (v('n') < fewestPlies) {
    say('warn', 'plies-few', {
      message: `${v('n')} plies spring back by ${formatNumber(100 / v('n') ** 2)} % of the curve; ${fewestPlies} or more hold it.`,
      remedy: `Take ${fewestPlies} or more, thinner.`,
      source: 'joinery B17',
    });
  }
  say('note', 'springback', {
    message: `The mould has a radius of ${show(v('Rm'))} for a head of ${show(v('R'))}: released, it springs back by ${show(v('mould_rise') - v('f'))} at the crown.`,
    remedy: 'Measure the rise of the first one when it comes off; the jambs are cut to it.',
    source: 'joinery B17',
  });
}

function checkSawn(say: Say, { book, segments }: HeadLayout): void {
  const v = book.value;
  const angle = 2 * v('h');
  if (angle > widestSegment + 1e-9) {
    say('stop', 'short-grain', {
      message: `One segment turns ${formatNumber(angle)}°; over ${widestSegment} the grain at its ends is short and breaks.`,
      remedy: segments === 1 ? 'Saw it from two, joined at the crown, or laminate it.' : 'Laminate it.',
      source: 'joinery B17, C0.3',
    });
  }
  if (segments === 1) return;
  checkWall(say, 'Segment beside the loose tenon', (v('depth') - v('tenon_t')) / 2, v('depth'));
}
