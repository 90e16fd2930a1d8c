/** The kinds of finish to choose among, by what they are made of. */
export type CoatingKind =
  'oil-varnish' | 'polyurethane' | 'two-pack' | 'water-borne' | 'hard-wax-oil' | 'oil' | 'epoxy';

/** A coating with the film it leaves. */
export interface Coating {
  readonly kind: CoatingKind;
  readonly name: string;
  /** Dry film of one coat, mm; none worth counting of an oil. */
  readonly filmPerCoat: number;
  /** Coats inside, least and most. */
  readonly coats: readonly [number, number];
  /** Area one litre covers once, m². */
  readonly spreadM2: number;
  readonly source: string;
  /** What can hurt whoever uses it, as sentences. */
  readonly cautions: readonly string[];
}

// facts table: rags heat up by themselves within hours, a US fire statistic; covered metal containers by 29 CFR 1926.252(e)
const oilyRags =
  'Oily rags heat up by themselves and catch fire: spread them singly outdoors, or keep them in water in a lidded metal tin.';
const solventAir = 'Solvent in the air: ventilate until it is dry, keep flames and sparks out, wear gloves.';
const sandingDust = 'Sand between coats ashore with extraction and a mask; never aboard.';

const usual: Coating = {
  kind: 'oil-varnish',
  name: 'Spar varnish, solvent',
  filmPerCoat: 0.04,
  coats: [3, 4],
  spreadM2: 12,
  source: 'common practice, no source: 35 to 45 µm, 10 to 14 m² per litre',
  cautions: [oilyRags, solventAir, sandingDust],
};

/** The usual finishes; the first is taken where none is chosen. */
export const coatings: readonly Coating[] = [
  usual,
  {
    kind: 'polyurethane',
    name: 'Polyurethane varnish, one-pack',
    filmPerCoat: 0.04,
    coats: [3, 4],
    spreadM2: 12,
    source: 'from memory: as spar varnish, 35 to 45 µm, 10 to 14 m² per litre',
    cautions: [oilyRags, solventAir, sandingDust],
  },
  {
    kind: 'two-pack',
    name: 'Polyurethane varnish, two-pack',
    filmPerCoat: 0.045,
    coats: [3, 4],
    spreadM2: 11,
    source: 'from memory: 40 to 50 µm, 10 to 12 m² per litre',
    cautions: [
      'Its hardener holds isocyanates, which can bring on asthma for life: brush or roll, never spray without supplied air; read the safety sheet first.',
      solventAir,
      sandingDust,
    ],
  },
  {
    kind: 'water-borne',
    name: 'Clear coat, water-borne',
    filmPerCoat: 0.03,
    coats: [3, 4],
    spreadM2: 8.3,
    source: 'one data sheet: solids 25 %, 25 to 37.5 µm; spread by film arithmetic',
    cautions: ['Less smell is not none: keep air moving until it is dry, wear gloves.', sandingDust],
  },
  {
    kind: 'hard-wax-oil',
    name: 'Hard-wax oil',
    filmPerCoat: 0,
    coats: [2, 3],
    spreadM2: 24,
    source: 'from memory: 20 to 28 m² per litre and coat',
    cautions: [oilyRags, solventAir],
  },
  {
    kind: 'oil',
    name: 'Oil, tung or linseed',
    filmPerCoat: 0,
    coats: [4, 5],
    spreadM2: 22,
    source: 'one data sheet: 14.7 m² per litre for the first coat, 20 to 24 after; 24 hours between coats',
    cautions: [oilyRags, solventAir],
  },
  {
    kind: 'epoxy',
    name: 'Epoxy coat',
    filmPerCoat: 0.06,
    coats: [2, 3],
    spreadM2: 15,
    source: "a marine retailer's guide: 50 to 65 µm; spread computed with 15 % loss",
    cautions: [
      'Epoxy on the skin can make one allergic for life: gloves, no solvent on hands; a full pot heats up and can smoke.',
      'Wash off the waxy bloom with water before sanding or the next coat; it must be varnished where the sun reaches it.',
      sandingDust,
    ],
  },
];

/** The finish of this kind; spar varnish where none was chosen. */
export function coatingOf(kind?: CoatingKind): Coating {
  return coatings.find((each) => each.kind === kind) ?? usual;
}

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
