import { suspectLimit } from '#core/numerics';
import type { Problem } from '#core/problems';
import { sigmaOf } from './methods.ts';
import { openingKeyOf, readingWords } from './opening.ts';
import type { OpeningKey } from './opening.ts';
import { closeQuadrilateral } from './quadrilateral.ts';
import type { Study } from './study.ts';
import { joinWords, showMm, showReading } from './words.ts';
import type { Suspect } from './types.ts';

/** Readings that contradict each other, with the suspects in words; empty when they agree. Source: joinery A4, G1. */
export function findContradiction(study: Study): readonly Problem[] {
  const { suspects, kind, largest } = study.verdict;
  if (kind === 'none') return [];
  return [
    {
      severity: 'stop',
      code: 'readings-contradict',
      about: suspects[0]?.id,
      message: `Readings contradict each other${missClosing(study)}: the worst is off by ${showMm(largest)} times the usual error of such a reading (up to ${showMm(suspectLimit)} times can be chance). ${accuse(study)}`,
      remedy: 'Measure the named reading again before cutting anything; nothing has been corrected.',
      source: 'joinery A4, G1',
    },
  ];
}

const six = ['wb', 'wt', 'hl', 'hr', 'd1', 'd2'] as const satisfies readonly OpeningKey[];
const nudge = 0.01; // mm, for the slope of the closure

/** By how many mm the six distances of an opening miss closing, when that alone is beyond its limit (joinery A2). */
function missClosing({ readings }: Study): string {
  const found = six.map((key) => readings.find((reading) => openingKeyOf(reading) === key));
  const known = found.filter((reading) => reading !== undefined);
  if (known.length < six.length) return '';
  const values = known.map(({ value }) => value);
  const closure = closureOf(values);
  const spread = known.map((reading, i) => {
    const moved = closureOf(values.map((value, at) => (at === i ? value + nudge : value)));
    return ((moved - closure) / nudge) * sigmaOf(reading);
  });
  const isBeyond = Math.abs(closure) > suspectLimit * Math.hypot(...spread);
  return isBeyond ? ` (the six distances miss closing by ${showMm(Math.abs(closure))} mm)` : '';
}

/** The closure of the six distances in the order of `six`, mm; NaN when they make no triangles. */
function closureOf([wb = NaN, wt = NaN, hl = NaN, hr = NaN, d1 = NaN, d2 = NaN]: readonly number[]): number {
  return closeQuadrilateral({ wb, wt, hl, hr, d1, d2 })?.closure ?? NaN;
}

function accuse({ verdict, readings }: Study): string {
  const words = (s: Suspect) => {
    const reading = readings.find((r) => r.id === s.id);
    const side = s.slip > 0 ? 'too large' : 'too small';
    const size =
      reading?.kind === 'angle' ? showReading(reading, Math.abs(s.slip)) : `${showMm(Math.abs(s.slip))} mm`;
    const station = s.part === undefined ? '' : 'station of the ';
    return `the ${station}${reading ? readingWords(reading) : s.id} is about ${size} ${side}`;
  };
  const [first] = verdict.suspects;
  const all = verdict.suspects.map(words);
  if (!first) return 'Which of them is wrong cannot be said.';
  switch (verdict.kind) {
    case 'exchanged':
      return `Most likely ${first.cause}.`;
    case 'one':
      return `Most likely ${words(first)}: ${first.cause}.`;
    case 'several':
      if (first.mistake === 'E14') return `Most likely ${first.cause}: ${joinWords(all)}.`;
      return `More than one reading is wrong: ${joinWords(all)}.`;
    case 'group':
      return `One of these is wrong, and this set cannot tell which: ${joinWords(all, 'or')}. First to look at, ${first.id}: ${first.cause}.`;
    default:
      return `No single reading explains it; the worst is ${first.id}.`;
  }
}
