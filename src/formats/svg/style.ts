import { fillLook, penLook } from '#core/drawing';
import type { Fill, Pen, Tone } from '#core/drawing';

/** Colours of the printed theme. On screen each tone is the CSS variable `--ink`, `--soft`, `--guide`, `--fault`, `--paper`. */
export const paperColours: Readonly<Record<Tone, string>> = {
  ink: '#14181c',
  soft: '#3d4650',
  guide: '#7d868e',
  fault: '#a3201a',
  paper: '#ffffff',
};

/** A pen for SVG: width in mm, `stroke-dasharray` (empty when solid) and tone; null for no stroke. */
export function penStyle(
  pen: Pen,
): { readonly width: number; readonly dash: string; readonly tone: Tone } | null {
  const look = penLook(pen);
  return look.width === 0 ? null : { width: look.width, dash: look.dash.join(' '), tone: look.tone };
}

/** A pattern tile for SVG: `<pattern width height patternTransform="rotate(turn)">` holding lines of path data. */
export interface PatternTile {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** Degrees, clockwise as SVG turns. */
  readonly turn: number;
  readonly path: string;
  readonly lineWidth: number;
  readonly dash: string;
  readonly tone: Tone;
}

/** How an area is filled in SVG: a flat ground (null: none) and a pattern laid over it (null: none). */
export function fillPattern(fill: Fill): { readonly ground: Tone | null; readonly tile: PatternTile | null } {
  const { ground, hatch } = fillLook(fill);
  if (!hatch) return { ground, tile: null };
  const run = hatch.dash.length > 0 ? hatch.dash.reduce((sum, d) => sum + d, 0) : hatch.gap;
  const across = `M0 ${hatch.gap / 2}H${run}`;
  const tile = {
    id: `hatch-${fill}`,
    width: run,
    height: hatch.gap,
    turn: -hatch.angle,
    path: hatch.cross ? `${across}M${run / 2} 0V${hatch.gap}` : across,
    lineWidth: hatch.width,
    dash: hatch.dash.join(' '),
    tone: hatch.tone,
  };
  return { ground, tile };
}

/** All fills that need a pattern, for a `<defs>` that serves every drawing of a page. */
export const patternFills: readonly Fill[] = ['solid', 'sheet', 'leftover', 'waste', 'keep-out', 'fault'];
