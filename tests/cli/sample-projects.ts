import type { Material, Piece } from '#core/joinery';
import { makeOpeningReading, type OpeningKey, type Reading } from '#core/measuring';
import { newProject, type Project, type StockLine } from '#core/project';

/** Corners of an invented opening, mm. */
interface Corners {
  readonly BR: readonly [number, number];
  readonly TR: readonly [number, number];
  readonly TL: readonly [number, number];
}

/** The twelve readings that a faultless tape takes of an opening whose BL is the origin, to half a millimetre. */
export function readOpening(
  { BR, TR, TL }: Corners,
  slip: Partial<Record<OpeningKey, number>> = {},
): readonly Reading[] {
  const distance = (a: readonly [number, number], b: readonly [number, number]): number =>
    Math.hypot(a[0] - b[0], a[1] - b[1]);
  const at = (share: number, to: readonly [number, number], from: readonly [number, number] = [0, 0]) =>
    [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])] as const;
  const width = (share: number): number => distance(at(share, TL), at(share, TR, BR));
  const values: Readonly<Record<OpeningKey, number>> = {
    wb: distance([0, 0], BR),
    w13: width(1 / 3),
    w23: width(2 / 3),
    wt: distance(TL, TR),
    hl: distance([0, 0], TL),
    hr: distance(BR, TR),
    d1: distance([0, 0], TR),
    d2: distance(BR, TL),
    pl: TL[0],
    pr: TR[0] - BR[0],
    ls: BR[1],
    lh: TR[1] - TL[1],
  };
  return (Object.keys(values) as OpeningKey[]).map((key) =>
    makeOpeningReading(key, Math.round((values[key] + (slip[key] ?? 0)) * 2) / 2),
  );
}

const ash: Material = { id: 'ash', kind: 'solid', name: 'Ash, sawn', species: 'Ash', state: 'sawn' };
const deal: Material = { id: 'deal', kind: 'solid', name: 'Deal, planed', state: 'planed' };
const ply12: Material = { id: 'ply-12', kind: 'sheet', name: 'Poplar plywood 12', thickness: 11.8 };
const ply6: Material = { id: 'ply-6', kind: 'sheet', name: 'Poplar plywood 6', thickness: 5.9 };
const ply18: Material = { id: 'ply-18', kind: 'sheet', name: 'Faced plywood 18', thickness: 17.8 };

function line(
  id: string,
  material: string,
  form: StockLine['form'],
  size: readonly [number, number, number],
  more: Partial<StockLine> = {},
): StockLine {
  const [length, width, thickness] = size;
  return { id, material, form, length, width, thickness, count: null, price: 40, ...more };
}

const ashBoards = [
  line('ash-27', 'ash', 'board', [3000, 200, 27], { price: 46 }),
  line('ash-34', 'ash', 'board', [2400, 180, 34], { price: 52 }),
  line('ash-16', 'ash', 'board', [2400, 150, 18], { price: 30 }),
  line('ash-mine', 'ash', 'offcut', [1250, 160, 27], { owned: true, count: 2, price: 0 }),
];

/** A tall opening with a leaning head, read well but for a height that is 20 too long; a frame with sill and covers. */
export function frameProject(): Project {
  return {
    ...newProject('Shed door'),
    currency: 'GBP',
    pricesIncludeTax: false,
    shapes: [
      {
        id: 'shed',
        name: 'Shed opening',
        kind: 'opening',
        seenFrom: 'from the garden',
        readings: readOpening({ BR: [742, 0], TR: [751, 1911], TL: [6, 1903] }, { hr: 20 }),
      },
    ],
    pieces: [
      {
        id: 'frame',
        letter: 'B',
        name: 'Frame',
        kind: 'door-frame',
        shape: 'shed',
        parameters: {
          corner: 'housing-over',
          sill: true,
          bulkheadMax: 44,
          bulkheadMin: 43,
          materials: { frame: 'ash', covers: 'ash' },
        },
      },
    ],
    materials: [ash],
    stock: ashBoards,
  };
}

/** Three drawers of two kinds, in a rack with a small own sheet and planed battens. */
export function drawerProject(): Project {
  const drawer = (id: string, letter: string, more: object): Piece => ({
    id,
    letter,
    name: `Drawer ${letter}`,
    kind: 'drawer',
    parameters: {
      openingWidth: 412,
      openingHeight: 156,
      clearDepth: 487,
      materials: { box: 'ply-12', bottom: 'ply-6', front: 'ply-18', runners: 'deal' },
      ...more,
    },
  });
  return {
    ...newProject('Galley drawers'),
    paper: 'Letter',
    pieces: [
      drawer('low', 'A', { count: 2 }),
      drawer('high', 'C', { openingHeight: 118, front: 'inset', runner: 'side-rail' }),
    ],
    materials: [ply12, ply6, ply18, deal],
    stock: [
      line('p12', 'ply-12', 'sheet', [2500, 1250, 11.8], { price: 58 }),
      line('p12-mine', 'ply-12', 'offcut', [1250, 620, 11.8], { owned: true, count: 1, price: 0 }),
      line('p6', 'ply-6', 'sheet', [2500, 1250, 5.9], { price: 31 }),
      line('p18', 'ply-18', 'sheet', [1250, 2500, 17.8], { price: 84 }),
      line('deal-44', 'deal', 'batten', [2400, 44, 20], { price: 4.2 }),
      line('deal-94', 'deal', 'board', [2400, 94, 20], { price: 8 }),
      line('deal-27', 'deal', 'board', [2400, 145, 33], { price: 17 }),
    ],
  };
}

/** A cabinet front of two columns and three rows with continuous grain, in a measured niche. */
export function frontProject(): Project {
  return {
    ...newProject('Niche'),
    shapes: [
      {
        id: 'niche',
        name: 'Niche',
        kind: 'opening',
        seenFrom: 'from the hall',
        readings: readOpening({ BR: [910, 2], TR: [907, 784], TL: [-3, 780] }),
      },
    ],
    pieces: [
      {
        id: 'front',
        letter: 'D',
        name: 'Front',
        kind: 'cabinet-front',
        shape: 'niche',
        parameters: {
          columns: 2,
          rows: 3,
          grading: 'arithmetic',
          fronts: 'overlay',
          continuous: 'true',
          materials: { frame: 'ash', fronts: 'ply-18' },
        },
      },
    ],
    materials: [ash, ply18],
    stock: [
      ...ashBoards,
      line('faced', 'ply-18', 'sheet', [2440, 1220, 17.8], { price: 96 }),
      line('faced-half', 'ply-18', 'sheet', [1220, 1220, 17.8], { price: 55, count: 1 }),
    ],
  };
}
