import { unreachable } from '#core/problems';
import type { Fill, Pen } from './types.ts';

/** What a stroke or hatch is drawn with; a writer turns it into a colour. */
export type Tone = 'ink' | 'soft' | 'guide' | 'fault' | 'paper';

/** A pen on paper: width and dashes in mm. `width` 0 draws nothing. */
export interface PenLook {
  readonly width: number;
  readonly dash: readonly number[];
  readonly tone: Tone;
}

/** Hatching: lines at an angle (degrees, counter-clockwise), mm apart; `cross` adds the lines square to them. */
export interface Hatch {
  readonly angle: number;
  readonly gap: number;
  readonly width: number;
  readonly cross: boolean;
  readonly dash: readonly number[];
  readonly tone: Tone;
}

/** How an area looks: what is laid under the hatching (null: nothing) and the hatching (null: none). */
export interface FillLook {
  readonly ground: Tone | null;
  readonly hatch: Hatch | null;
}

/** Width and dashes of a pen. Widths are steps of the ISO 128 row 0.13 0.18 0.25 0.35 0.5 0.7 (from memory). */
export function penLook(pen: Pen): PenLook {
  switch (pen) {
    case 'outline':
      return { width: 0.35, dash: [], tone: 'ink' };
    case 'thin':
      return { width: 0.18, dash: [], tone: 'ink' };
    case 'hidden':
      return { width: 0.25, dash: [2.4, 1.2], tone: 'ink' };
    case 'centre':
      return { width: 0.18, dash: [7, 1.2, 0.6, 1.2], tone: 'ink' };
    case 'cut':
      return { width: 0.5, dash: [], tone: 'ink' };
    case 'dimension':
      return { width: 0.25, dash: [], tone: 'soft' };
    case 'guide':
      return { width: 0.18, dash: [0.4, 1.1], tone: 'guide' };
    case 'fault':
      return { width: 0.7, dash: [5, 1, 1, 1, 1, 1], tone: 'fault' };
    case 'residual':
      return { width: 1, dash: [], tone: 'fault' };
    case 'none':
      return { width: 0, dash: [], tone: 'ink' };
    default:
      return unreachable(pen);
  }
}

const lines = (angle: number, gap: number, more: Partial<Hatch> = {}): Hatch => ({
  angle,
  gap,
  width: 0.13,
  cross: false,
  dash: [],
  tone: 'guide',
  ...more,
});

/** Ground and hatching of an area, chosen so that no two kinds look alike in black and white. */
export function fillLook(fill: Fill): FillLook {
  switch (fill) {
    case 'none':
      return { ground: null, hatch: null };
    case 'paper':
      return { ground: 'paper', hatch: null };
    case 'solid':
      return { ground: 'paper', hatch: lines(60, 3.2) };
    case 'sheet':
      return { ground: 'paper', hatch: lines(-60, 3.2, { dash: [3, 1.5] }) };
    case 'leftover':
      return { ground: 'paper', hatch: lines(45, 6) };
    case 'waste':
      return { ground: 'paper', hatch: lines(-45, 1.8) };
    case 'keep-out':
      return { ground: 'paper', hatch: lines(45, 2.5, { cross: true, width: 0.25, tone: 'ink' }) };
    case 'kerf':
    case 'ink':
      return { ground: 'ink', hatch: null };
    case 'fault':
      return { ground: 'paper', hatch: lines(30, 2, { cross: true, width: 0.25, tone: 'fault' }) };
    default:
      return unreachable(fill);
  }
}
