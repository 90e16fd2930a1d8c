import type { Point } from '#core/geometry';
import type { Problem } from '#core/problems';
import type { AdjustedReading, Adjustment, Reading, Survey } from './types.ts';

/** Agreement asked for, mm: far below any tape, far above rounding. */
const agreement = 1e-3;
/** A corner moved by this much must not fit better, mm. */
const nudge = 0.05;

/**
 * What is wrong with an adjustment: adjusted values that its own points do not show, residuals that do not add up, or a
 * shape near by that fits better. Worked out from the survey and the answer alone, sharing nothing with the adjustment.
 */
export function checkAdjustment(survey: Survey, adjustment: Adjustment): readonly Problem[] {
  const points = new Map(adjustment.points.map((point) => [point.id, { x: point.x, y: point.y }]));
  const bows = adjustedBows(survey, adjustment);
  const hands = [1, -1].map((hand) => ({ points, bows, tilt: adjustment.tilt, hand }));
  const faults = hands.map((view) => checkReadings(survey, adjustment, view));
  const [plain = [], mirrored = []] = faults;
  const view = plain.length <= mirrored.length ? hands[0] : hands[1];
  const best = plain.length <= mirrored.length ? plain : mirrored;
  const sum = adjustment.readings.reduce((total, { redundancy }) => total + redundancy, 0);
  const counted = Math.abs(sum - adjustment.dof) < agreement ? [] : [wrongSum(sum, adjustment.dof)];
  return [
    ...best,
    ...counted,
    ...(view && best.length === 0 && adjustment.undetermined.length === 0
      ? checkLeast(survey, adjustment, view)
      : []),
  ];
}

/** Points as listed; `hand` is -1 where they are listed mirrored. */
interface View {
  readonly points: ReadonlyMap<string, Point>;
  /** Degrees; null where upright is not known. */
  readonly tilt: number | null;
  readonly hand: number;
  /** By the names of both ends, in either order. */
  readonly bows: ReadonlyMap<string, number>;
}

/** The bows, of which only the readings tell. */
function adjustedBows(survey: Survey, adjustment: Adjustment): ReadonlyMap<string, number> {
  return new Map(
    survey.readings.flatMap((reading) => {
      const answer = adjustment.readings.find(({ id }) => id === reading.id);
      return reading.kind === 'bow' && answer
        ? [[nameEdge([reading.from, reading.to]), answer.adjusted]]
        : [];
    }),
  );
}

function nameEdge(ends: readonly string[]): string {
  return JSON.stringify([...ends].sort());
}

function checkReadings(survey: Survey, adjustment: Adjustment, view: View): readonly Problem[] {
  return adjustment.readings.flatMap((answer) => {
    const reading = survey.readings.find(({ id }) => id === answer.id);
    if (!reading) return [fault(answer.id, `Reading ${answer.id} is answered but was never given.`)];
    const shown = measureOn(view, reading);
    const off = Math.abs(answer.value - answer.adjusted - answer.residual);
    if (off > agreement)
      return [fault(answer.id, `Reading ${answer.id}: residual and adjusted value miss by ${off}.`)];
    if (shown === null || Math.abs(shown - answer.adjusted) <= agreement) return [];
    return [
      fault(answer.id, `Reading ${answer.id} is ${shown} mm on the points given, not ${answer.adjusted}.`),
    ];
  });
}

/** What a reading would be on the points; null where one of them is left open. */
function measureOn(view: View, reading: Reading): number | null {
  if (reading.kind === 'width') {
    const left = pointOn(view, reading.left, reading.at);
    const right = pointOn(view, reading.right, reading.at);
    const bow = [reading.left, reading.right].reduce(
      (sum, ends) => sum + (view.bows.get(nameEdge(ends)) ?? 0),
      0,
    );
    const swell = 4 * reading.at * (1 - reading.at) * bow;
    return left && right ? Math.hypot(right.x - left.x, right.y - left.y) + swell : null;
  }
  if (reading.kind === 'bow') return view.bows.get(nameEdge([reading.from, reading.to])) ?? null;
  const [from, to] = [view.points.get(reading.from), view.points.get(reading.to)];
  if (reading.kind === 'offset') return offsetOn(view, [from, to, view.points.get(reading.point)]);
  if (reading.kind === 'angle') return angleOn(view, reading, [from, to, view.points.get(reading.at)]);
  if (!from || !to) return null;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  if (reading.kind === 'distance') return Math.hypot(dx, dy);
  if (view.tilt === null) return null;
  const angle = (view.tilt * Math.PI) / 180;
  const upright = dy * Math.cos(angle) - dx * Math.sin(angle);
  const across = dx * Math.cos(angle) + dy * Math.sin(angle);
  return reading.kind === 'level' ? upright : view.hand * across;
}

type Three = readonly [from: Point | undefined, to: Point | undefined, third: Point | undefined];

/** Twice the area of the triangle over its base, positive to the left. */
function offsetOn({ hand }: View, [from, to, point]: Three): number | null {
  if (!from || !to || !point) return null;
  const area = from.x * (to.y - point.y) + to.x * (point.y - from.y) + point.x * (from.y - to.y);
  return (hand * area) / Math.hypot(to.x - from.x, to.y - from.y);
}

/** Degrees, in the turn nearest to the reading. */
function angleOn({ hand }: View, reading: Reading, [from, to, at]: Three): number | null {
  if (!from || !to || !at) return null;
  const direction = (end: Point) => (Math.atan2(end.y - at.y, end.x - at.x) * 180) / Math.PI;
  const turn = hand * (direction(to) - direction(from));
  return turn + 360 * Math.round((reading.value - turn) / 360);
}

function pointOn(view: View, [from, to]: readonly [string, string], at: number): Point | null {
  const [a, b] = [view.points.get(from), view.points.get(to)];
  return a && b ? { x: a.x + at * (b.x - a.x), y: a.y + at * (b.y - a.y) } : null;
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
  const better = [...moves, ...swells, ...turns].find((move) => misfit(move.view) < now - agreement);
  return better
    ? [fault(better.id, `Moved by ${nudge} mm, ${better.id} would fit the readings better.`)]
    : [];
}

function share(survey: Survey, answer: AdjustedReading, view: View): number {
  const reading = survey.readings.find(({ id }) => id === answer.id);
  const shown = reading ? measureOn(view, reading) : null;
  return shown === null ? 0 : ((answer.value - shown) / answer.sigma) ** 2;
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
