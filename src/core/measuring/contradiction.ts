import { suspectLimit } from '#core/numerics';
import type { Problem } from '#core/problems';
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
      message: `Readings contradict each other${missClosing(study)}: the worst lies ${showMm(largest)} times its own deviation off, where ${showMm(suspectLimit)} is the limit. ${accuse(study)}`,
      remedy: 'Measure the named reading again before cutting anything; nothing has been corrected.',
      source: 'joinery A4, G1',
    },
  ];
}

/** By how many mm the six distances of an opening miss closing, when all six are there. */
function missClosing({ readings }: Study): string {
  const value = (key: OpeningKey) => readings.find((reading) => openingKeyOf(reading) === key)?.value ?? NaN;
  const [wb, wt, hl, hr] = [value('wb'), value('wt'), value('hl'), value('hr')];
  const closed = closeQuadrilateral({ wb, wt, hl, hr, d1: value('d1'), d2: value('d2') });
  return closed && Number.isFinite(closed.closure)
    ? ` (the six distances miss closing by ${showMm(Math.abs(closed.closure))} mm)`
    : '';
}

function accuse({ verdict, readings }: Study): string {
  const words = (s: Suspect) => {
    const reading = readings.find((r) => r.id === s.id);
    const side = s.slip > 0 ? 'too large' : 'too small';
    const size =
      reading?.kind === 'angle' ? showReading(reading, Math.abs(s.slip)) : `${showMm(Math.abs(s.slip))} mm`;
    return `the ${reading ? readingWords(reading) : s.id} is about ${size} ${side}`;
  };
  const [first] = verdict.suspects;
  const all = verdict.suspects.map(words);
  if (!first) return 'Which of them is wrong cannot be said.';
  switch (verdict.kind) {
    case 'exchanged':
      return `Most likely ${first.cause} (${first.mistake ?? ''}).`;
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
