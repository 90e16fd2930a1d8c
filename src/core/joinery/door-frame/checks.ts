import { formatNumber, markSize } from '#core/units';
import type { FrameChoices } from './choices.ts';
import type { FrameLayout } from './layout.ts';
import { coveredFaces } from './trim-sizes.ts';
import type { Problem, Severity } from '#core/problems';
import {
  bulkheadVariation,
  comfortableOpening,
  coverOverlap,
  largestPacking,
  leastFinishedGap,
  moistureStep,
  narrowestStop,
  visibleLean,
} from '../rules.ts';
import type { DoorFrameParameters } from './types.ts';
import type { JoinerySettings } from '../piece-types.ts';

const show = markSize;

/** Choices that do not go together, and what was taken instead. */
export function checkChoices(choices: FrameChoices, parameters: DoorFrameParameters): readonly Problem[] {
  const findings: Problem[] = [];
  const note = (severity: Severity, code: string, message: string, remedy: string) =>
    findings.push({ severity, code, message, remedy, source: 'joinery B1' });
  if (choices.infill && parameters.corner !== undefined && parameters.corner !== 'housing-between') {
    const message = `A panel above the head needs jambs that run up past it; ${parameters.corner} was asked, a housing between the jambs is taken.`;
    note('warn', 'infill-corner', message, 'Choose the housing between the jambs, or leave the panel out.');
  }
  if (parameters.stop === 'rebated' && choices.stop !== 'rebated') {
    const message = `A rebated lining does not go with a ${choices.corner} corner: the rebate would cut through the joint. Planted stops are taken.`;
    note(
      'stop',
      'rebated-corner',
      message,
      'Choose rebate, tongue or housing over the jambs, or a planted stop.',
    );
  }
  if (choices.stop === 'cover' && choices.covers !== 'far' && choices.covers !== 'both') {
    const message = `The far cover is to be the door's stop, but covers are chosen for: ${choices.covers}.`;
    note('stop', 'stop-without-cover', message, 'Give the far face a cover, or plant a stop.');
  }
  if (choices.infill && choices.infillOrdinates.length < 2) {
    const message = `The panel above the head has ${choices.infillOrdinates.length} heights; it needs two or more.`;
    note(
      'stop',
      'infill-ordinates',
      message,
      'Measure from the top of the head to the deckhead at equal steps, both ends included.',
    );
  }
  if (!choices.given.has('bulkheadMax')) {
    const message = `The bulkhead's thickness was not entered; ${show(choices.bulkheadMax)} is taken.`;
    note(
      'warn',
      'bulkhead-not-measured',
      message,
      'Measure it with a caliper at six points, and enter the thickest and the thinnest.',
    );
  }
  return findings;
}

/** Findings on a frame whose sizes are worked out (joinery B1.1 to B1.11, 0.7, G6, G7). */
export function checkFrame(layout: FrameLayout, settings: JoinerySettings): readonly Problem[] {
  return [
    ...checkGaps(layout),
    ...checkCovers(layout),
    ...checkDoor(layout, settings),
    ...checkBulkhead(layout),
    ...checkMoisture(settings),
  ];
}

function checkGaps({ book, mode, choices }: FrameLayout): readonly Problem[] {
  const findings: Problem[] = [];
  const largest = mode === 'square' ? book.value('G_max') : 0;
  if (largest > largestPacking) {
    findings.push({
      severity: 'warn',
      code: 'gap-too-wide',
      message: `A square frame leaves a gap of ${show(largest)}; more than ${largestPacking} is not packed.`,
      remedy: 'Fit the frame to the opening, choose another line as upright, or fur the opening out.',
      source: 'joinery B1.1, A11',
    });
  }
  const lean = Math.abs(book.value('leanmm_per_m'));
  if (mode === 'square' && lean > visibleLean) {
    findings.push({
      severity: 'warn',
      code: 'frame-leans',
      message: `The frame leans ${show(lean)} mm per m from the boat's vertical (datum: ${choices.datum}); the eye sees more than ${show(visibleLean)} mm.`,
      remedy:
        'Choose which line the eye will compare it with: the sides of the opening or the vertical of the boat.',
      source: 'joinery B1.2',
    });
  }
  const [width, height] = [book.value('Wc'), book.value('Hc')];
  if (width < comfortableOpening.width || height < comfortableOpening.height) {
    findings.push({
      severity: 'warn',
      code: 'opening-small',
      message: `The clear opening is ${show(width)} × ${show(height)}; a passage wants ${comfortableOpening.width} × ${comfortableOpening.height}.`,
      remedy:
        'Take thinner members, or carry on if it is not a passage; a way out in an emergency needs more.',
      source: 'joinery B1.4, common practice',
    });
  }
  findings.push({
    severity: 'note',
    code: 'twist-not-measured',
    message: 'Distances do not show whether the opening is twisted, nor what the door meets as it swings.',
    remedy: `Stretch strings corner to corner (a gap over ${show(3)} at the crossing is too much), and check the deck's camber at ${show(book.value('Wd'))} from the hinge.`,
    source: 'joinery B1.3, B1.9, A1 M8',
  });
  return findings;
}

