import type { Species } from './species.ts';

const sources = {
  handbook: 'Wood Handbook, FPL-GTR-190 (2010), Table 13-5',
  handbookRecalled: 'Wood Handbook, FPL-GTR-190 (2010), Table 13-5, from memory',
  traders: "a timber merchant's table of differential shrinkage of the DIN 68100 kind",
  parquet: 'measurements published by a parquet maker',
  fromShrinkage: 'computed from the shrinkage in Chudnoff, Tropical Timbers of the World',
  teakMixed: 'Wood Handbook, FPL-GTR-190 (2010), Table 13-5; the radial value from memory',
  handbook1999: 'Wood Handbook, FPL-GTR-113 (1999), Table 4-3b',
  handbookQuoted: 'Wood Handbook (2010), quoted by others',
  strength: 'Wood Handbook, FPL-GTR-190 (2010), Table 5-3a',
  strengthRecalled: 'Wood Handbook (2010), from memory',
  tropical: 'Wood Handbook (2010), Table 5-5, brought to 12 % moisture',
  chudnoff: 'Chudnoff, Tropical Timbers of the World, brought to 12 % moisture',
  meansRecalled: 'means of the DIN 68364 kind, from memory',
} as const;

/**
 * Name, botanical name, group, density at 12 % (kg/m³), modulus of elasticity at 12 % (MPa), movement radial and
 * tangential (per percent of moisture), how far to trust it, source of the movement, source of the density, remark.
 */
type Row = readonly [
  string,
  string,
  Species['group'],
  number,
  number,
  number,
  number,
  Species['confidence'],
  keyof typeof sources,
  keyof typeof sources,
  string?,
];

