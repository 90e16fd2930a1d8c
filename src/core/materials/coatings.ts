/** A coating with the film it leaves. */
export interface Coating {
  readonly name: string;
  /** Dry film of one coat, mm. */
  readonly filmPerCoat: number;
  /** Coats inside, least and most. */
  readonly coats: readonly [number, number];
  /** Area one litre covers once, m². */
  readonly spreadM2: number;
  readonly source: string;
}

/** Coatings whose film a gap must have room for; oils and stains leave none worth counting. */
export const coatings: readonly Coating[] = [
  {
    name: 'Spar varnish, solvent',
    filmPerCoat: 0.04,
    coats: [3, 4],
    spreadM2: 12,
    source: 'common practice, no source: 35 to 45 µm, 10 to 14 m² per litre',
  },
  {
    name: 'Clear coat, water-borne',
    filmPerCoat: 0.03,
    coats: [3, 4],
    spreadM2: 8.3,
    source: 'one data sheet: solids 25 %, 25 to 37.5 µm; spread by film arithmetic',
  },
  {
    name: 'Epoxy coat',
    filmPerCoat: 0.06,
    coats: [2, 3],
    spreadM2: 15,
    source: "a marine retailer's guide: 50 to 65 µm; spread computed with 15 % loss",
  },
];

/** Dry film of so many coats, mm per face. */
export function filmOf(coating: Coating, coats: number): number {
  return coating.filmPerCoat * coats;
}

/** Litres for an area in m² at a dry film in mm, solids by volume in percent, loss as a share: A·DFT/(10·VS·(1−loss)) with DFT in µm. */
export function coatingLitres(coat: {
  readonly areaM2: number;
  readonly film: number;
  readonly solidsPercent: number;
  readonly loss: number;
}): number {
  return (coat.areaM2 * coat.film * 1000) / (10 * coat.solidsPercent * (1 - coat.loss));
}
