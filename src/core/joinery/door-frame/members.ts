import type { Point } from '#core/geometry';
import type { FrameLayout } from './layout.ts';
import { crossOf, figureBetween, footLine, frameLines, layPart, lineThrough, moveIn } from './plane.ts';
import type { FrameLines, FrameSide, LaidPart, Line } from './plane.ts';

/** The sizes of a laid out frame as plain numbers, for drawing its parts. mm. */
export interface FrameNumbers {
  readonly lines: FrameLines;
  readonly jamb: number;
  readonly head: number;
  /** From the top of the frame to the head, and to the head's lower face. */
  readonly headStart: number;
  readonly headInside: number;
  /** Thickness of the timber sill, 0 without one. */
  readonly sill: number;
  readonly joint: number;
  readonly depth: number;
  readonly proud: number;
}

/** A jamb, head or sill as it lies. */
export interface Member {
  readonly side: FrameSide;
  readonly laid: LaidPart;
  readonly flat: boolean;
  /** Across the part's Y and Z. */
  readonly width: number;
  readonly thickness: number;
  /** Where the lining begins on a member that is wider by a nosing. */
  readonly nosing: number;
}

/** Numbers of a frame whose sizes are worked out. */
export function frameNumbers(layout: FrameLayout): FrameNumbers {
  const { book, choices } = layout;
  const head = book.value(layout.head);
  const headStart = choices.corner === 'housing-between' && !choices.infill ? choices.horn : 0;
  return {
    lines: frameLines(layout),
    jamb: book.value(layout.jamb),
    head,
    headStart,
    headInside: headStart + head,
    sill: choices.sill ? choices.sillThickness : 0,
    joint: choices.jointDepth,
    depth: book.value('Ld'),
    proud: book.value('e'),
  };
}

/** Jambs, head and sill as they lie in the frame. */
export function layMembers(layout: FrameLayout, numbers: FrameNumbers): readonly Member[] {
  const sides: readonly FrameSide[] = layout.choices.sill
    ? ['left', 'right', 'head', 'sill']
    : ['left', 'right', 'head'];
  return sides.map((side) => layMember(layout, numbers, side));
}

function layMember(layout: FrameLayout, numbers: FrameNumbers, side: FrameSide): Member {
  const { lines } = numbers;
  const { flat } = layout.choices;
  const [outer, inner] = depthsOf(numbers, side);
  const [from, to] = endsOf(layout, numbers, side);
  const innerLine = moveIn(lines[side], inner);
  const figure = figureBetween(moveIn(lines[side], outer), innerLine, from, to);
  const nosing = side === 'sill' && !flat ? layout.choices.sillNosing : 0;
  const laid = layPart(figure, innerLine, flat ? 'flat-near' : 'lining', numbers.proud + nosing);
  const across = inner - outer;
  return {
    side,
    laid,
    flat,
    width: flat ? across : numbers.depth + nosing,
    thickness: flat ? numbers.depth : across,
    nosing,
  };
}

function depthsOf(numbers: FrameNumbers, side: FrameSide): readonly [outer: number, inner: number] {
  if (side === 'head') return [numbers.headStart, numbers.headInside];
  return [0, side === 'sill' ? numbers.sill : numbers.jamb];
}

/** The lines a member ends on, in its side's direction. */
function endsOf(layout: FrameLayout, numbers: FrameNumbers, side: FrameSide): readonly [Line, Line] {
  switch (side) {
    case 'left':
      return [jambTop(layout, numbers, 'left'), jambFoot(layout, numbers, 'left')];
    case 'right':
      return [jambFoot(layout, numbers, 'right'), jambTop(layout, numbers, 'right')];
    case 'head':
      return [headEnd(layout, numbers, 'right'), headEnd(layout, numbers, 'left')];
    case 'sill':
      return [sillEnd(layout, numbers, 'left'), sillEnd(layout, numbers, 'right')];
  }
}

function jambTop(layout: FrameLayout, numbers: FrameNumbers, side: 'left' | 'right'): Line {
  const { choices, book } = layout;
  const { lines, head, joint } = numbers;
  if (choices.over) return moveIn(lines.head, head - joint);
  if (choices.corner === 'mitre') return mitreLine(numbers, side, 'head');
  return moveIn(lines.head, choices.infill ? -book.value(`run_${side}`) : 0);
}

function jambFoot(layout: FrameLayout, numbers: FrameNumbers, side: 'left' | 'right'): Line {
  const { choices, book } = layout;
  if (!choices.sill) {
    return footLine(layout, numbers.lines, side, { outer: 0, thickness: numbers.jamb, above: 0 });
  }
  if (choices.corner === 'mitre') return mitreLine(numbers, side, 'sill');
  return moveIn(numbers.lines.sill, choices.flat ? 0 : numbers.sill - book.value('gt_sill'));
}

function headEnd({ choices }: FrameLayout, numbers: FrameNumbers, side: 'left' | 'right'): Line {
  const line = numbers.lines[side];
  switch (choices.corner) {
    case 'rebate':
    case 'tongue':
    case 'half-lap':
    case 'bridle':
      return line;
    case 'housing-over':
      return moveIn(line, -choices.horn);
    case 'housing-between':
      return moveIn(line, numbers.jamb - numbers.joint);
    case 'butt':
    case 'dowel':
    case 'loose-tenon':
      return moveIn(line, numbers.jamb);
    case 'mitre':
      return mitreLine(numbers, side, 'head');
  }
}

function sillEnd({ choices }: FrameLayout, numbers: FrameNumbers, side: 'left' | 'right'): Line {
  return choices.corner === 'mitre' ? mitreLine(numbers, side, 'sill') : numbers.lines[side];
}

/** From the outer to the inner corner of two members. */
export function mitreLine(numbers: FrameNumbers, jamb: 'left' | 'right', other: 'head' | 'sill'): Line {
  const { lines } = numbers;
  const depth = other === 'head' ? numbers.headInside : numbers.sill;
  const outer = crossOf(lines[jamb], lines[other]);
  return lineThrough(outer, crossOf(moveIn(lines[jamb], numbers.jamb), moveIn(lines[other], depth)));
}

export type Span = readonly [number, number];

/** A jamb and what it meets. */
export type Corner = readonly ['left' | 'right', 'head' | 'sill'];

/** The figure at a corner between two distances in from the jamb's outside and two in from the head's or sill's. */
export function cornerFigure(
  lines: FrameLines,
  corner: Corner,
  fromJamb: Span,
  fromOther: Span,
): readonly Point[] {
  const [jamb, other] = corner;
  const line = (side: FrameSide, distance: number) => moveIn(lines[side], distance);
  return figureBetween(
    line(jamb, fromJamb[0]),
    line(jamb, fromJamb[1]),
    line(other, fromOther[0]),
    line(other, fromOther[1]),
  );
}