// prettier-ignore
const rows: readonly Row[] = [
  ['Ash, European', 'Fraxinus excelsior', 'hardwood', 694, 13000, 0.00210, 0.00380, 'low', 'traders', 'meansRecalled', 'Sources for movement differ by a quarter.'],
  ['Ash, white', 'Fraxinus americana', 'hardwood', 672, 12000, 0.00169, 0.00274, 'high', 'handbook', 'handbook1999'],
  ['Beech, European', 'Fagus sylvatica', 'hardwood', 706, 14000, 0.00200, 0.00410, 'low', 'traders', 'meansRecalled'],
  ['Birch, European', 'Betula pendula', 'hardwood', 650, 14000, 0.00290, 0.00410, 'low', 'traders', 'meansRecalled', 'Sources for movement differ strongly.'],
  ['Birch, yellow', 'Betula alleghaniensis', 'hardwood', 694, 13900, 0.00256, 0.00338, 'high', 'handbook', 'handbook1999'],
  ['Cedar, Alaska / yellow', 'Callitropsis nootkatensis', 'softwood', 493, 9800, 0.00095, 0.00208, 'medium', 'handbookRecalled', 'strengthRecalled'],
  ['Cedar, western red', 'Thuja plicata', 'softwood', 358, 7700, 0.00111, 0.00234, 'medium', 'handbookRecalled', 'strengthRecalled', 'Movement taken to begin at 22 % moisture; its dust is a sensitiser.'],
  ['Cherry, black', 'Prunus serotina', 'hardwood', 560, 10300, 0.00126, 0.00248, 'high', 'handbook', 'handbook1999'],
  ['Douglas-fir, coast', 'Pseudotsuga menziesii', 'softwood', 538, 13400, 0.00165, 0.00267, 'high', 'handbookRecalled', 'handbookQuoted'],
  ['Fir, white', 'Abies concolor', 'softwood', 437, 10300, 0.00112, 0.00245, 'medium', 'handbook', 'strengthRecalled'],
  ['Iroko', 'Milicia excelsa / regia', 'hardwood', 662, 10100, 0.00153, 0.00205, 'medium', 'handbookRecalled', 'strengthRecalled', 'Tropical sheets give a larger shrinkage; its dust is a sensitiser.'],
  ['Larch, European', 'Larix decidua', 'softwood', 605, 13800, 0.00140, 0.00300, 'low', 'traders', 'meansRecalled'],
  ['Mahogany, African (Khaya)', 'Khaya spp.', 'hardwood', 504, 9700, 0.00141, 0.00201, 'medium', 'handbookRecalled', 'tropical'],
  ['Mahogany, true', 'Swietenia macrophylla', 'hardwood', 543, 10300, 0.00172, 0.00238, 'medium', 'handbookRecalled', 'tropical', 'Shrinkage tables give a smaller movement; for gaps the larger pair is used.'],
  ['Makore', 'Tieghemella heckelii', 'hardwood', 616, 11000, 0.00220, 0.00270, 'low', 'traders', 'meansRecalled', 'Its dust is a strong sensitiser.'],
  ['Maple, sugar (hard)', 'Acer saccharum', 'hardwood', 706, 12600, 0.00165, 0.00353, 'medium', 'handbook', 'handbookQuoted'],
  ['Maple, sycamore', 'Acer pseudoplatanus', 'hardwood', 627, 10500, 0.00150, 0.00300, 'low', 'parquet', 'meansRecalled'],
  ['Meranti, dark red / lauan', 'Shorea spp.', 'hardwood', 556, 12200, 0.00133, 0.00267, 'medium', 'handbookRecalled', 'tropical'],
  ['Oak, European', 'Quercus robur / petraea', 'hardwood', 706, 13000, 0.00160, 0.00360, 'low', 'traders', 'meansRecalled'],
  ['Oak, northern red', 'Quercus rubra', 'hardwood', 706, 12500, 0.00158, 0.00369, 'medium', 'handbook', 'strengthRecalled', 'Movement of the commercial red oak mix.'],
  ['Oak, white', 'Quercus alba', 'hardwood', 762, 12300, 0.00180, 0.00365, 'medium', 'handbook', 'strengthRecalled', 'Movement of the commercial white oak mix.'],
  ['Okoume / gaboon', 'Aucoumea klaineana', 'hardwood', 390, 7900, 0.00194, 0.00212, 'medium', 'handbookRecalled', 'strengthRecalled'],
  ['Pine, Scots (redwood)', 'Pinus sylvestris', 'softwood', 515, 11000, 0.00190, 0.00360, 'low', 'traders', 'meansRecalled'],
  ['Pine, ponderosa', 'Pinus ponderosa', 'softwood', 448, 8900, 0.00133, 0.00216, 'high', 'handbookRecalled', 'strength'],
  ['Sapele', 'Entandrophragma cylindricum', 'hardwood', 675, 12500, 0.00158, 0.00259, 'medium', 'fromShrinkage', 'chudnoff', 'A trader\'s table gives a larger radial movement, 0.0024.'],
  ['Spanish-cedar', 'Cedrela spp.', 'hardwood', 492, 9900, 0.00141, 0.00219, 'medium', 'handbookRecalled', 'tropical'],
  ['Spruce, Norway (whitewood)', 'Picea abies', 'softwood', 459, 11000, 0.00190, 0.00390, 'low', 'traders', 'meansRecalled'],
  ['Spruce, Sitka', 'Picea sitchensis', 'softwood', 448, 10800, 0.00148, 0.00263, 'medium', 'handbookRecalled', 'strengthRecalled'],
  ['Teak', 'Tectona grandis', 'hardwood', 675, 10700, 0.00101, 0.00186, 'medium', 'teakMixed', 'tropical', 'Sources differ: tropical sheets give a larger radial movement.'],
  ['Utile / sipo', 'Entandrophragma utile', 'hardwood', 648, 10800, 0.00158, 0.00223, 'medium', 'fromShrinkage', 'chudnoff', 'A trader\'s table gives 0.0020 and 0.0025.'],
  ['Walnut, European', 'Juglans regia', 'hardwood', 672, 13000, 0.00180, 0.00290, 'low', 'traders', 'meansRecalled'],
  ['Walnut, black', 'Juglans nigra', 'hardwood', 616, 11600, 0.00190, 0.00274, 'medium', 'handbook', 'strengthRecalled'],
];

/** Timbers a boat fitter meets, by name. Low confidence: mostly from memory; show results to a tenth of a millimetre at most. */
export const speciesTable: readonly Species[] = rows.map(
  ([name, botanical, group, density, modulus, radial, tangential, confidence, movement, strength, note]) => ({
    name,
    botanical,
    group,
    density,
    modulus,
    radial,
    tangential,
    confidence,
    movementSource: sources[movement],
    densitySource: sources[strength],
    ...(note === undefined ? {} : { note }),
  }),
);
