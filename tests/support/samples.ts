import type { LabelText, LayoutView, SurveyView } from '#core/drawing';
import { rectangleOutline } from '#core/geometry';
import type { Placement, Point3 } from '#core/geometry';
import type { BuiltPiece, Machining, Part } from '#core/joinery';
import type { Adjustment, Reading } from '#core/measuring';

// Hand-made parts, layouts and readings of our own boat, Curlew; the numbers are invented.

const at = (origin: Point3, xAxis: Point3, yAxis: Point3): Placement => ({ origin, xAxis, yAxis });
const X = { x: 1, y: 0, z: 0 };
const Y = { x: 0, y: 1, z: 0 };
const Z = { x: 0, y: 0, z: 1 };
const minus = (p: Point3): Point3 => ({ x: -p.x, y: -p.y, z: -p.z });

/** A plain part of this size; the rest as given. */
export function samplePart(
  id: string,
  size: readonly [number, number, number],
  more: Partial<Part> = {},
): Part {
  const [length, width, thickness] = size;
  const finished = { length, width, thickness };
  return {
    id,
    piece: 'sample',
    name: 'Part',
    quantity: 1,
    hand: 'none',
    material: 'oak',
    kind: 'solid',
    finished,
    cut: finished,
    rough: finished,
    outline: rectangleOutline(length, width),
    holes: [],
    grain: 'along-length',
    turn: false,
    faceSide: 'to the saloon',
    edges: [],
    machining: [],
    placements: [],
    working: { length: 'l', width: 'w', thickness: 't' },
    notes: [],
    ...more,
  };
}

const recess = (
  name: Extract<Machining, { kind: 'recess' }>['name'],
  from: Extract<Machining, { kind: 'recess' }>['from'],
  [x1, x2, y1, y2, z1, z2]: readonly [number, number, number, number, number, number],
  note?: string,
): Machining => ({
  kind: 'recess',
  name,
  from,
  box: { min: { x: x1, y: y1, z: z1 }, max: { x: x2, y: y2, z: z2 } },
  ...(note && { note }),
});

const jambMachining: readonly Machining[] = [
  recess('housing', 'face', [1712, 1732, 0, 62, 0, 7], 'takes the head'),
  recess('mortise', 'face', [300, 396, 20, 42, 0, 12.5], 'strike'),
  { kind: 'hole', from: 'face', x: 120, y: 31, diameter: 5, depth: 'through', countersink: 10 },
  { kind: 'hole', from: 'face', x: 1600, y: 31, diameter: 5, depth: 'through', countersink: 10 },
];

/** A door frame of two jambs, a head, a sill, two cover strips and an infill with a scribed top. */
export const sampleFrame: BuiltPiece = {
  piece: 'frame',
  letter: 'C',
  name: 'Saloon door frame',
  kind: 'door-frame',
  seenFrom: 'from the saloon, looking forward',
  parts: [
    samplePart('C1', [1742, 62, 20], {
      name: 'Left jamb',
      hand: 'left',
      machining: jambMachining,
      placements: [at({ x: 25, y: 5, z: 40 }, Y, minus(Z))],
    }),
    samplePart('C2', [1742, 62, 20], {
      name: 'Right jamb',
      hand: 'right',
      machining: [recess('housing', 'face', [10, 30, 0, 62, 0, 7], 'takes the head')],
      placements: [at({ x: 616, y: 1747, z: 40 }, minus(Y), minus(Z))],
    }),
    samplePart('C3', [605, 62, 20], {
      name: 'Head',
      placements: [at({ x: 18, y: 1737, z: 40 }, X, minus(Z))],
    }),
    samplePart('C4', [631, 74, 22], { name: 'Sill', placements: [at({ x: 5, y: -17, z: 52 }, X, minus(Z))] }),
    samplePart('C5', [1792, 45, 12], {
      name: 'Cover strip',
      quantity: 2,
      placements: [at({ x: 8, y: -17, z: 52 }, Y, minus(X)), at({ x: 678, y: -17, z: 52 }, Y, minus(X))],
    }),
    samplePart('C6', [212, 560, 12], {
      name: 'Infill',
      kind: 'sheet',
      material: 'ply-12',
      // X up, Y to the right as seen from the saloon
      outline: [
        { x: 0, y: 0 },
        { x: 212, y: 0, bulge: 0.06 },
        { x: 190, y: 560 },
        { x: 0, y: 560 },
      ],
      edges: [{ edge: 'end', treatment: 'scribed', amount: 12 }],
      machining: [recess('rebate', 'back', [0, 10, 0, 560, 6, 12], 'over the head')],
      placements: [at({ x: 40, y: 1757, z: 10 }, Y, X)],
    }),
  ],
  joints: [],
  matchedSets: [],
  fixings: [],
  steps: [],
  working: [],
  envelope: { min: { x: -37, y: -17, z: -22 }, max: { x: 678, y: 1969, z: 64 } },
  findings: [],
};

