import type { Problem } from '#core/problems';
import { methods, sigmaOf } from './methods.ts';
import { showMm, showReading } from './words.ts';
import type { Reading, Survey } from './types.ts';

/** Longer than this is a slip of the pen: no opening in a boat or house, mm. */
const longestReading = 100_000;

/** What is wrong with a survey as entered, before anything is worked out; empty when all is well. */
export function checkSurvey(survey: Survey): readonly Problem[] {
  return [
    ...checkSide(survey),
    ...checkCount(survey),
    ...survey.readings.flatMap((reading, at) => checkReading(reading, survey.readings.slice(0, at))),
  ];
}

/** The readings that can be used: finite, between two points, each id once. `checkSurvey` names the others. */
export function usableReadings(survey: Survey): readonly Reading[] {
  return survey.readings.filter((reading, at) => !hasFault(reading, survey.readings.slice(0, at)));
}

function hasFault(reading: Reading, before: readonly Reading[]): boolean {
  return checkReading(reading, before).some((problem) => problem.severity === 'stop');
}

function checkSide({ seenFrom }: Survey): readonly Problem[] {
  if (typeof seenFrom === 'string' && seenFrom.trim() !== '') return [];
  return [
    {
      severity: 'stop',
      code: 'seen-from-missing',
      message:
        'The survey does not say from which side one looks, and distances cannot tell a shape from its mirror image.',
      remedy: 'Write where you stood and which way you looked, as "from the saloon, looking forward".',
      source: 'joinery 0.1, G3',
    },
  ];
}

function checkCount({ readings }: Survey): readonly Problem[] {
  if (readings.length > 0) return [];
  return [stop('no-readings', undefined, 'There are no readings yet.', 'Begin with the width of the sill.')];
}

function checkReading(reading: Reading, before: readonly Reading[]): readonly Problem[] {
  const fault =
    checkValue(reading) ?? checkSigma(reading) ?? checkPoints(reading) ?? checkId(reading, before);
  return fault ? [fault] : [];
}

function checkValue(reading: Reading): Problem | null {
  const values = [reading.value, ...(reading.repeats ?? [])];
  const positive = reading.kind === 'distance' || reading.kind === 'width';
  const wrong = values.find((value) => !Number.isFinite(value));
  if (wrong !== undefined)
    return stop('reading-not-a-number', reading, 'is not a number.', 'Type what the tape said, in mm.');
  const short = values.find((value) => positive && value <= 0);
  if (short !== undefined)
    return stop(
      'reading-not-positive',
      reading,
      `is ${showMm(short)} mm; a ${reading.kind} is more than 0.`,
      remeasure,
    );
  if (reading.kind === 'angle') return checkTurn(reading, values);
  const long = values.find((value) => Math.abs(value) > longestReading);
  if (long !== undefined)
    return stop(
      'reading-too-long',
      reading,
      `is ${showMm(long)} mm, longer than ${showMm(longestReading)} mm.`,
      'Readings are in millimetres: check the unit and the digits.',
    );
  return null;
}

function checkTurn(reading: Reading, values: readonly number[]): Problem | null {
  const wide = values.find((value) => Math.abs(value) > 360);
  if (wide === undefined) return null;
  return stop(
    'angle-too-wide',
    reading,
    `is ${showReading(reading, wide)}, more than a whole turn.`,
    'Give degrees counter-clockwise from the first direction to the second.',
  );
}

const remeasure = 'Measure it again, or take it out.';

function checkSigma(reading: Reading): Problem | null {
  if (reading.method !== undefined && !Object.hasOwn(methods, reading.method))
    return stop(
      'method-unknown',
      reading,
      `has the method ${String(reading.method)}, which is none of M1 to M14.`,
      'Choose one of M1 to M14.',
    );
  const sigma = sigmaOf(reading);
  if (Number.isFinite(sigma) && sigma >= 0.001 && sigma <= longestReading) return null;
  return stop(
    'sigma-not-positive',
    reading,
    `has the standard deviation ${String(reading.sigma)} mm, which says nothing.`,
    'Give at least 0.001 mm, or leave it out: the method then decides.',
  );
}

function checkPoints(reading: Reading): Problem | null {
  const { from, to } = reading.kind === 'width' ? { from: '', to: '' } : reading;
  if (reading.kind === 'offset' || reading.kind === 'angle') {
    const third = reading.kind === 'offset' ? reading.point : reading.at;
    return (
      checkEnds(reading, [from, to]) ?? checkEnds(reading, [third, from]) ?? checkEnds(reading, [third, to])
    );
  }
  if (reading.kind !== 'width') return checkEnds(reading, [from, to]);
  if (!(reading.at >= 0 && reading.at <= 1))
    return stop(
      'fraction-outside',
      reading,
      `is taken at the fraction ${String(reading.at)} of the edges.`,
      'Give a fraction from 0 to 1.',
    );
  const same = [...reading.left].sort().join() === [...reading.right].sort().join();
  if (same)
    return stop(
      'edges-alike',
      reading,
      'names the same edge on both sides.',
      'Name the left and the right edge.',
    );
  return checkEnds(reading, reading.left) ?? checkEnds(reading, reading.right);
}

function checkEnds(reading: Reading, [from, to]: readonly [string, string]): Problem | null {
  if (from.trim() === '' || to.trim() === '')
    return stop('point-unnamed', reading, 'has a point without a name.', 'Name both of its points.');
  if (from === '__proto__' || to === '__proto__')
    return stop(
      'point-unnamed',
      reading,
      'has a point named __proto__, which cannot be used.',
      'Name it otherwise.',
    );
  if (from !== to) return null;
  return stop(
    'ends-alike',
    reading,
    `runs from ${from} to ${to}, the same point.`,
    'Name two different points.',
  );
}

function checkId(reading: Reading, before: readonly Reading[]): Problem | null {
  if (reading.id.trim() === '')
    return stop('id-missing', reading, 'has no name.', 'Give every reading a name of its own.');
  if (!before.some((other) => other.id === reading.id)) return null;
  return stop(
    'id-twice',
    reading,
    `is there twice; the second, ${showMm(reading.value)} mm, is not used.`,
    'Rename one of them, or enter the second as a repeat of the first.',
  );
}

function stop(code: string, reading: Reading | undefined, rest: string, remedy: string): Problem {
  if (!reading) return { severity: 'stop', code, message: rest, remedy };
  return { severity: 'stop', code, about: reading.id, message: `Reading ${reading.id} ${rest}`, remedy };
}
