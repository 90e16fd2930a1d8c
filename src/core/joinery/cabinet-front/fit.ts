import type { Point } from '#core/geometry';
import type { FrontChoices } from './choices.ts';
import { cornerNames, type Opening } from '../survey-fit.ts';
import type { WorkingBook } from '../working.ts';

/** The measured opening a front goes into. */
export interface FrontOpening {
  readonly measured: Opening;
  readonly name: string;
}

const rule = 'joinery B6, B-H';

/**
 * Width and height from the measured opening: the largest upright rectangle clear of all four corners and of sides that
 * bow inwards, less the gap; plumb to the boat.
 */
export function fitOpening(book: WorkingBook, opening: FrontOpening, choices: FrontChoices): void {
  layCorners(book, opening);
  const scribed = choices.scribe > 0;
  book.putChoice('fittingGap', 'fit', choices.fittingGap, 'gap in the opening, top and bottom', rule);
  book.putChoice(
    scribed ? 'scribe' : 'fittingGap',
    'fit_side',
    scribed ? 0 : choices.fittingGap,
    scribed ? 'gap at the sides: scribed instead' : 'gap at the sides',
    rule,
  );
  book.work('x0', 'max(xBL, xTL) + in_left + fit_side', 'left edge of the frame', rule);
  book.work('y0', 'max(yBL, yBR) + in_sill + fit', 'lower edge of the frame', rule);
  book.work(
    'W',
    'down(min(xBR, xTR) - in_right - fit_side - x0, 0.5)',
    'width overall, within the opening',
    rule,
  );
  book.work('H', 'down(min(yTL, yTR) - in_head - fit - y0, 0.5)', 'height overall, within the opening', rule);
  book.work(
    'diagonals',
    'sqrt((xTR - xBL)**2 + (yTR - yBL)**2) - sqrt((xTL - xBR)**2 + (yTL - yBR)**2)',
    'difference of the diagonals',
    rule,
  );
  book.work(
    'taper',
    'max(abs(xTL - xBL), abs(xTR - xBR)) + max(in_left, in_right)',
    'most a side strays from upright',
    rule,
  );
}

/** Corners as measured, and as they lie with the boat upright; sides that bow in. */
function layCorners(book: WorkingBook, opening: FrontOpening): void {
  const source = `shape ${opening.name}`;
  const { corners, bow, tilt } = opening.measured;
  book.put('phi', (-tilt * 180) / Math.PI, 'turn that brings the boat upright', source, 'degrees');
  for (const corner of cornerNames) {
    book.put(
      `sx${corner}`,
      corners[corner].x - corners.BL.x,
      `corner ${corner} as measured, right of BL`,
      source,
    );
    book.put(
      `sy${corner}`,
      corners[corner].y - corners.BL.y,
      `corner ${corner} as measured, above BL`,
      source,
    );
    const [sx, sy] = [`sx${corner}`, `sy${corner}`];
    book.work(`x${corner}`, `${sx}*cosd(phi) - ${sy}*sind(phi)`, `corner ${corner}, across`, rule);
    book.work(`y${corner}`, `${sx}*sind(phi) + ${sy}*cosd(phi)`, `corner ${corner}, up`, rule);
  }
  for (const side of ['left', 'right', 'head', 'sill'] as const) {
    book.put(`in_${side}`, Math.max(0, -bow[side]), `${side} bows in by`, source);
  }
}

/** Corners of the opening in the frame of the piece: origin at the lower left corner of the face frame. */
export function openingInPiece(book: WorkingBook): Readonly<Record<string, Point>> {
  return Object.fromEntries(
    cornerNames.map((corner) => [
      corner,
      { x: book.value(`x${corner}`) - book.value('x0'), y: book.value(`y${corner}`) - book.value('y0') },
    ]),
  );
}
