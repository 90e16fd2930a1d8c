import type { PieceKind } from './piece-types.ts';
import type { BuiltPiece } from './types.ts';

/** Names of working steps, the most telling first. */
export interface SeenSizes {
  readonly across: readonly string[];
  readonly up: readonly string[];
}

const rows = Array.from({ length: 10 }, (_, i) => i + 1);

const seen: Readonly<Record<PieceKind, SeenSizes>> = {
  'door-frame': { across: ['Wc', 'Fw', 'rv', 'ts_st'], up: ['Hc', 'Fh', 'rv', 'ts_st'] },
  'cabinet-front': {
    across: ['W', 'wo', 'front_w', 'seen_stile', 'gap_row', 'g'],
    up: [
      'H',
      ...rows.map((row) => `h${row}`),
      ...rows.map((row) => `f${row}`),
      'seen_top',
      'seen_bottom',
      'gap',
      'g',
    ],
  },
  drawer: { across: ['false_W', 'Wb'], up: ['false_H', 'h', 'boxfront_h', 'notch_depth'] },
  'flat-door': {
    across: ['Wd', 'core_W', 'band_W', 'a_hinge', 'a_lock'],
    up: ['Hd', 'core_H', 'band_H', 'a', 'slot_edge'],
  },
};

/** The working steps of a piece that are sizes seen from the front, besides those of its single parts. */
export function seenSizes({ kind, working }: BuiltPiece): SeenSizes {
  const known = new Set(working.map((step) => step.name));
  const present = (names: readonly string[]) => names.filter((name) => known.has(name));
  return { across: present(seen[kind].across), up: present(seen[kind].up) };
}