export const sampleJamb = sampleFrame.parts[0] as Part;
export const sampleInfill = sampleFrame.parts[5] as Part;

/** A drawer side with a groove along the back, finger joints at the start and a stopped housing. */
export const sampleDrawerSide = samplePart('D2', [450, 92, 12], {
  name: 'Drawer side',
  quantity: 2,
  kind: 'sheet',
  material: 'ply-12',
  piece: 'drawer',
  faceSide: 'outside',
  machining: [
    recess('groove', 'back', [0, 450, 10, 16.4, 6, 12], 'bottom'),
    recess('finger', 'face', [-0.3, 12, 0, 18.4, 0, 12]),
    recess('finger', 'face', [-0.3, 12, 36.8, 55.2, 0, 12]),
    recess('finger', 'face', [-0.3, 12, 73.6, 92, 0, 12]),
    recess('housing', 'face', [400, 412.2, 30, 92, 0, 6], 'back of the drawer'),
    { kind: 'hole', from: 'face', x: 225, y: 46, diameter: 35, depth: 8 },
  ],
  placements: [at({ x: 0, y: 0, z: 0 }, X, Y)],
});

/** A sheet with a dozen parts, some of them too small to write in. */
export const sampleLayout: LayoutView = {
  title: 'Plywood 12 mm, sheet 1 of 2',
  form: 'sheet',
  stock: { length: 2440, width: 1220 },
  usable: { x: 10, y: 10, length: 2430, width: 1210 },
  kerf: 3,
  keepOut: [{ x: 2300, y: 1080, length: 90, width: 70 }],
  parts: [
    {
      address: 'C6',
      name: 'Infill',
      sizeText: '565 × 230',
      place: 'strip A, 1st',
      x: 10,
      y: 10,
      length: 565,
      width: 230,
      grain: 'along',
      turned: false,
    },
    {
      address: 'D1',
      name: 'Drawer bottom',
      sizeText: '410 × 230',
      place: 'strip A, 2nd',
      x: 578,
      y: 10,
      length: 410,
      width: 230,
      grain: 'any',
      turned: false,
    },
    {
      address: 'D5',
      name: 'Front',
      sizeText: '400 × 230',
      place: 'strip A, 3rd',
      x: 991,
      y: 10,
      length: 400,
      width: 230,
      grain: 'across',
      turned: true,
    },
    {
      address: 'D2',
      name: 'Drawer side',
      sizeText: '450 × 92',
      place: 'strip B, 1st',
      x: 10,
      y: 243,
      length: 450,
      width: 92,
      grain: 'along',
      turned: false,
    },
    {
      address: 'D2',
      name: 'Drawer side',
      sizeText: '450 × 92',
      place: 'strip B, 2nd',
      x: 463,
      y: 243,
      length: 450,
      width: 92,
      grain: 'along',
      turned: false,
    },
    {
      address: 'D3',
      name: 'Drawer back',
      sizeText: '356 × 92',
      place: 'strip B, 3rd',
      x: 916,
      y: 243,
      length: 356,
      width: 92,
      grain: 'along',
      turned: false,
    },
    {
      address: 'D4',
      name: 'Drawer front',
      sizeText: '356 × 92',
      place: 'strip B, 4th',
      x: 1275,
      y: 243,
      length: 356,
      width: 92,
      grain: 'along',
      turned: false,
    },
    {
      address: 'E1',
      name: 'Locker side',
      sizeText: '1180 × 420',
      place: 'strip C, 1st',
      x: 10,
      y: 338,
      length: 1180,
      width: 420,
      grain: 'along',
      turned: false,
    },
    {
      address: 'E2',
      name: 'Locker side',
      sizeText: '1180 × 420',
      place: 'strip C, 2nd',
      x: 1193,
      y: 338,
      length: 1180,
      width: 420,
      grain: 'along',
      turned: false,
    },
    {
      address: 'E9',
      name: 'Glue block',
      sizeText: '60 × 40',
      place: 'strip D, 1st',
      x: 10,
      y: 761,
      length: 60,
      width: 40,
      grain: 'any',
      turned: false,
    },
    {
      address: 'E9',
      name: 'Glue block',
      sizeText: '60 × 40',
      place: 'strip D, 2nd',
      x: 73,
      y: 761,
      length: 60,
      width: 40,
      grain: 'any',
      turned: false,
    },
    {
      address: 'E7',
      name: 'Cleat',
      sizeText: '900 × 40',
      place: 'strip D, 3rd',
      x: 136,
      y: 761,
      length: 900,
      width: 40,
      grain: 'along',
      turned: false,
    },
  ],
  cuts: [
    { label: 'A', x1: 10, y1: 241.5, x2: 2440, y2: 241.5, order: 1 },
    { label: 'B', x1: 10, y1: 336.5, x2: 2440, y2: 336.5, order: 5 },
    { label: 'C', x1: 10, y1: 759.5, x2: 2440, y2: 759.5, order: 10 },
    { label: 'D', x1: 10, y1: 802.5, x2: 2440, y2: 802.5, order: 13 },
    { label: 'A1', x1: 576.5, y1: 241, x2: 576.5, y2: 10, order: 2 },
    { label: 'A2', x1: 989.5, y1: 241, x2: 989.5, y2: 10, order: 3 },
    { label: 'A3', x1: 1392.5, y1: 241, x2: 1392.5, y2: 10, order: 4 },
    { label: 'B1', x1: 461.5, y1: 335, x2: 461.5, y2: 243, order: 6 },
    { label: 'B2', x1: 914.5, y1: 335, x2: 914.5, y2: 243, order: 7 },
    { label: 'B3', x1: 1273.5, y1: 335, x2: 1273.5, y2: 243, order: 8 },
    { label: 'B4', x1: 1632.5, y1: 335, x2: 1632.5, y2: 243, order: 9 },
    { label: 'C1', x1: 1191.5, y1: 758, x2: 1191.5, y2: 338, order: 11 },
    { label: 'C2', x1: 2374.5, y1: 758, x2: 2374.5, y2: 338, order: 12 },
    { label: 'D1', x1: 71.5, y1: 801, x2: 71.5, y2: 761, order: 14 },
    { label: 'D2', x1: 134.5, y1: 801, x2: 134.5, y2: 761, order: 15 },
    { label: 'D3', x1: 1037.5, y1: 801, x2: 1037.5, y2: 761, order: 16 },
  ],
  leftovers: [
    { x: 10, y: 804, length: 2430, width: 416 },
    { x: 1394, y: 10, length: 1046, width: 230 },
    { x: 1634, y: 243, length: 806, width: 92 },
  ],
  width: 270,
};

