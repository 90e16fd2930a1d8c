/** The kinds of glue that a joint can be worked out for. */
export type GlueKind = 'epoxy' | 'pva' | 'polyurethane';

/** A glue and the time it leaves. */
export interface Glue {
  readonly kind: GlueKind;
  readonly name: string;
  /** As it is bought for one piece. */
  readonly pack: string;
  readonly water: 'indoors' | 'splash' | 'bilge';
  /** From spreading to closing at 20 °C, least and most minutes. */
  readonly openMinutes: readonly [number, number];
  /** Clamp pressure in N/mm², hardwood; 0: contact only. */
  readonly pressure: number;
  /** Least and most gap on each glued face that it fills well, mm. */
  readonly gap: readonly [number, number];
  /** Leave it until this many hours have passed at 20 °C. */
  readonly handlingHours: number;
  readonly source: string;
}

/** Glues for joinery aboard; the maker's sheet goes before this table. */
export const glues: readonly Glue[] = [
  {
    kind: 'pva',
    name: 'PVA wood glue, D3',
    pack: 'White glue (D3, water-resistant), small bottle',
    water: 'splash',
    openMinutes: [8, 10],
    pressure: 1.2,
    gap: [0.05, 0.1],
    handlingHours: 24,
    source: 'joinery F7, C; common practice, no source',
  },
  {
    kind: 'epoxy',
    name: 'Epoxy, slow hardener',
    pack: 'Epoxy glue, small pack',
    water: 'bilge',
    openMinutes: [25, 40],
    pressure: 0,
    gap: [0.1, 0.3],
    handlingHours: 24,
    source: "common practice, no source; see the maker's sheet",
  },
  {
    kind: 'polyurethane',
    name: 'Polyurethane glue, D4',
    pack: 'Polyurethane glue, small bottle',
    water: 'splash',
    openMinutes: [15, 30],
    pressure: 1.2,
    gap: [0.05, 0.1],
    handlingHours: 24,
    source: "joinery C; common practice, no source; see the maker's sheet",
  },
];

/** Pot life in minutes at another temperature, from that at 20 °C: it halves for each 10 °C more (three epoxy suppliers). */
export function potLifeMinutes(minutesAt20: number, celsius: number): number {
  return minutesAt20 * 2 ** ((20 - celsius) / 10);
}
