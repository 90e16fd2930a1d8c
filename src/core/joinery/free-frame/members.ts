import type { Outline, Point } from '#core/geometry';
import { flip, keepLeft, leftOf, lineOf, step, wayTo, type Line } from '../flat/polygon.ts';
import type { Machining } from '../types.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { runsThrough, type FreeFrameLayout } from './sizes.ts';

/** Wood along the ends of a joint line that a loose tenon leaves, mm (joinery C3). */
const besideTenon = 10;
/** Room past the end of a tenon or spline, in all, mm (joinery C3, C14). */
export const endRoom = { tenon: 2, spline: 1 } as const;
/** Gap on each glued cheek of a bridle, and of the slot of a loose tenon where the glue is known, mm (joinery C). */
export const gapOf = ({ choices: { joint, glue } }: FreeFrameLayout): number =>
  joint === 'bridle' || (joint === 'loose-tenon' && glue) ? gluedGap(glue) : 0;

const pick = (list: readonly Point[], i: number): Point =>
  list[(i + list.length) % list.length] ?? { x: 0, y: 0 };
const sideLine = ({ points }: FreeFrameLayout, i: number, inwards: number): Line =>
  lineOf(pick(points, i), pick(points, i + 1), inwards);
const numberOf = ({ points }: FreeFrameLayout, i: number) => ((i + points.length) % points.length) + 1;
export const widthOf = (layout: FreeFrameLayout, i: number): number =>
  layout.book.value(`w_${numberOf(layout, i)}`);

/** What a member would be if it ran through at both ends. */
function stripOf(layout: FreeFrameLayout, i: number): readonly Point[] {
  return keepLeft(layout.points, [flip(sideLine(layout, i, widthOf(layout, i)))]);
}

/** A member in the frame of the piece, as it is seen. */
export function memberOutline(layout: FreeFrameLayout, i: number): readonly Point[] {
  const { ends, points } = layout;
  const lines: Line[] = [];
  const count = points.length;
  const start = ends[i]?.after;
  const end = ends[(i + 1) % count]?.before;
  if (start === 'mitre') lines.push(flip(mitreLine(layout, i)));
  if (end === 'mitre') lines.push(mitreLine(layout, i + 1));
  if (start === 'butt') lines.push(sideLine(layout, i - 1, widthOf(layout, i - 1)));
  if (end === 'butt') lines.push(sideLine(layout, i + 1, widthOf(layout, i + 1)));
  return keepLeft(stripOf(layout, i), lines);
}

/** From the outer to the inner corner; the member before lies to its left. */
function mitreLine({ points, inner }: FreeFrameLayout, i: number): Line {
  return lineOf(pick(points, i), pick(inner ?? points, i));
}

/** Where two members touch, from the outside of the frame to its inner corner. */
export interface Contact {
  readonly from: Point;
  readonly to: Point;
}

/** The line of contact at a corner that is mitred or butted. */
export function contactAt(layout: FreeFrameLayout, i: number): Contact {
  const { points, inner, ends } = layout;
  const within = pick(inner ?? points, i);
  if (ends[i]?.after === 'mitre') return { from: pick(points, i), to: within };
  const throughAfter = ends[i]?.after === 'through';
  const alpha = (layout.book.value(`alpha_${numberOf(layout, i)}`) * Math.PI) / 180;
  const way = throughAfter
    ? wayTo(pick(points, i + 1), pick(points, i))
    : wayTo(pick(points, i - 1), pick(points, i));
  const size = widthOf(layout, throughAfter ? i - 1 : i) / Math.sin(alpha);
  const outer = step(within, way, size);
  return { from: outer, to: within };
}

/** A flat tongue across a contact: the rectangle it fills, and how wide the slots for it are along the contact. */
export interface Tongue {
  readonly corner: number;
  readonly middle: Point;
  /** Along the contact. */
  readonly along: Point;
  readonly reach: number;
  readonly width: number;
}

