import type { Method, Reading } from '#core/measuring';

/** A place on a picture, in fractions of its width and height from the top left corner. */
export interface PicturePoint {
  readonly x: number;
  readonly y: number;
}

/** A photo taken on site, and what was drawn on it. */
export interface Photo {
  readonly id: string;
  readonly caption: string;
  /** As a data URL, at most `longestImage` characters. */
  readonly image: string;
  readonly strokes: readonly { readonly points: readonly PicturePoint[] }[];
}

/**
 * Something in the way: a stringer, a pipe; mm. Of an opening or an outline: x along the line from the first corner to the
 * second, y square to it to the left. Of a section: x from the plane of the fronts, y up.
 */
export interface Obstruction {
  readonly id: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Id of the hull section it stands in. */
  readonly section?: string;
}

/** A curved edge of an outline, by ordinates square to the straight line between two neighbouring corners, positive outwards. */
export interface MeasuredCurve {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** `at` along the line from `from`; the corners themselves are on the curve and need none. */
  readonly ordinates: readonly { readonly at: number; readonly value: number }[];
  /** One standard deviation of an ordinate; left out: 0.7 (joinery A1, M9). */
  readonly sigma?: number;
}

/** Two crosses on a drawing: how far apart they lie in it, and how far apart they are aboard; mm. */
export interface CheckBar {
  readonly drawn: number;
  readonly real: number;
}

/** An outline taken over from a drawing, counter-clockwise as seen; mm before the check bars are applied. */
export interface TracedOutline {
  readonly points: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
  /** Which of the points the corners are, in their order. */
  readonly cornersAt: readonly number[];
  /** Across and up; one alone counts for both (joinery A9). */
  readonly bars?: { readonly x?: CheckBar; readonly y?: CheckBar };
  /** One standard deviation of a point; left out: 1.0 (joinery A1, M13). */
  readonly sigma?: number;
  /** What it was read from, as `locker.dxf`. */
  readonly source?: string;
}

/** A cross-section of the hull: how far the bare hull stands from the plane of the fronts, by height; lowest first. */
export interface HullSection {
  readonly id: string;
  readonly name: string;
  /** Where along the boat, from any mark, mm. */
  readonly at: number;
  readonly ordinates: readonly { readonly height: number; readonly depth: number }[];
  /** Bevel of the hull against square to the section, positive where it falls away beyond it. */
  readonly bevels?: readonly { readonly height: number; readonly degrees: number }[];
  /** One standard deviation of an ordinate; left out: 0.7 (joinery A1, M9). */
  readonly sigma?: number;
}

/** A wall of a room, as its length at the height of the piece, and the corner at its right end. */
export interface Wall {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  /** At mid length, positive where the wall is hollow. */
  readonly bow?: number;
  /** How it was measured; left out: M1. */
  readonly method?: Method;
  readonly sigma?: number;
  /** The corner to the next wall: its angle on the side of the room, 90 in a square corner, 270 round a square post. */
  readonly corner?: { readonly degrees: number; readonly sigma?: number };
}

interface MeasuredBase {
  readonly id: string;
  readonly name: string;
  readonly seenFrom: string;
  readonly readings: readonly Reading[];
  readonly note?: string;
  readonly photos?: readonly Photo[];
}

/** Four corners BL, BR, TR, TL. */
export interface MeasuredOpening extends MeasuredBase {
  readonly kind: 'opening';
  readonly obstructions?: readonly Obstruction[];
}

/** Any closed outline: by readings between its named corners, curved edges by ordinates; or traced. */
export interface MeasuredOutline extends MeasuredBase {
  readonly kind: 'outline';
  /** Counter-clockwise as seen. */
  readonly corners: readonly string[];
  readonly curves?: readonly MeasuredCurve[];
  readonly obstructions?: readonly Obstruction[];
  readonly traced?: TracedOutline;
}

/** The hull behind a piece, at one or more stations; readings are further ones between named points. */
export interface MeasuredSections extends MeasuredBase {
  readonly kind: 'sections';
  readonly sections: readonly HullSection[];
  readonly obstructions?: readonly Obstruction[];
}

/** Walls in plan, left to right as one stands in the room; their ends are the points `A`, `B`, `C`, … of its readings. */
export interface MeasuredWalls extends MeasuredBase {
  readonly kind: 'walls';
  readonly walls: readonly Wall[];
  /** The last wall leads back to the first. */
  readonly closed?: boolean;
}

/** A measured shape of the project: what was read, as entered; the shape itself is worked out, never stored. */
export type MeasuredShape = MeasuredOpening | MeasuredOutline | MeasuredSections | MeasuredWalls;

/** What a shape has once; each kind has some of these. */
export interface ShapeChange {
  readonly name?: string;
  readonly seenFrom?: string;
  readonly note?: string;
  readonly corners?: readonly string[];
  readonly closed?: boolean;
  /** Null: the corners are measured instead. */
  readonly traced?: TracedOutline | null;
}

/** An item of one of the lists of a shape. */
export type ShapeItem =
  | { readonly list: 'photos'; readonly item: Photo }
  | { readonly list: 'obstructions'; readonly item: Obstruction }
  | { readonly list: 'curves'; readonly item: MeasuredCurve }
  | { readonly list: 'sections'; readonly item: HullSection }
  | { readonly list: 'walls'; readonly item: Wall };

/** Characters of a photo as a data URL: about 750 kB of picture, a screen full at good quality. */
export const longestImage = 1_000_000;
