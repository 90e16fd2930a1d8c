import { cornersOfBox, joinBoxes3, placePoint, type Box3, type Placement } from '#core/geometry';
import type { BuiltPiece, Part, PartSize } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { MadePart, Project } from '#core/project';
import { formatLength, type LengthSystem } from '#core/units';
import { listWords, unitOf } from './words.ts';

/** Less than this the fitting takes up, mm (joinery G10). */
const takenUp = 0.5;
/** Of its own length a neighbour may lie within another part, as a tenon in its mortise. */
const joined = 0.45;

type Axis = 'x' | 'y';
const axes: readonly Axis[] = ['x', 'y'];
const across: Readonly<Record<Axis, string>> = { x: 'width', y: 'height' };

/** One copy of a part where it stands, and how much longer it was made along each axis than planned. */
interface Member {
  readonly part: Part;
  readonly box: Box3;
  readonly longer: Readonly<Record<Axis, number>>;
}

/**
 * Members that stand end to end through a piece, of any kind, added up as they were cut with the gaps between them and what
 * goes into each other: said where that is not what the piece, and what it fills, needs (joinery G10).
 */
export function checkSums(project: Project, pieces: readonly BuiltPiece[]): readonly Problem[] {
  const made = new Map((project.made ?? []).map((each) => [each.part, each]));
  if (made.size === 0) return [];
  return pieces.flatMap((piece) => {
    const members = piece.parts.flatMap((part) =>
      part.placements.map((placement) => memberOf(part, placement, made.get(part.id))),
    );
    const found = axes.flatMap((axis) =>
      members
        .filter(({ longer }) => longer[axis] !== 0)
        .flatMap((member) => addUp(piece, { member, members, axis, units: project.units })),
    );
    return firstOfEach(found);
  });
}

function memberOf(part: Part, placement: Placement, made: MadePart | undefined): Member {
  const { length, width, thickness } = part.finished;
  const box = joinBoxes3(
    cornersOfBox({ min: { x: 0, y: 0, z: 0 }, max: { x: length, y: width, z: thickness } })
      .map((corner) => placePoint(placement, corner))
      .map((p) => ({ min: p, max: p })),
  );
  const longer = (axis: Axis): number => {
    if (!made) return 0;
    const size = sizeAlong(placement, axis);
    return size === null ? 0 : made.finished[size] - part.finished[size];
  };
  return { part, box, longer: { x: longer('x'), y: longer('y') } };
}

/** Which size of a part lies along an axis of the piece; null for one that stands askew. */
function sizeAlong({ xAxis, yAxis }: Placement, axis: Axis): keyof PartSize | null {
  const [u, v] = [Math.abs(xAxis[axis]), Math.abs(yAxis[axis])];
  if (u > 0.999) return 'length';
  if (v > 0.999) return 'width';
  return isThrough(xAxis, yAxis, axis) ? 'thickness' : null;
}

/** Whether the thickness of a part, square to both its axes, lies along an axis of the piece. */
function isThrough(x: Placement['xAxis'], y: Placement['yAxis'], axis: Axis): boolean {
  const z = axis === 'x' ? x.y * y.z - x.z * y.y : x.z * y.x - x.x * y.z;
  return Math.abs(z) > 0.999;
}

interface Sum {
  readonly member: Member;
  readonly members: readonly Member[];
  readonly axis: Axis;
  readonly units: LengthSystem;
}

function addUp(piece: BuiltPiece, sum: Sum): readonly Problem[] {
  const { axis, units } = sum;
  const chain = chainThrough(sum);
  const ends = [chain[0], chain.at(-1)];
  const more = chain.reduce((total, each) => total + each.longer[axis], 0);
  if (chain.length < 2 || Math.abs(more) <= takenUp) return [];
  const needed = (ends[1]?.box.max[axis] ?? 0) - (ends[0]?.box.min[axis] ?? 0);
  const show = (length: number): string =>
    formatLength(length, { system: units, step: units === 'mm' ? 0.1 : 1 / 32 });
  const names = listWords(chain.map(({ part }) => part.id));
  const what = piece.opening ? `in its opening it needs` : `it needs`;
  return [
    {
      severity: more > 0 ? 'stop' : 'warn',
      code: 'parts-do-not-add-up',
      about: sum.member.part.id,
      message: `Over its ${across[axis]} ${names} as cut add up to ${show(needed + more)} ${unitOf(units)} with the gaps between them and what goes into each other; ${what} ${show(needed)}.`,
      remedy:
        more > 0
          ? `Take ${show(more)} off one of them, away from its joints, before anything is glued.`
          : `Make one of them anew, or close the ${show(-more)} with a packing.`,
      source: 'joinery G10',
    },
  ];
}

/** The members end to end along an axis on the line through the middle of one of them, in order. */
function chainThrough({ member, members, axis }: Sum): readonly Member[] {
  const other = axis === 'x' ? 'y' : 'x';
  const middle = (box: Box3, key: 'x' | 'y' | 'z'): number => (box.min[key] + box.max[key]) / 2;
  const line = middle(member.box, other);
  const onLine = members.filter(
    ({ box }) =>
      box.min[other] <= line &&
      box.max[other] >= line &&
      box.min.z < member.box.max.z &&
      box.max.z > member.box.min.z,
  );
  const next = (from: Member, way: 1 | -1): Member | undefined => {
    const length = ({ box }: Member): number => box.max[axis] - box.min[axis];
    const beyond = (one: Member): number =>
      way > 0 ? one.box.min[axis] - from.box.max[axis] : from.box.min[axis] - one.box.max[axis];
    const isNext = (one: Member): boolean =>
      one !== from &&
      way * (middle(one.box, axis) - middle(from.box, axis)) > 0 &&
      beyond(one) > -joined * Math.max(length(one), length(from));
    return onLine.filter(isNext).toSorted((a, b) => beyond(a) - beyond(b))[0];
  };
  const walk = (way: 1 | -1): readonly Member[] => {
    const found: Member[] = [];
    for (let at = next(member, way); at && !found.includes(at); at = next(at, way)) found.push(at);
    return found;
  };
  return [...walk(-1).toReversed(), member, ...walk(1)];
}

/** The same members are added up once, whichever of them was cut otherwise. */
function firstOfEach(found: readonly Problem[]): readonly Problem[] {
  return found.filter(({ message }, i) => found.findIndex((other) => other.message === message) === i);
}
