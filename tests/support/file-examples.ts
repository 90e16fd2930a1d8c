import type { CuttingJob, CuttingPlan } from '#core/cutting';
import type { Adjustment, Survey } from '#core/measuring';
import type { NestJob, NestPlan } from '#core/nesting';
import type { Problem } from '#core/problems';
import type { PlanFile } from '#core/project';

import { generateProject } from './generate-project.ts';
import type { SchemaName } from './json-schemas.ts';
import { samplePhoto, sampleShapes } from './sample-shapes.ts';

/** A change to plain data that makes it wrong in a way the types forbid. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any
type Spoil = (document: any) => void;

/** Right files of each kind, and ways to spoil the first of them. */
interface Examples {
  readonly good: readonly [unknown, ...unknown[]];
  readonly spoil: readonly [Spoil, ...Spoil[]];
}

const findings: readonly Problem[] = [
  { severity: 'stop', code: 'part-too-large', about: 'A1', message: 'It does not fit.', remedy: 'Split it.' },
  { severity: 'note', code: 'tilt', message: 'The boat leans by 0.2°.', source: 'joinery A4' },
];

/** A project with a shape of every kind, the first with a photo. */
const withSampleShapes = {
  ...generateProject(7),
  shapes: [
    ...generateProject(7).shapes,
    ...sampleShapes.map((shape, at) => (at === 0 ? { ...shape, photos: [samplePhoto] } : shape)),
  ],
};

/** The survey of the contract. */
export const contractSurvey: Survey = {
  seenFrom: 'from the saloon, looking forward',
  readings: [
    { id: 'wb', kind: 'distance', from: 'BL', to: 'BR', value: 641, sigma: 0.5 },
    {
      id: 'wt',
      kind: 'distance',
      from: 'TL',
      to: 'TR',
      value: 635,
      method: 'M3',
      repeats: [635.5],
      note: 'twice',
    },
    {
      id: 'w13',
      kind: 'width',
      left: ['BL', 'TL'],
      right: ['BR', 'TR'],
      at: 0.3333333,
      value: 639,
      toFace: 'lining',
    },
    { id: 'pl', kind: 'plumb', from: 'BL', to: 'TL', value: -14, sigma: 1 },
    { id: 'ls', kind: 'level', from: 'BL', to: 'BR', value: 0, sigma: 1 },
  ],
};

/** The job of true shapes of the contract, with a clamp in the corner. */
export const contractNestJob: NestJob = {
  gap: 8,
  margin: 10,
  stock: [
    {
      id: 'ply',
      length: 2440,
      width: 1220,
      cost: 78,
      count: null,
      keepOut: [{ x: 0, y: 0, length: 50, width: 20 }],
    },
  ],
  parts: [
    {
      id: 'p1',
      outline: [
        [0, 0],
        [400, 0],
        [380, 260],
        [0, 300],
      ],
      holes: [],
      angles: [0, 180],
      count: 2,
    },
  ],
};

const contractNestPlan: NestPlan = {
  sheets: [{ stock: 'ply' }],
  placements: [
    { id: 'p1', sheet: 0, angle: 0, x: 70, y: 30 },
    { id: 'p1', sheet: 0, angle: 180, x: 900, y: 340 },
  ],
  stockUsed: [{ id: 'ply', count: 1 }],
  length: null,
  cost: 78,
  bound: 78,
  proven: true,
  density: 0.073,
  unplaced: [],
  seconds: 0.1,
  findings: [],
};

const adjustment: Adjustment = {
  seenFrom: 'from the saloon, looking forward',
  points: [{ id: 'BL', x: 0, y: 0, sx: 0, sy: 0 }],
  tilt: -0.007,
  readings: [
    {
      id: 'wb',
      value: 641,
      sigma: 0.5,
      adjusted: 640.982,
      residual: 0.018,
      redundancy: 0.39,
      normalised: null,
      smallestSlip: 3.3,
    },
  ],
  dof: 6,
  chi2: 0.207,
  suspects: [{ id: 'wb', slip: 10, cause: 'misread by a ten', mistake: 'E2' }],
  undetermined: [],
  advice: null,
  findings,
};

/** The job of the contract. */
export const contractJob: CuttingJob = {
  kerf: 3,
  trim: { left: 10, right: 0, bottom: 10, top: 0 },
  cuts: {
    style: 'guillotine',
    maxStages: null,
    exact: false,
    firstCut: 'either',
    maxRip: null,
    maxCut: null,
  },
  stock: [
    {
      id: 'ply',
      length: 2440,
      width: 1220,
      cost: 78,
      count: null,
      keepOut: [{ x: 0, y: 0, length: 50, width: 20 }],
    },
  ],
  parts: [{ id: 'A1', length: 700, width: 300, count: 2, turn: false }],
  keepLeftover: { minLength: 300, minWidth: 100 },
};