/** Two knees of one gusset head to tail in one blank, 10 apart, beside a single one. */
export const sampleHeadToTail: LayoutView = {
  ...sampleLayout,
  title: 'Plywood 12 mm, knees',
  keepOut: [],
  shared: [
    {
      x: 10,
      y: 10,
      length: 623,
      width: 300,
      note: 'K1/K1  head to tail in one blank: mark both from the template of the pair, saw between them, straight, then shape each to its line',
      link: 'K1',
    },
  ],
  parts: [
    {
      address: 'K1',
      name: 'Knee',
      sizeText: '600 × 300',
      place: 'strip A, 1st, head to tail no. 1',
      ...{ x: 10, y: 10, length: 600, width: 300, grain: 'along', turned: false },
      outline: [
        { x: 10, y: 10 },
        { x: 610, y: 10 },
        { x: 10, y: 310 },
      ],
    },
    {
      address: 'K1',
      name: 'Knee',
      sizeText: '600 × 300',
      place: 'strip A, 1st, head to tail no. 2',
      ...{ x: 33, y: 10, length: 600, width: 300, grain: 'along', turned: false },
      outline: [
        { x: 633, y: 310 },
        { x: 33, y: 310 },
        { x: 633, y: 10 },
      ],
    },
  ],
  cuts: [{ label: '1', x1: 10, y1: 311.5, x2: 2440, y2: 311.5, order: 1 }],
  leftovers: [],
};

/** A bar of timber cut to length. */
export const sampleBatten: LayoutView = {
  title: 'Oak 70 × 22, board 1 of 3',
  form: 'batten',
  stock: { length: 2400, width: 70 },
  usable: { x: 20, y: 0, length: 2360, width: 70 },
  kerf: 3,
  keepOut: [],
  parts: [
    {
      address: 'C1',
      name: 'Left jamb',
      sizeText: '1742',
      place: '1st',
      x: 20,
      y: 0,
      length: 1742,
      width: 70,
      grain: 'along',
      turned: false,
    },
    {
      address: 'C8',
      name: 'Stop',
      sizeText: '420',
      place: '2nd',
      x: 1765,
      y: 0,
      length: 420,
      width: 70,
      grain: 'along',
      turned: false,
    },
  ],
  cuts: [
    { label: '1', x1: 1763.5, y1: 70, x2: 1763.5, y2: 0, order: 1 },
    { label: '2', x1: 2186.5, y1: 70, x2: 2186.5, y2: 0, order: 2 },
  ],
  leftovers: [{ x: 2188, y: 0, length: 192, width: 70 }],
  width: 270,
};

