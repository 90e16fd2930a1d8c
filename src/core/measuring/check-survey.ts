import type { Problem } from '#core/problems';
import { checkPlaces } from './check-places.ts';
import { methods, sigmaOf } from './methods.ts';
import { namesOf } from './network.ts';
import { refuse } from './refuse.ts';
import { joinWords, showMm, showReading } from './words.ts';
import type { KnownPoint, Reading, Survey } from './types.ts';

/** Longer than this is a slip of the pen: no opening in a boat or house, mm. */
const longestReading = 100_000;

/** Larger surveys would take minutes and memory that nobody has aboard; the time grows with the cube of the points. */
const most = { points: 500, readings: 2000 } as const;

/** What is wrong with a survey as entered, before anything is worked out; empty when all is well. */
export function checkSurvey(survey: Survey): readonly Problem[] {
  return [
    ...checkSide(survey),
    ...checkCount(survey),
    ...checkFixed(survey),
    ...checkSize(survey),
    ...survey.readings.flatMap((reading, at) => checkReading(reading, survey.readings.slice(0, at))),
  ];
}

/** The readings that can be used: finite, between two points, each id once. `checkSurvey` names the others. */
export function usableReadings(survey: Survey): readonly Reading[] {
  if (checkSize(survey).length > 0) return [];
  return survey.readings.filter((reading, at) => !hasFault(reading, survey.readings.slice(0, at)));
}

/** The held points that the readings mention, if there are two at least; otherwise none is held. */
export function usableFixed(survey: Survey, readings: readonly Reading[]): readonly KnownPoint[] {
  const names = new Set(readings.flatMap(namesOf));
  const known = (survey.fixed ?? []).filter(({ id }) => names.has(id));
  return known.length >= 2 && checkFixed(survey).length === 0 ? known : [];
}

/** A point held further out than this is a slip of the pen, mm. */
const farthest = 1e10;

function checkFixed({ fixed = [], readings }: Survey): readonly Problem[] {
  if (fixed.length === 0) return [];
  const fault = (message: string, remedy: string): readonly Problem[] => [
    { severity: 'stop', code: 'fixed-points', message: `${message} None is held.`, remedy },
  ];
  const far = fixed.find(({ x, y }) => !(Math.abs(x) <= farthest && Math.abs(y) <= farthest));
  if (far) return fault(`The known point ${far.id} has no place that can be used.`, 'Give x and y in mm.');
  const twice = fixed.find(({ id }, at) => fixed.findIndex((other) => other.id === id) < at);
  if (twice) return fault(`The known point ${twice.id} is given twice.`, 'Give each known point once.');
  const names = new Set(readings.flatMap(namesOf));
  const idle = fixed.map(({ id }) => id).filter((id) => !names.has(id));
  if (fixed.length - idle.length >= 2) return [];
  const what = idle.length > 0 ? ` (no reading mentions ${joinWords(idle)})` : '';
  return fault(
    `Fewer than two known points can be used${what}, and one alone fixes no direction.`,
    'Measure from a second known point, or leave them out.',
  );
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
  return [
    refuse('no-readings', undefined, 'There are no readings yet.', 'Begin with the width of the sill.'),
  ];
}

function checkSize({ readings }: Survey): readonly Problem[] {
  const points = new Set(readings.flatMap(namesOf)).size;
  if (points <= most.points && readings.length <= most.readings) return [];
  const much =
    points > most.points
      ? `names ${points} points; at most ${most.points}`
      : `has ${readings.length} readings; at most ${most.readings}`;
  return [
    refuse(
      'survey-too-large',
      undefined,
      `The survey ${much} can be adjusted at once.`,
      'Divide it into surveys of one place each.',
    ),
  ];
}

function checkReading(reading: Reading, before: readonly Reading[]): readonly Problem[] {
  const fault =
    checkValue(reading) ?? checkPlaces(reading) ?? checkSigma(reading) ?? checkId(reading, before);
  return fault ? [fault] : [];
}

function checkValue(reading: Reading): Problem | null {
  const values = [reading.value, ...(reading.repeats ?? [])];
  const positive = ['distance', 'width', 'thickness'].includes(reading.kind);
  const wrong = [...values, reading.toConfirm ?? 0].find((value) => !Number.isFinite(value));
  if (wrong !== undefined)
    return refuse('reading-not-a-number', reading, 'is not a number.', 'Type what the tape said, in mm.');
  const short = values.find((value) => positive && value <= 0);
  if (short !== undefined)
    return refuse(
      'reading-not-positive',
      reading,
      `is ${showMm(short)} mm; a ${reading.kind} is more than 0.`,
      remeasure,
    );
  if (reading.kind === 'angle') return checkTurn(reading, values);
  const long = values.find((value) => Math.abs(value) > longestReading);
  if (long !== undefined)
    return refuse(
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
  return refuse(
    'angle-too-wide',
    reading,
    `is ${showReading(reading, wide)}, more than a whole turn.`,
    'Give degrees counter-clockwise from the first direction to the second.',
  );
}

const remeasure = 'Measure it again, or take it out.';

function checkSigma(reading: Reading): Problem | null {
  if (reading.method !== undefined && !Object.hasOwn(methods, reading.method))
    return refuse(
      'method-unknown',
      reading,
      `has the method ${String(reading.method)}, which is none of M1 to M14.`,
      'Choose one of M1 to M14.',
    );
  const sigma = sigmaOf(reading);
  if (Number.isFinite(sigma) && sigma >= 0.001 && sigma <= longestReading) return null;
  return refuse(
    'sigma-not-positive',
    reading,
    `has the standard deviation ${String(reading.sigma)} mm, which says nothing.`,
    'Give at least 0.001 mm, or leave it out: the method then decides.',
  );
}

function checkId(reading: Reading, before: readonly Reading[]): Problem | null {
  if (reading.id.trim() === '')
    return refuse('id-missing', reading, 'has no name.', 'Give every reading a name of its own.');
  if (!before.some((other) => other.id === reading.id)) return null;
  return refuse(
    'id-twice',
    reading,
    `is there twice; the second, ${showMm(reading.value)} mm, is not used.`,
    'Rename one of them, or enter the second as a repeat of the first.',
  );
}
