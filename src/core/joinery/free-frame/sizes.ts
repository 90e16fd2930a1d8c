import type { Point } from '#core/geometry';
import type { GlueKind } from '#core/materials';
import type { Problem } from '#core/problems';
import { chooseSides, type ChosenSides } from '../flat/choose-sides.ts';
import { angleAt, insetSides, wayTo } from '../flat/polygon.ts';
import { gluedWith } from '../glue.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { freeFrameParameters } from './parameters.ts';
import type { FreeFrameParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

/** Every choice of a free frame with its default filled in. */
export type FreeFrameChoices = Omit<FreeFrameParameters, 'materials'> &
  Required<Pick<FreeFrameParameters, 'gap' | 'memberWidth' | 'joint' | 'through' | 'jointDepth'>> & {
    readonly thickness: number;
    readonly material: Material;
    readonly given: ReadonlySet<string>;
    readonly chosen: ChosenSides | null;
    readonly glue: GlueKind | undefined;
  };

/** A corner and how the two members end there: mitred, running through, or butted against the other. */
export interface FrameEnds {
  /** Of the member before the corner, and of the one that begins there. */
  readonly before: MemberEnd;
  readonly after: MemberEnd;
}
export type MemberEnd = 'mitre' | 'through' | 'butt';

/** A free frame with its sizes worked out; points in the frame of the piece. */
export interface FreeFrameLayout {
  readonly choices: FreeFrameChoices;
  readonly book: WorkingBook;
  /** Outer corners, counter-clockwise; member i runs from corner i to the next. Empty when the gaps leave nothing. */
  readonly points: readonly Point[];
  /** Inner corners; null when the members leave no opening. */
  readonly inner: readonly Point[] | null;
  readonly ends: readonly FrameEnds[];
}

const rule = 'joinery B1';

/** Fills in the defaults of a free frame and finds its outline. */
export function chooseFrame(
  parameters: FreeFrameParameters,
  context: BuildContext,
  name: string,
): {
  readonly choices: FreeFrameChoices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { values, given } = fillDefaults(parameters, freeFrameParameters);
  const frame = findMaterial(context, parameters.materials.frame, { for: 'the members', kind: 'either' });
  const { chosen, findings } = chooseSides(parameters, context, name);
  const measured = frame.material.kind === 'sheet' ? frame.material.thickness : Number(values['thickness']);
  const choices = {
    ...(values as unknown as FreeFrameChoices),
    thickness: parameters.thickness ?? measured,
    material: frame.material,
    given,
    chosen,
    glue: gluedWith(context.settings),
  };
  return { choices, findings: frame.findings, lacking: findings };
}

/** Works out a free frame whose outline is known: corners, angles, lengths (joinery B1, fitted mode). */
export function workOutFrame(choices: FreeFrameChoices): FreeFrameLayout {
  const book = openWorkingBook();
  const { chosen } = choices;
  if (!chosen) throw new Error('a frame without an outline is not worked out');
  putIn(choices, book);
  const { sides } = chosen;
  const points = insetSides(
    sides.map(({ from }) => from),
    sides.map((_, i) => book.value(`g_${i + 1}`)),
  );
  if (!points) return { choices, book, points: [], inner: null, ends: [] };
  const inner = insetSides(
    points,
    sides.map((_, i) => book.value(`w_${i + 1}`)),
  );
  putCorners(choices, book, points);
  const ends = points.map((_, i) => endsAt(choices, points, i));
  points.forEach((_, i) => sizeMember(book, ends, i));
  putOpening(choices, book, inner);
  return { choices, book, points, inner, ends };
}

function putIn(choices: FreeFrameChoices, book: WorkingBook): void {
  const { given, chosen, material, widths, gaps } = choices;
  const from = { infos: freeFrameParameters, values: choices, given };
  putParameters(book, from, {
    ...(chosen?.rectangle && { width: 'W0', height: 'H0' }),
    ...{ gap: 'g', memberWidth: 'w' },
    ...(usesDepth(choices) && { jointDepth: 'd' }),
  });
  const measured = material.kind === 'sheet' && !given.has('thickness');
  const source = measured ? `measured: ${material.name}` : given.has('thickness') ? 'you' : rule;
  book.putChoice('thickness', 'T', choices.thickness, 'thickness', source);
  if (usesThickness(choices)) {
    const label = 'spline or tenon, thickness';
    if (choices.jointThickness === undefined) book.work('t', 'round(T/3)', label, 'joinery C3, C14');
    else book.putChoice('jointThickness', 't', choices.jointThickness, label, 'you');
  }
  const each = (name: 'g' | 'w', key: string, what: string, own: readonly number[] | undefined) =>
    chosen?.sides.forEach((side, i) => {
      const label = `${what} ${i + 1}, ${side.name}`;
      const value = own?.[i];
      if (value === undefined) book.work(`${name}_${i + 1}`, name, label, rule);
      else book.putChoice(key, `${name}_${i + 1}`, value, label, 'you');
    });
  each('g', 'gaps', 'gap of side', gaps);
  each('w', 'widths', 'width of member', widths);
}

/** Joints with a depth of their own. */
export const usesDepth = ({ joint }: FreeFrameChoices): boolean =>
  joint === 'spline' || joint === 'loose-tenon';
/** Joints with a tongue, spline or tenon in the middle of the thickness. */
export const usesThickness = (choices: FreeFrameChoices): boolean =>
  usesDepth(choices) || choices.joint === 'bridle';

const nearlySquare = 2; // degrees off a right angle that a door can still be planed to (joinery B1)

/** The clear opening of four nearly square members, for a door: the smaller of its sides each way. */
function putOpening({ chosen }: FreeFrameChoices, book: WorkingBook, inner: readonly Point[] | null): void {
  const [bl, br, tr, tl] = inner ?? [];
  if (!bl || !br || !tr || !tl || inner?.length !== 4) return;
  if ([0, 1, 2, 3].some((i) => Math.abs(angleAt(inner, i) - 90) > nearlySquare)) return;
  if (chosen?.rectangle) {
    book.work('Wc', 'Fw - w_4 - w_2', 'clear width', rule);
    book.work('Hc', 'Fh - w_1 - w_3', 'clear height', rule);
    return;
  }
  const long = (from: Point, to: Point) => Math.hypot(to.x - from.x, to.y - from.y);
  const from = 'its inner corners';
  if (br.x - bl.x < Math.abs(br.y - bl.y)) return; // it does not begin with its bottom member
  book.put('Wc', Math.min(long(bl, br), long(tl, tr)), 'clear width, the smaller', from);
  book.put('Hc', Math.min(long(bl, tl), long(br, tr)), 'clear height, the smaller', from);
}

function putCorners({ chosen }: FreeFrameChoices, book: WorkingBook, points: readonly Point[]): void {
  const count = points.length;
  const source = `${chosen?.source ?? ''}, less the gaps`;
  if (chosen?.rectangle) {
    book.work('Fw', 'W0 - g_4 - g_2', 'frame, width outside', rule);
    book.work('Fh', 'H0 - g_1 - g_3', 'frame, height outside', rule);
  } else {
    points.forEach(({ x, y }, i) => {
      book.put(`x_${i + 1}`, x, `corner ${i + 1}, from the left`, source);
      book.put(`y_${i + 1}`, y, `corner ${i + 1}, from below`, source);
    });
  }
  points.forEach((_, i) => {
    const [a, b] = [i + 1, ((i + 1) % count) + 1];
    const formula = chosen?.rectangle
      ? i % 2 === 0
        ? 'Fw'
        : 'Fh'
      : `sqrt((x_${b} - x_${a})**2 + (y_${b} - y_${a})**2)`;
    book.work(`side_${a}`, formula, `outer edge of member ${a}`, rule);
    const angle = chosen?.rectangle ? 90 : angleAt(points, i);
    book.put(`alpha_${a}`, angle, `angle at corner ${a}`, chosen?.rectangle ? 'you' : source, 'degrees');
  });
}

function endsAt(choices: FreeFrameChoices, points: readonly Point[], i: number): FrameEnds {
  const { joint, through } = choices;
  if (joint === 'mitre' || joint === 'spline') return { before: 'mitre', after: 'mitre' };
  if (joint === 'half-lap' || joint === 'bridle') return { before: 'through', after: 'through' };
  const first = runsThrough(points, i, through) === 'after';
  return first ? { before: 'butt', after: 'through' } : { before: 'through', after: 'butt' };
}

/** Which of the two members at a corner runs through, or keeps its face in a lap. */
export function runsThrough(
  points: readonly Point[],
  i: number,
  through: FreeFrameChoices['through'],
): 'before' | 'after' {
  if (through === 'round') return 'after';
  const count = points.length;
  const pick = (k: number): Point => points[(k + count) % count] ?? { x: 0, y: 0 };
  const steep = (k: number) => Math.abs(wayTo(pick(k), pick(k + 1)).y);
  const after = steep(i) >= steep(i - 1) - 1e-9;
  return (through === 'upright') === after ? 'after' : 'before';
}

/** Length of a member: its outer edge, less or more at each end as the joint there asks. */
function sizeMember(book: WorkingBook, ends: readonly FrameEnds[], i: number): void {
  const count = ends.length;
  const own = i + 1;
  const next = ((i + 1) % count) + 1;
  const before = ((i + count - 1) % count) + 1;
  const start = endTerm(book, { corner: own, own, other: before, end: ends[i]?.after ?? 'mitre', at: 'a' });
  const end = endTerm(book, {
    corner: next,
    own,
    other: next,
    end: ends[next - 1]?.before ?? 'mitre',
    at: 'b',
  });
  book.work(`L_${own}`, `side_${own} - ${start} - ${end}`, `member ${own}, length over its points`, rule);
}

/** What an end takes off the outer edge of its member, as a formula; a mitre puts its angle into the book. */
function endTerm(
  book: WorkingBook,
  of: {
    readonly corner: number;
    readonly own: number;
    readonly other: number;
    readonly end: MemberEnd;
    readonly at: 'a' | 'b';
  },
): string {
  const { corner, own, other, end, at } = of;
  const [alpha, w] = [`alpha_${corner}`, `w_${own}`];
  if (end === 'through') return `min(0, ${w}*cotd(${alpha}))`;
  if (end === 'butt') return `(w_${other}/sind(${alpha}) + min(0, ${w}*cotd(${alpha})))`;
  const phi = `phi_${at}_${corner}`;
  const formula = `atan2d(${w}*sind(${alpha}), w_${other} + ${w}*cosd(${alpha}))`;
  book.work(phi, formula, `mitre of member ${own} at corner ${corner}, from its outer edge`, rule, 'degrees');
  return `min(0, ${w}*cotd(${phi}))`;
}
