import { formatNumber, markSize } from '#core/units';
import type { Problem } from '#core/problems';
import {
  checkMoisture,
  checkSheetThickness,
  checkWideSolid,
  openFindings,
  type Say,
} from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';
import type { Part } from '../types.ts';
import { shortest } from './parts.ts';
import type { TrimLayout } from './sizes.ts';

const show = markSize;
const sharpest = 20; // degrees of a corner that can be mitred at all (common practice, no source)
const leastPostWood = 5; // mm over the corner of the wall (joinery C0.2)
const leastPostStep = 3; // mm that a post's radius must exceed the trim (common practice, no source)
const hardlyCorner = 1; // degrees from straight
const worthTelling = 2; // mm of bow that a trim does not follow unseen (common practice, no source)

/** Why no trim can be cut; empty when it can. */
export function refuseTrim({ book, choices, ends }: TrimLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const v = book.value;
  const stop = (code: string, message: string, remedy: string) =>
    say('stop', code, { message, remedy, source: 'joinery B11' });
  choices.run.angles.forEach((angle, i) => {
    if (angle >= sharpest && angle <= 360 - sharpest) return;
    stop(
      'corner-too-sharp',
      `Corner ${i + 1} is ${formatNumber(angle)}°: it cannot be mitred.`,
      'Check the angle; it is measured on the side of the room.',
    );
  });
  if (choices.outside === 'post' && choices.tiltDegrees !== 90) {
    stop(
      'post-with-sprung-trim',
      `A post goes with trim that stands against the wall, not with one tilted ${formatNumber(choices.tiltDegrees)}°.`,
      'Set the tilt to 90, or mitre the outside corners.',
    );
  }
  if (all().length > 0) return all();
  choices.run.walls.forEach((wall, i) => {
    const least = Math.min(v(`Lf_${i + 1}`), v(`L_${i + 1}`));
    if (least > 0) return;
    stop(
      'trim-longer-corners-than-wall',
      `The corners take more than ${wall.name}, ${show(wall.length)} long, has: its front comes out at ${show(least)}.`,
      'Check the length and the angles, or take thinner trim.',
    );
  });
  for (const { right } of ends) {
    if (right.kind !== 'post') continue;
    const [R, t, wood] = [v('R'), v('t'), v(`wood_${right.corner}`)];
    if (R >= t + leastPostStep && wood >= leastPostWood) continue;
    stop(
      'post-radius-unfit',
      R < t + leastPostStep
        ? `A post of radius ${show(R)} is no larger than the trim, ${show(t)} thick.`
        : `A post of radius ${show(R)} leaves ${show(wood)} of wood over the wall at corner ${right.corner}; ${leastPostWood} is the least.`,
      R < t + leastPostStep
        ? `Take ${show(t + leastPostStep)} or more, or mitre the corner.`
        : 'Take a smaller radius, or cut the corner of the wall back.',
    );
  }
  return all();
}

/** Findings on a trim run that can be cut (joinery B11, A10). */
export function checkTrim(
  layout: TrimLayout,
  parts: readonly Part[],
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, book } = layout;
  checkCorners(say, layout);
  checkLengths(say, layout, parts);
  if (book.value('w') > 150) checkWideSolid(say, parts);
  checkSheetThickness(say, choices.material, book.value('t'), 'Trim');
  checkMoisture(say, settings, choices.material.kind === 'solid');
  return all();
}

function checkCorners(say: Say, { choices, book }: TrimLayout): void {
  const { run } = choices;
  const straight = run.angles.flatMap((angle, i) => (Math.abs(angle - 180) < hardlyCorner ? [i + 1] : []));
  if (straight.length > 0) {
    say('note', 'corner-nearly-straight', {
      message: `Corner ${straight.join(', ')} is within ${hardlyCorner}° of straight.`,
      remedy: 'Run one piece past it if it bends that much, or scarf there.',
      source: 'joinery B11',
    });
  }
  if (run.angles.length > 0 && book.value('w') <= 150) {
    say('note', 'corner-error-opens', {
      message: `Half a degree wrong opens a corner by ${show(book.value('open_half'), 2)} over the width of ${show(book.value('w'))}.`,
      remedy: 'Try every angle on two offcuts aboard before the pieces are cut.',
      source: 'joinery B11',
    });
  }
  const bowed = run.walls.filter(({ bow }) => Math.abs(bow) > worthTelling);
  if (bowed.length === 0) return;
  say('note', 'wall-bows', {
    message: `${bowed.map(({ name, bow }) => `${name} bows ${show(Math.abs(bow))} ${bow > 0 ? 'away from the room' : 'into the room'}`).join(', ')}: the trim is sprung to it or scribed.`,
    remedy: `Fix it closer there, or leave the back edge to be scribed.`,
    source: 'joinery A10, A11',
  });
}

function checkLengths(say: Say, { choices, book, pieces }: TrimLayout, parts: readonly Part[]): void {
  const short = parts.filter(({ finished }) => finished.length < shortest);
  if (short.length > 0) {
    say('note', 'trim-piece-short', {
      message: `Shorter than ${show(shortest)}: ${short.map(({ id, finished }) => `${id} (${show(finished.length)})`).join(', ')}.`,
      remedy: 'Mitre the end of a longer stick, then cut the piece off it; glue it on as a return.',
      source: 'joinery B11, D5',
    });
  }
  const scarfed = choices.run.walls.flatMap((wall, i) =>
    (pieces[i] ?? 1) > 1 ? [`${wall.name} (${show(book.value(`L_${i + 1}`))}, ${pieces[i]} pieces)`] : [],
  );
  if (scarfed.length === 0) return;
  say('note', 'trim-scarfed', {
    message: `Longer than a stick of ${show(book.value('stick'))}: ${scarfed.join(', ')}.`,
    remedy: 'Scarf at 45° over a fixing, the overlap away from the eye.',
    source: 'joinery B11',
  });
}