/** The plan of the contract. */
export const contractPlan: CuttingPlan = {
  cost: 78,
  bound: 78,
  proven: true,
  seconds: 0.1,
  stockUsed: [{ id: 'ply', count: 1 }],
  unplaced: [],
  findings: [],
  layouts: [
    {
      stock: 'ply',
      times: 1,
      placed: [
        { id: 'A1', x: 10, y: 10, length: 700, width: 300, turned: false },
        { id: 'A1', x: 713, y: 10, length: 700, width: 300, turned: false },
      ],
      cuts: {
        x: 10,
        y: 10,
        length: 2430,
        width: 1210,
        cut: 'along',
        at: 310,
        children: [
          {
            x: 10,
            y: 10,
            length: 2430,
            width: 300,
            cut: 'across',
            at: 710,
            children: [
              { x: 10, y: 10, length: 700, width: 300, part: 'A1' },
              {
                x: 713,
                y: 10,
                length: 1727,
                width: 300,
                cut: 'across',
                at: 1413,
                children: [
                  { x: 713, y: 10, length: 700, width: 300, part: 'A1' },
                  { x: 1416, y: 10, length: 1024, width: 300, leftover: true },
                ],
              },
            ],
          },
          { x: 10, y: 313, length: 2430, width: 907, leftover: true },
        ],
      },
      leftovers: [
        { x: 10, y: 313, length: 2430, width: 907 },
        { x: 1416, y: 10, length: 1024, width: 300 },
      ],
    },
  ],
};

const planFile: PlanFile = {
  version: 1,
  project: 'Curlew',
  currency: 'EUR',
  groups: [
    {
      id: 'ply18-sheet',
      title: 'Birch plywood 18',
      material: 'ply18',
      form: 'sheet',
      job: contractJob,
      blanks: [{ id: 'A1', set: 'fronts', parts: [{ part: 'A1', x: 0, y: 0, length: 700, width: 300 }] }],
      plan: contractPlan,
    },
  ],
  parts: [
    {
      id: 'A1',
      piece: 'bank',
      name: 'Front',
      quantity: 2,
      hand: 'none',
      material: 'ply18',
      finished: { length: 700, width: 300, thickness: 17.7 },
      cut: { length: 700, width: 300, thickness: 17.7 },
      rough: { length: 700, width: 300, thickness: 17.7 },
    },
  ],
  findings,
};