const distance = (id: string, from: string, to: string, value: number): Reading => ({
  id,
  kind: 'distance',
  from,
  to,
  value,
});

export const sampleReadings: readonly Reading[] = [
  distance('wb', 'BL', 'BR', 641),
  distance('wt', 'TL', 'TR', 635),
  distance('hl', 'BL', 'TL', 1746),
  distance('hr', 'BR', 'TR', 1752),
  distance('d1', 'BL', 'TR', 1868),
  distance('d2', 'BR', 'TL', 1865),
  { id: 'w13', kind: 'width', left: ['BL', 'TL'], right: ['BR', 'TR'], at: 1 / 3, value: 639 },
  { id: 'w23', kind: 'width', left: ['BL', 'TL'], right: ['BR', 'TR'], at: 2 / 3, value: 637 },
  { id: 'pl', kind: 'plumb', from: 'BL', to: 'TL', value: 14 },
  { id: 'pr', kind: 'plumb', from: 'BR', to: 'TR', value: 8 },
  { id: 'ls', kind: 'level', from: 'BL', to: 'BR', value: 0 },
  { id: 'lh', kind: 'level', from: 'TL', to: 'TR', value: 6 },
];

const residuals: Readonly<Record<string, number>> = {
  wb: 0.2,
  wt: -0.3,
  hl: 0,
  hr: 0.1,
  d1: -0.4,
  d2: 9.8,
  w13: 0.1,
  w23: -0.1,
  pl: 0.6,
  pr: -0.6,
  ls: 0,
  lh: 0,
};

export const sampleAdjustment: Adjustment = {
  seenFrom: 'from the saloon, looking forward',
  points: [
    { id: 'BL', x: 0, y: 0, sx: 0, sy: 0 },
    { id: 'BR', x: 640.8, y: 0, sx: 0.4, sy: 0 },
    { id: 'TR', x: 649, y: 1751.9, sx: 0.7, sy: 0.4 },
    { id: 'TL', x: 14, y: 1746, sx: 0.7, sy: 0.4 },
  ],
  tilt: 0.02,
  readings: sampleReadings.map((reading) => ({
    id: reading.id,
    value: reading.value,
    sigma: 0.5,
    adjusted: reading.value - (residuals[reading.id] ?? 0),
    residual: residuals[reading.id] ?? 0,
    redundancy: 0.5,
    normalised: 1,
    smallestSlip: 4,
  })),
  dof: 4,
  chi2: 3,
  suspects: [{ id: 'd2', slip: 9.8, cause: 'ten millimetres misread on the tape' }],
  undetermined: [],
  advice: null,
  findings: [],
};

export const sampleSurvey: SurveyView = {
  shape: {
    seenFrom: 'from the saloon, looking forward',
    points: { BL: { x: 0, y: 0 }, BR: { x: 640.8, y: 0 }, TR: { x: 649, y: 1751.9 }, TL: { x: 14, y: 1746 } },
    edges: [
      { name: 'sill', from: 'BL', to: 'BR' },
      { name: 'right', from: 'BR', to: 'TR', bow: 2 },
      { name: 'head', from: 'TR', to: 'TL' },
      { name: 'left', from: 'BL', to: 'TL' },
    ],
    order: [],
    covariance: [],
    tilt: 0,
  },
  readings: sampleReadings,
  adjustment: sampleAdjustment,
  width: 180,
  exaggerate: 8,
};

export const sampleLabels: readonly LabelText[] = [
  {
    job: 'Curlew · Saloon door frame',
    address: 'C1',
    name: 'Left jamb',
    size: '1742 × 62 × 20',
    faceSide: 'face side to the opening',
    seenFrom: 'from the saloon, looking forward',
    up: 'right',
    grain: 'along',
    scribes: [],
    joints: ['far end: housing 7 deep for C3', 'start: bare'],
    stock: 'oak-70 · board 1, 1st',
    next: 'cut the housing for the head',
  },
  {
    job: 'Curlew · Saloon door frame',
    address: 'C6',
    name: 'Infill above the head, trimmed on board',
    size: '560 × 212 × 12',
    faceSide: 'face side to the saloon',
    seenFrom: 'from the saloon, looking forward',
    up: 'up',
    grain: 'along',
    scribes: ['far edge 12'],
    joints: ['face edge: rebate 6 × 10'],
    stock: 'ply-12 · sheet 1, strip A, 1st',
    next: 'take to the boat and scribe',
  },
];
