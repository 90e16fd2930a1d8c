import type { Box, PathPoint, Point } from '#core/geometry';

/** Line weights and types of technical drawing; what each looks like is the writer's affair. */
export type Pen =
  'outline' | 'thin' | 'hidden' | 'centre' | 'cut' | 'dimension' | 'guide' | 'fault' | 'residual' | 'none';

/** How an area is filled; hatching tells materials and states apart in black and white. */
export type Fill =
  'none' | 'paper' | 'sheet' | 'solid' | 'leftover' | 'waste' | 'keep-out' | 'kerf' | 'fault' | 'ink';

/** One mark of a drawing, in the drawing's own coordinates: mm on paper at scale 1, y up. */
export type Mark =
  | {
      readonly kind: 'path';
      readonly points: readonly PathPoint[];
      readonly closed: boolean;
      readonly pen: Pen;
      readonly fill?: Fill;
      /** Address of what it shows (part, reading, layout), so that a tap can find it. */
      readonly link?: string;
    }
  | {
      readonly kind: 'text';
      readonly at: Point;
      readonly text: string;
      /** Height of the figures, mm on paper. */
      readonly height: number;
      readonly align: 'start' | 'middle' | 'end';
      /** Counter-clockwise, radians. */
      readonly turn?: number;
      readonly weight?: 'normal' | 'bold';
      readonly tone?: 'ink' | 'soft' | 'fault';
      readonly link?: string;
    };

/** A drawing as data. `bounds` in mm on paper; `scale` = mm on paper for one mm of the thing (0.1 for 1:10). */
export interface Drawing {
  readonly title: string;
  readonly bounds: Box;
  readonly scale: number;
  readonly marks: readonly Mark[];
  /** JPEG or PNG pictures as data URLs, under the marks; boxes in the drawing's own coordinates. */
  readonly pictures?: readonly { readonly image: string; readonly box: Box }[];
  /** Words and figures, or a sketch not to scale: there is no scale to tell. */
  readonly isUnscaled?: boolean;
}

/**
 * A page of paper: drawings placed by the lower left corner of their bounds, mm from the lower left of the page.
 * `clip`, in mm of the page, hides what lies outside it.
 */
export interface Page {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly items: readonly { readonly drawing: Drawing; readonly at: Point; readonly clip?: Box }[];
}