/** Examples of every kind of file, by the name of its schema. */
export const examples: Readonly<Record<SchemaName, Examples>> = {
  project: {
    good: [withSampleShapes, generateProject(7), generateProject(8)],
    spoil: [
      (p) => (p.version = 2),
      (p) => (p.extra = 1),
      (p) => delete p.name,
      (p) => (p.currency = 'euro'),
      (p) => (p.units = 'cm'),
      (p) => (p.pricesIncludeTax = 'yes'),
      (p) => (p.stock[0].length = 0),
      (p) => (p.stock[0].count = 1.5),
      (p) => (p.stock[0].price = -1),
      (p) => (p.tools.sheetSaw.kerf = -2.2),
      (p) => (p.tools.sheetSaw.cuts.style = 'spiral'),
      (p) => (p.pieces[0].kind = 'spaceship'),
      (p) => (p.pieces[0].parameters.wings = 2),
      (p) => (p.pieces[0].letter = ''),
      (p) => (p.shapes[0].seenFrom = ''),
      (p) => (p.shapes[0].readings[0].value = -641),
      (p) => (p.shapes[0].readings[0].kind = 'diagonal'),
      (p) => (p.shapes[0].readings[6].at = 1.5),
      (p) => (p.shapes[0].readings[6].left = ['BL']),
      (p) => (p.shapes.at(-4).curves[0].sigma = 0),
      (p) => (p.shapes.at(-4).curves[0].ordinates[0].at = -1),
      (p) => (p.shapes.at(-4).obstructions[0].width = 0),
      (p) => (p.shapes.at(-4).photos[0].image = 'https://example.org/a.png'),
      (p) => (p.shapes.at(-4).photos[0].strokes[0].points[0].x = 2),
      (p) => (p.shapes.at(-3).sections[0].bevels[0].degrees = 90),
      (p) => (p.shapes.at(-3).sections[0].ordinates[0].high = 1),
      (p) => (p.shapes.at(-2).walls[0].corner.degrees = 360),
      (p) => (p.shapes.at(-2).walls[0].length = 0),
      (p) => (p.shapes.at(-2).closed = 'yes'),
      (p) => (p.shapes.at(-1).traced.cornersAt[0] = 0.5),
      (p) => (p.shapes.at(-1).traced.bars.x.real = 0),
      (p) => (p.shapes.at(-1).corners[0] = ''),
      (p) => (p.settings.moistureNow = 99),
      (p) => (p.done = [7]),
    ],
  },
  survey: {
    good: [contractSurvey],
    spoil: [
      (s) => delete s.seenFrom,
      (s) => (s.seenFrom = ''),
      (s) => (s.readings = {}),
      (s) => (s.readings[0].value = '641'),
      (s) => (s.readings[0].value = 0),
      (s) => (s.readings[0].sigma = 0),
      (s) => (s.readings[1].method = 'M15'),
      (s) => (s.readings[2].from = 'BL'),
      (s) => (s.units = 'mm'),
    ],
  },
  adjustment: {
    good: [adjustment, { ...adjustment, tilt: null, suspects: [], advice: 'Measure a diagonal.' }],
    spoil: [
      (a) => (a.dof = -1),
      (a) => (a.points[0].z = 0),
      (a) => (a.tilt = 'none'),
      (a) => delete a.findings,
    ],
  },
  'cutting-job': {
    good: [
      contractJob,
      { stock: [], parts: [] },
      {
        cuts: { style: 'length' },
        stock: [{ id: 'bar', length: 3000 }],
        parts: [{ id: 'a', length: 700, count: 0 }],
      },
    ],
    spoil: [
      (j) => (j.kerf = -3),
      (j) => (j.kerf = null),
      (j) => (j.trim.lefft = 10),
      (j) => (j.cuts.maxStages = 0),
      (j) => (j.cuts.maxStages = 2.5),
      (j) => (j.cuts.firstCut = 'up'),
      (j) => (j.stock[0].length = 0),
      (j) => (j.stock[0].count = -1),
      (j) => (j.stock[0].keepOut[0].width = 0),
      (j) => (j.parts[0].width = -300),
      (j) => (j.parts[0].turn = 1),
      (j) => delete j.parts,
      (j) => delete j.stock[0].id,
    ],
  },
  'cutting-plan': {
    good: [contractPlan, { ...contractPlan, bound: null, proven: false, layouts: [] }],
    spoil: [
      (p) => (p.layouts[0].cuts.cut = 'diagonal'),
      (p) => p.layouts[0].cuts.children.pop(),
      (p) => (p.layouts[0].cuts.children[1].leftover = false),
      (p) => (p.layouts[0].cuts.children[1].part = 'A1'),
      (p) => delete p.layouts[0].cuts.children[1].leftover,
      (p) => (p.layouts[0].placed[0].turned = 'no'),
      (p) => (p.layouts[0].times = 0.5),
      (p) => (p.bound = 'none'),
      (p) => (p.findings = [{ severity: 'bad', code: 'x', message: 'y' }]),
    ],
  },
  'nest-job': {
    good: [
      contractNestJob,
      { stock: [{ strip: 1220 }], parts: [] },
      { stock: [], parts: [{ id: 'a', outline: [], holes: [[]], angles: [] }] },
    ],
    spoil: [
      (j) => (j.gap = -8),
      (j) => (j.margin = null),
      (j) => (j.stock[0].strip = 1220),
      (j) => (j.stock[0].length = 0),
      (j) => (j.stock[0].keepOut[0].length = -1),
      (j) => (j.parts[0].outline[0] = [0]),
      (j) => (j.parts[0].outline[0] = [0, 0, 0]),
      (j) => (j.parts[0].outline[0][1] = '0'),
      (j) => (j.parts[0].angles = 90),
      (j) => (j.parts[0].count = 1.5),
      (j) => (j.parts[0].turn = true),
      (j) => delete j.parts[0].outline,
      (j) => delete j.stock,
    ],
  },
  'nest-plan': {
    good: [contractNestPlan, { ...contractNestPlan, length: 812.5, bound: null, proven: false }],
    spoil: [
      (p) => (p.sheets[0] = 'ply'),
      (p) => (p.placements[0].sheet = -1),
      (p) => (p.placements[0].x = null),
      (p) => delete p.placements[0].angle,
      (p) => (p.density = 1.2),
      (p) => (p.length = -1),
      (p) => delete p.unplaced,
    ],
  },
  'plan-file': {
    good: [planFile],
    spoil: [
      (p) => (p.groups[0].job.kerf = -1),
      (p) => (p.groups[0].form = 'bar'),
      (p) => (p.groups[0].blanks[0].parts[0].length = 0),
      (p) => (p.parts[0].hand = 'middle'),
      (p) => delete p.parts[0].finished.width,
      (p) => (p.groups[0].plan.layouts[0].cuts.children[0].length = 'long'),
    ],
  },
  'check-answer': {
    good: [{ kind: 'project', findings }],
    spoil: [(c) => (c.kind = 'letter'), (c) => delete c.findings],
  },
  findings: {
    good: [{ findings }, { findings: [] }],
    spoil: [(f) => (f.findings = null), (f) => (f.kind = 'project'), (f) => (f.findings[0].code = '')],
  },
};
