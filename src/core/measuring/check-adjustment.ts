import type { Problem } from '#core/problems';
import { adjustedBoards, adjustedBows, measureOn } from './check-view.ts';
import type { View } from './check-view.ts';
import type { AdjustedNumber, AdjustedReading, Adjustment, Reading, Survey } from './types.ts';

/** Agreement asked for, mm: far below any tape, far above rounding. */
const agreement = 1e-3;
/** A corner moved by this much must not fit better, mm. */
const nudge = 0.05;
/** Nor a board turned by this much, radians. */
const turning = 3e-5;

/**
 * What is wrong with an adjustment: adjusted values that its own points do not show, residuals that do not add up, or a
 * shape near by that fits better. Worked out from the survey and the answer alone, sharing nothing with the adjustment.
 */
export function checkAdjustment(survey: Survey, adjustment: Adjustment): readonly Problem[] {
  const points = new Map(adjustment.points.map((point) => [point.id, { x: point.x, y: point.y }]));
  const bows = adjustedBows(survey, adjustment);
  const boards = adjustedBoards(survey, adjustment);
  const hands = [1, -1].map((hand) => ({ points, bows, boards, tilt: adjustment.tilt, hand }));
  const faults = hands.map((view) => checkReadings(survey, adjustment, view));
  const [plain = [], mirrored = []] = faults;
  const view = plain.length <= mirrored.length ? hands[0] : hands[1];
  const best = plain.length <= mirrored.length ? plain : mirrored;
  const numbers = adjustment.readings.flatMap((each) => [each, ...(each.station ? [each.station] : [])]);
  const sum = numbers.reduce((total, { redundancy }) => total + redundancy, 0);
  const counted = Math.abs(sum - adjustment.dof) < agreement ? [] : [wrongSum(sum, adjustment.dof)];
  return [
    ...best,
    ...counted,
    ...(view && best.length === 0 && adjustment.undetermined.length === 0
      ? checkLeast(survey, adjustment, view)
      : []),
  ];
}

function checkReadings(survey: Survey, adjustment: Adjustment, view: View): readonly Problem[] {
  return adjustment.readings.flatMap((answer) => {
    const reading = survey.readings.find(({ id }) => id === answer.id);
    if (!reading) return [fault(answer.id, `Reading ${answer.id} is answered but was never given.`)];
    const value = checkNumber({ reading, number: answer }, view);
    const station = answer.station
      ? checkNumber({ reading, number: answer.station, part: 'station' }, view)
      : [];
    return [...value, ...station];
  });
}

interface Checked {
  readonly reading: Reading;
  readonly number: AdjustedNumber;
  readonly part?: 'station';
}

function checkNumber({ reading, number, part }: Checked, view: View): readonly Problem[] {
  const { id } = reading;
  const shown = measureOn(view, reading, part);
  const off = Math.abs(number.value - number.adjusted - number.residual);
  if (off > agreement) return [fault(id, `Reading ${id}: residual and adjusted value miss by ${off}.`)];
  if (shown === null || Math.abs(shown - number.adjusted) <= agreement) return [];
  return [fault(id, `Reading ${id} is ${shown} mm on the points given, not ${number.adjusted}.`)];
}

/** No point moved a little, and no upright turned a little, may bring the readings nearer. */
function checkLeast(survey: Survey, adjustment: Adjustment, view: View): readonly Problem[] {
  const misfit = (other: View) =>
    adjustment.readings.reduce((sum, answer) => sum + share(survey, answer, other), 0);
  const now = misfit(view);
  const moves = adjustment.points.flatMap(({ id, x, y }) =>
    [
      { x: x + nudge, y },
      { x: x - nudge, y },
      { x, y: y + nudge },
      { x, y: y - nudge },
    ].map((point) => ({ id, view: { ...view, points: new Map([...view.points, [id, point]]) } })),
  );
  const swells = [...view.bows].flatMap(([edge, bow]) =>
    [nudge, -nudge].map((more) => ({
      id: `the bow of ${edge}`,
      view: { ...view, bows: new Map([...view.bows, [edge, bow + more]]) },
    })),
  );
  const turns = [0.002, -0.002].map((turn) => ({
    id: 'tilt',
    view: { ...view, tilt: view.tilt === null ? null : view.tilt + turn },
  }));
  const slides = [...view.boards].flatMap(([board, place]) =>
    [
      { x: place.x + nudge },
      { x: place.x - nudge },
      { y: place.y + nudge },
      { y: place.y - nudge },
      { turn: place.turn + turning },
      { turn: place.turn - turning },
    ].map((moved) => ({
      id: `board ${board}`,
      view: { ...view, boards: new Map([...view.boards, [board, { ...place, ...moved }]]) },
    })),
  );
  const better = [...moves, ...swells, ...turns, ...slides].find(
    (move) => misfit(move.view) < now - agreement,
  );
  return better
    ? [fault(better.id, `Moved by ${nudge} mm, ${better.id} would fit the readings better.`)]
    : [];
}

function share(survey: Survey, answer: AdjustedReading, view: View): number {
  const reading = survey.readings.find(({ id }) => id === answer.id);
  if (!reading) return 0;
  const part = (number: AdjustedNumber, name?: 'station') => {
    const shown = measureOn(view, reading, name);
    return shown === null ? 0 : ((number.value - shown) / number.sigma) ** 2;
  };
  return part(answer) + (answer.station ? part(answer.station, 'station') : 0);
}

function wrongSum(sum: number, dof: number): Problem {
  return fault(undefined, `The redundancies add up to ${sum}, not to the ${dof} degrees of freedom.`);
}

function fault(about: string | undefined, message: string): Problem {
  return {
    severity: 'stop',
    code: 'adjustment-wrong',
    about,
    message,
    remedy: 'Do not cut from this; work the readings out again.',
  };
}