/** The spline or loose tenon at a corner; a width of nothing or less has no room. */
export function tongueAt(layout: FreeFrameLayout, i: number): Tongue {
  const { from, to } = contactAt(layout, i);
  const along = wayTo(from, to);
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  const d = layout.book.value('d');
  const number = numberOf(layout, i);
  if (layout.choices.joint === 'spline') {
    const leans = ['phi_a', 'phi_b'].map((phi) => {
      return (d - endRoom.spline / 2) / Math.tan((layout.book.value(`${phi}_${number}`) * Math.PI) / 180);
    });
    // an edge that leans over the contact leaves no room for the rectangle there, at the outer end or at the inner
    const [outer, within] = [Math.max(0, ...leans), Math.max(0, ...leans.map((lean) => -lean))];
    const width = size - outer - within;
    const middle = step(from, along, outer + width / 2);
    return { corner: i, middle, along, reach: 2 * d - endRoom.spline, width };
  }
  const lean = Math.abs(1 / Math.tan((layout.book.value(`alpha_${number}`) * Math.PI) / 180));
  const inset = besideTenon + d * (lean < 1e-9 ? 0 : lean);
  const width = size - 2 * inset - 1;
  return { corner: i, middle: step(from, along, size / 2), along, reach: 2 * d - endRoom.tenon, width };
}

/** What the joints take from a member, in the frame of the piece. */
export interface MemberCut {
  readonly figure: Outline;
  readonly make: (outline: Outline) => Machining;
}

/** The machining of a member at both its ends. */
export function cutsOf(layout: FreeFrameLayout, i: number): readonly MemberCut[] {
  return [...cutsAt(layout, i, i), ...cutsAt(layout, (i + 1) % layout.points.length, i)].filter(
    ({ figure }) => figure.length >= 3,
  );
}

function cutsAt(layout: FreeFrameLayout, corner: number, member: number): readonly MemberCut[] {
  switch (layout.choices.joint) {
    case 'spline':
    case 'loose-tenon':
      return [slotCut(layout, corner, member)];
    case 'half-lap':
    case 'bridle':
      return overlapCuts(layout, corner, member);
    case 'mitre':
    case 'butt':
      return [];
  }
}

function slotCut(layout: FreeFrameLayout, corner: number, member: number): MemberCut {
  const { book, choices } = layout;
  const { from, to } = contactAt(layout, corner);
  const line = lineOf(from, to);
  const tongue = tongueAt(layout, corner);
  const half = (tongue.width + (choices.joint === 'spline' ? 0 : 1)) / 2;
  const ends: readonly Line[] =
    choices.joint === 'spline'
      ? []
      : [
          { at: step(tongue.middle, tongue.along, -half), along: { x: line.along.y, y: -line.along.x } },
          { at: step(tongue.middle, tongue.along, half), along: leftOf(line.along) },
        ];
  const near = [line, flip(line)].flatMap((side) => [
    { at: step(from, leftOf(side.along), -book.value('d')), along: side.along },
  ]);
  const [T, t] = [book.value('T'), book.value('t')];
  const gap = gapOf(layout);
  const name = choices.joint === 'spline' ? 'slot' : 'mortise';
  const what =
    choices.joint === 'spline'
      ? 'from the mitre, for the spline'
      : 'for the loose tenon, square to the joint';
  return {
    figure: keepLeft(memberOutline(layout, member), [...near, ...ends]),
    make: (outline) => ({
      ...{ kind: 'prism', name, from: 'face', outline, below: (T - t) / 2 - gap, depth: (T + t) / 2 + gap },
      note: `${what}, ${book.value('d')} deep`,
    }),
  };
}

/** Where two members that both run through lie over each other. */
export function overlapAt(layout: FreeFrameLayout, corner: number): readonly Point[] {
  return keepLeft(stripOf(layout, corner), [flip(sideLine(layout, corner - 1, widthOf(layout, corner - 1)))]);
}

function overlapCuts(layout: FreeFrameLayout, corner: number, member: number): readonly MemberCut[] {
  const { points, choices, book } = layout;
  const figure = overlapAt(layout, corner);
  const count = points.length;
  const isAfter = (member + count) % count === (corner + count) % count;
  const keeps = (runsThrough(points, (corner + count) % count, choices.through) === 'after') === isAfter;
  const T = book.value('T');
  const prism = (from: 'face' | 'back', depth: number, name: 'lap' | 'shoulder'): MemberCut => ({
    figure,
    make: (outline) => ({ kind: 'prism', name, from, outline, depth }),
  });
  if (choices.joint === 'half-lap') return [prism(keeps ? 'back' : 'face', T / 2, 'lap')];
  const z0 = (T - book.value('t')) / 2;
  if (!keeps) return [prism('face', z0, 'shoulder'), prism('back', z0, 'shoulder')];
  const gap = gapOf(layout);
  const make = (outline: Outline): Machining => ({
    ...{ kind: 'prism', name: 'slot', from: 'face', outline, below: z0 - gap, depth: T - z0 + gap },
    note: 'bridle, sawn in from the end',
  });
  return [{ figure, make }];
}
