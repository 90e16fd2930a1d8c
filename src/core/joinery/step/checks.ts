import { outlineArea } from '#core/geometry';
import { unknownDensity } from '#core/materials';
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
import { standFindings } from './joints.ts';
import type { StepLayout } from './sizes.ts';
import { standsOf } from './stands.ts';

const show = markSize;
const riserLimits = { low: 200, high: 300, danger: 400 } as const; // mm (joinery B13)
const slopeLimits = { low: 50, high: 70 } as const; // degrees (joinery B13)
const leastTread = 150; // mm, also clear for the toe (joinery B13)
const treadThickness = { usual: 18, least: 15 } as const; // mm: 18 joinery B13; 15 common practice, no source
const leastWidth = 350; // mm (joinery B13)
const mostMass = 10; // kg to lift out (joinery B13)
const playBetween = 6; // mm (joinery B13)

/** Why no step can be made; empty when one can. */
export function refuseStep({ book, choices }: StepLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const v = book.value;
  const stop = (code: string, message: string, remedy: string) =>
    say('stop', code, { message, remedy, source: 'joinery B13' });
  if (v('riser') > riserLimits.danger) {
    stop(
      'riser-dangerous',
      `Risers of ${show(v('riser'))} are dangerous: ${riserLimits.danger} is the most a crew can take in a seaway.`,
      'Allow more risers.',
    );
  }
  if (choices.form === 'flight') {
    if (v('n') < 2)
      stop('flight-of-one', `A rise of ${show(v('Ht'))} takes no tread at all.`, 'Take a box step.');
    return all();
  }
  if (v('k') > v('n')) {
    stop(
      'box-higher-than-way',
      `The box has ${v('k')} risers, the whole way only ${v('n')}.`,
      `Take ${v('n')} or fewer.`,
    );
  }
  if (v('riser_1_h') <= 20 || (v('k') > 1 && v('riser_h') <= 20)) {
    stop(
      'kick-takes-riser',
      `A kick space of ${show(v('kick_h'))} leaves ${show(v('riser_1_h'))} of the lowest riser.`,
      'Make the kick space lower.',
    );
  }
  if (v('kick_h') > 0 && v('kick_d') + v('T') > v('side_d') - 20) {
    stop(
      'kick-takes-depth',
      `A kick space ${show(v('kick_d'))} deep leaves no room for its board in a box ${show(v('side_d'))} deep.`,
      'Make it less deep.',
    );
  }
  return all();
}

/** Findings on a step that can be made (joinery B13, C0, G). */
export function checkStep(
  layout: StepLayout,
  parts: readonly Part[],
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, book } = layout;
  checkErgonomics(say, layout);
  checkLiftsOut(say, layout, parts);
  if (choices.form === 'flight' && choices.joint === 'rebate')
    say('note', 'rebates-in-flight', {
      message: 'A flight has no risers to lie in rebates: its treads are housed.',
      remedy: 'Choose housings, or another joint for the treads.',
      source: 'joinery B13, C8',
    });
  checkWideSolid(say, parts);
  checkSheetThickness(say, choices.stock.treads, book.value('tt'), 'Treads');
  checkMoisture(
    say,
    settings,
    parts.some(({ kind }) => kind === 'solid'),
  );
  return [...all(), ...standFindings(layout, standsOf(layout))];
}

function checkErgonomics(say: Say, { book, choices }: StepLayout): void {
  const v = book.value;
  const warn = (code: string, message: string, remedy: string) =>
    say('warn', code, { message, remedy, source: 'joinery B13' });
  if (v('n') > 1 && (v('riser') < riserLimits.low || v('riser') > riserLimits.high)) {
    warn(
      'riser-unusual',
      `Risers come out at ${show(v('riser'))}; ${riserLimits.low} to ${riserLimits.high} is usual.`,
      `Change the highest riser; all should be alike within ${show(3)}.`,
    );
  }
  if (v('n') > 1 && (v('slope') < slopeLimits.low || v('slope') > slopeLimits.high)) {
    warn(
      'slope-unusual',
      `The way up slopes ${formatNumber(v('slope'))}°; ${slopeLimits.low} to ${slopeLimits.high} is usual.`,
      v('slope') > slopeLimits.high ? 'Take a larger going.' : 'Take a smaller going, or fewer risers.',
    );
  }
  const foothold = choices.form === 'box' && v('k') > 1 ? Math.min(v('going'), v('depth')) : v('depth');
  if (foothold < leastTread) {
    warn(
      'tread-shallow',
      `A tread ${show(foothold)} deep is short for a foot; ${leastTread} is the least.`,
      'Make the treads deeper.',
    );
  }
  if (v('tt') < treadThickness.least) {
    warn(
      'tread-thin',
      `Treads ${show(v('tt'), 1)} thick: ${treadThickness.usual} is usual, and under ${treadThickness.least} they give under a foot.`,
      `Take a sheet or boards ${treadThickness.usual} thick.`,
    );
  }
  if (v('W') < leastWidth) {
    warn('step-narrow', `The step is ${show(v('W'))} wide; ${leastWidth} is the least.`, 'Make it wider.');
  }
  if (choices.form === 'box' && v('kick_h') === 0) {
    warn(
      'no-kick-space',
      'Without a kick space the toe strikes the box on the way down.',
      `Leave ${show(60)} high and ${show(30)} deep.`,
    );
  }
}

/** Mass of the parts by their outlines, kg. */
export function massOf(parts: readonly Part[], densityOf: (part: Part) => number): number {
  return parts.reduce(
    (sum, part) =>
      sum + (part.quantity * outlineArea(part.outline) * part.finished.thickness * densityOf(part)) / 1e9,
    0,
  );
}

function checkLiftsOut(say: Say, { book, choices }: StepLayout, parts: readonly Part[]): void {
  const { stock, between } = choices;
  const density = new Map(
    [stock.sides, stock.treads].map(({ id, density: known }) => [id, known ?? unknownDensity]),
  );
  const mass = massOf(parts, (part) => density.get(part.material) ?? unknownDensity);
  if (mass > mostMass) {
    say('warn', 'step-heavy', {
      message: `The step weighs about ${formatNumber(mass)} kg; over ${mostMass} one does not lift it out of the way of the engine.`,
      remedy: 'Take thinner or lighter sheets, or make it in two.',
      source: 'joinery B13',
    });
  }
  if (between === undefined || book.value('W') <= between - playBetween + 1e-9) return;
  say('stop', 'step-does-not-pass', {
    message: `The step is ${show(book.value('W'))} wide; between ${show(between)} it wants ${playBetween} of play, so ${show(between - playBetween)} at most.`,
    remedy: `Make it ${show(between - playBetween)} wide.`,
    source: 'joinery B13',
  });
}
