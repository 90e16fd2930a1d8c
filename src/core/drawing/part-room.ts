import { boxOfOutline } from '#core/geometry';
import type { Outline } from '#core/geometry';
import type { Part } from '#core/joinery';
import { breakLength, wholeLength } from './broken-length.ts';
import type { BrokenLength } from './broken-length.ts';
import { seenOnFace } from './part-view.ts';
import { chooseScale } from './scales.ts';
import type { PaperRoom } from './scales.ts';

const legibleWidth = 13; // mm of paper; narrower parts are drawn larger and broken
const wantedWidth = 26; // mm of paper for such parts
const tallest = 0.85; // of the room along; the most a part may be high on paper
const brokenScales = [1, 2, 2.5, 3, 4, 5, 6, 7.5, 8, 10].map((divisor) => 1 / divisor);

/** Distances round the views and lettering of their sizes, mm of paper. */
export interface PartSpacing {
  /** For dimensions and texts left and right together. */
  readonly beside: number;
  /** Between face view and edge view; no edge view when null. */
  readonly between: number | null;
  /** From the views to the dimension of the length, and to those of width and thickness. */
  readonly below: number;
  readonly aside: number;
  /** From the views to a section below them. */
  readonly section: number;
  readonly lettering: number;
  /** Shown even where its figures do not fit beside the view; else left to the heading. */
  readonly isThicknessShown: boolean;
}

/** How a part is drawn on so much paper: its scale, and how its length is placed. */
export function viewPart(
  part: Part,
  room: PaperRoom,
  { beside }: PartSpacing,
): { readonly scale: number; readonly along: BrokenLength } {
  const width = Math.max(room.width - beside, 30);
  return chooseView(part, width, room.height ?? width * tallest);
}

/** The scale to draw a part at, and whether long plain stretches are taken out of it. */
function chooseView(part: Part, room: number, tall: number): { scale: number; along: BrokenLength } {
  const { length, width } = part.finished;
  const whole = Math.min(chooseScale(length, room), chooseScale(width, tall));
  if (width * whole >= legibleWidth) return { scale: whole, along: wholeLength(whole) };
  const stations = [
    0,
    length,
    ...boxStations(part.outline),
    ...part.holes.flatMap(boxStations),
    ...part.machining.flatMap((m) => boxStations(seenOnFace(m, part)?.outline ?? [])),
  ];
  const wanted = chooseScale(width, Math.min(wantedWidth, tall));
  const tries = brokenScales.filter((s) => s <= wanted && s > whole);
  for (const scale of tries) {
    const along = breakLength(stations, scale, room);
    if (along) return { scale, along };
  }
  return { scale: whole, along: wholeLength(whole) };
}

function boxStations(outline: Outline): readonly number[] {
  return outline.length === 0 ? [] : [boxOfOutline(outline).minX, boxOfOutline(outline).maxX];
}