function checkCovers(layout: FrameLayout): readonly Problem[] {
  const { book } = layout;
  if (coveredFaces(layout).length === 0) return [];
  return ['left_foot', 'left_head', 'right_foot', 'right_head', 'head'].flatMap((point) => {
    const overlap = book.value(`overlap_${point}`);
    if (overlap >= coverOverlap.good) return [];
    const place = point === 'head' ? 'at the head' : point.replace('_', ' at the ');
    return [
      {
        severity: overlap < coverOverlap.least ? ('stop' as const) : ('warn' as const),
        code: 'cover-overlap',
        message: `The cover laps ${show(overlap)} over the bulkhead ${place} (gap ${show(book.value(`gap_${point}`))}, lean uncertain by ${show(book.value('u95_lean'))}); it should be ${coverOverlap.good}.`,
        remedy: `Take a cover ${show(Math.ceil(coverOverlap.good - overlap))} wider, or fit the frame to the opening.`,
        source: 'joinery B1.6',
      },
    ];
  });
}

function checkDoor({ book, choices }: FrameLayout, settings: JoinerySettings): readonly Problem[] {
  const findings: Problem[] = [];
  const films = 2 * settings.film;
  const gaps = { sides: choices.doorGapSide, top: choices.doorGapTop, bottom: choices.doorGapBottom };
  for (const [place, gap] of Object.entries(gaps)) {
    if (gap - films >= leastFinishedGap) continue;
    findings.push({
      severity: 'stop',
      code: 'no-room-once-finished',
      message: `No room for the door to open once varnished, ${place}: gap ${show(gap)}, films ${show(films)}, left ${show(gap - films)} of ${show(leastFinishedGap)}.`,
      remedy: `Make the gap ${show(leastFinishedGap + films)} or more.`,
      source: 'joinery 0.7, G6',
    });
  }
  const needed = book.value('swing') + films + 0.8;
  if (choices.doorGapSide < needed) {
    findings.push({
      severity: 'warn',
      code: 'door-strikes-jamb',
      message: `The back corner of a square-edged door strikes the jamb: gap ${show(choices.doorGapSide)}, needed ${show(needed)}.`,
      remedy: 'Bevel the leading edge 2.5 degrees, or widen the gap.',
      source: 'joinery B2, G7',
    });
  }
  const proud = choices.doorThickness - book.value('Ld');
  if (choices.stop === 'cover' && proud > 0) {
    findings.push({
      severity: 'warn',
      code: 'door-proud',
      message: `A door ${show(choices.doorThickness)} thick against the far cover stands ${show(proud)} proud of the lining, ${show(book.value('Ld'))} deep.`,
      remedy: 'Take a thinner door, or set the near cover back from it by more than the hinge needs.',
      source: 'joinery B1, stop',
    });
  }
  const stop = choices.stop === 'rebated' ? book.value('Ld') - choices.doorThickness - 1 : null;
  const width = choices.stop === 'planted' ? book.value('stop_W') : stop;
  if (width === null || width >= narrowestStop) return findings;
  findings.push({
    severity: 'stop',
    code: 'stop-too-narrow',
    message: `The door stop comes out ${show(width)} wide; the door needs ${narrowestStop}. Lining ${show(book.value('Ld'))} deep, door ${show(choices.doorThickness)} thick.`,
    remedy: 'Let the cover on the far face be the stop, or take a thinner door.',
    source: 'joinery B1.11',
  });
  return findings;
}

function checkBulkhead({ book, choices }: FrameLayout): readonly Problem[] {
  const findings: Problem[] = [];
  const varies = choices.bulkheadMax - choices.bulkheadMin;
  if (varies > bulkheadVariation) {
    findings.push({
      severity: 'warn',
      code: 'bulkhead-varies',
      message: `The bulkhead varies by ${show(varies)} in thickness (${show(choices.bulkheadMin)} to ${show(choices.bulkheadMax)}); the lining swallows ${bulkheadVariation}.`,
      remedy: 'Scribe the covers, or make the lining in two parts.',
      source: 'joinery B1.7',
    });
  }
  if (varies < 0) {
    findings.push({
      severity: 'stop',
      code: 'bulkhead-limits-swapped',
      message: `The bulkhead's thinnest point (${show(choices.bulkheadMin)}) is thicker than its thickest (${show(choices.bulkheadMax)}).`,
      remedy: 'Exchange the two.',
    });
  }
  const sound = 4 * 4.5; // a screw takes at most a quarter of an edge (joinery C1)
  if (book.value('bulkhead_max') < sound) {
    findings.push({
      severity: 'warn',
      code: 'screw-splits-bulkhead',
      message: `Screws of ${show(4.5)} into the edge of a ${show(choices.bulkheadMax)} bulkhead may split it; an edge takes them from ${show(sound)}.`,
      remedy: 'Glue a doubler round the opening on the hidden face and screw through the lining into that.',
      source: 'joinery B1.8, C1, C0.1',
    });
  }
  return findings;
}

function checkMoisture(settings: JoinerySettings): readonly Problem[] {
  const middle = (settings.moistureLow + settings.moistureHigh) / 2;
  const off = settings.moistureNow - middle;
  if (Math.abs(off) <= moistureStep) return [];
  return [
    {
      severity: 'warn',
      code: 'timber-moisture',
      message: `The timber is at ${formatNumber(settings.moistureNow)} %, aboard it will be about ${formatNumber(middle)} %: ${formatNumber(Math.abs(off))} points ${off > 0 ? 'wetter' : 'drier'} than where it goes.`,
      remedy: 'Let it lie two weeks where it is as damp as aboard before the last planing.',
      source: 'joinery D2',
    },
  ];
}
