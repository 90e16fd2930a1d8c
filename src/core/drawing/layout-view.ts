import type { Rectangle } from '#core/cutting';
import type { Box, Outline } from '#core/geometry';
import type { LengthSystem } from '#core/units';

export interface LayoutPart {
  readonly address: string;
  readonly name: string;
  readonly sizeText: string;
  /** Where it lies in words, as `strip B, 3rd`. */
  readonly place: string;
  readonly x: number;
  readonly y: number;
  /** Extents along x and y as placed. */
  readonly length: number;
  readonly width: number;
  /** The outline where it lies, of a shape that shares its blank with another; the extents are then its box. */
  readonly outline?: Outline;
  readonly grain: 'along' | 'across' | 'any';
  readonly turned: boolean;
}

/** A saw line along the middle of its kerf, from where the saw enters. `order` counts from 1. */
export interface LayoutCut {
  readonly label: string;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly order: number;
}

/** All a cutting diagram shows, in mm of the stock. For battens y and width are those of the bar. */
export interface LayoutView {
  readonly title: string;
  readonly form: 'sheet' | 'board' | 'batten';
  readonly stock: { readonly length: number; readonly width: number };
  readonly usable: Rectangle;
  readonly kerf: number;
  readonly keepOut: readonly Rectangle[];
  readonly parts: readonly LayoutPart[];
  /** Rectangles that two shapes come out of, head to tail. */
  readonly shared?: readonly (Rectangle & {
    /** What is done with it, for the key; empty: it is told elsewhere. */
    readonly note: string;
    /** The first of the two. */
    readonly link: string;
  })[];
  readonly cuts: readonly LayoutCut[];
  readonly leftovers: readonly Rectangle[];
  /** Stands under the title, as where the order of its cuts is to be found. */
  readonly remark?: string;
  /** A list beside the drawing tells what does not go into the parts: no key, and in each part its address, however small. */
  readonly isKeyBeside?: boolean;
  /** Width of the paper to fill, mm. */
  readonly width: number;
  /** Height of the paper to keep within, mm; left out: as it comes. */
  readonly height?: number;
  /** The unit of the sizes shown; mm when left out. */
  readonly units?: LengthSystem;
}

/** A rectangle of the stock on paper. */
export function scaled(r: Rectangle, scale: number): Box {
  return {
    minX: r.x * scale,
    minY: r.y * scale,
    maxX: (r.x + r.length) * scale,
    maxY: (r.y + r.width) * scale,
  };
}
