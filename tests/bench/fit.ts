import { parseArgs } from 'node:util';
import { buildPiece } from '#core/joinery';
import { adjustSurvey } from '#core/measuring';
import type { OpeningKey, Reading, SurveyOutcome } from '#core/measuring';
import { makeRandom } from '#core/numerics';
import type { Random } from '#core/numerics';
import { contextFor, doorFrame } from '../support/joinery-samples.ts';
import { drawOpening, drawReadings, lineOf, slipOf, spread } from './fit-openings.ts';
import type { Corner, Side, TrueOpening } from './fit-openings.ts';
import { tellOutlines, tellSpeed, tellTwists } from './fit-report.ts';
import { makeFrame, makeRectangle, tryFrame, workshop } from './fit-trial.ts';

const six = ['wb', 'wt', 'hl', 'hr', 'd1', 'd2'] as const;
const eight = [...six, 'w13', 'w23'] as const;
/** The reading sets of joinery A3. */
const sets: Readonly<Record<string, readonly OpeningKey[]>> = {
  '6': six,
  '8': eight,
  '12': [...eight, 'pl', 'pr', 'ls', 'lh'],
};

/** Packing of the frame at sides and head, and the gap its covers hide, mm (joinery B1). */
const frame = { packing: 5, capacity: 18 } as const;
/** Scatter of a bow by straightedge and rule, mm (joinery A1, M7). */
const bowSigma = 0.3;
const slipSizes = [5, 10, 20, 100] as const;

const usage = 'bench fit [--trials N] [--slips SHARE] [--seed N]';

/** Runs the simulation of measuring, making and trying in, and prints its tables; exit code 2 for wrong use. */
export function main(argv: readonly string[]): number {
  const { values } = parseArgs({
    args: [...argv],
    options: {
      trials: { type: 'string', default: '2000' },
      slips: { type: 'string', default: '0.05' },
      seed: { type: 'string', default: '1' },
    },
  });
  const [trials, share, seed] = [Number(values.trials), Number(values.slips), Number(values.seed)];
  if (!(trials >= 1) || !(share >= 0 && share <= 1) || !Number.isInteger(seed)) {
    console.error(`usage: ${usage}`);
    return 2;
  }
  console.log(tellAssumptions(trials, share, seed));
  console.log(
    '\nset\tfits, tool\tfits, naive\tnot fit, tool still in doubt\tretaken\tshape not fixed\tms each',
  );
  for (const name of Object.keys(sets)) console.log(tellFits(name, { trials, share, seed }));
  console.log('\nset\tslip mm\tfound\tnamed\tamong those named\tfalse alarms without a slip');
  for (const name of Object.keys(sets)) for (const line of tellSlips(name, trials, seed)) console.log(line);
  const run = { trials, share, seed };
  for (const line of [tellTwists(run), ...tellOutlines(run), ...tellSpeed()]) console.log(line);
  return 0;
}

function tellAssumptions(trials: number, share: number, seed: number): string {
  const { lean, taper, slope, bow, twist, tilt } = spread;
  return [
    `${trials} openings a set, seed ${seed}, a slip of joinery A5 in ${(100 * share).toFixed(1)} % of the readings.`,
    `Openings (invented): 540-760 x 1500-1900; standard deviations lean ${lean}, taper ${taper} a side, sill and head ${slope} an end,`,
    `bow ${bow}, twist ${twist} mm, upright ${1000 * tilt} mm per m. Readings: scatter of joinery A1, to whole mm; bows by M7, without slips.`,
    `Frame: as planned by default, datum the mean of the jambs. Made: lengths +-${workshop.length} (1 sigma, invented), diagonals within ${workshop.diagonals} (joinery B1).`,
    `Fits: stands on the sill, no gap below 0 and none above ${frame.capacity}. Each suspect is retaken once, without a slip.`,
    `Naive: square frame, bottom width less ${2 * frame.packing}, left height less ${frame.packing}; one reading each, with the same slips.`,
  ].join('\n');
}

interface Run {
  readonly trials: number;
  readonly share: number;
  readonly seed: number;
}

function tellFits(set: string, { trials, share, seed }: Run): string {
  const random = makeRandom(seed);
  const start = performance.now();
  const count = { tool: 0, naive: 0, doubt: 0, retaken: 0, open: 0 };
  for (let trial = 0; trial < trials; trial += 1) {
    const opening = drawOpening(random);
    const clean = drawReadings(opening, sets[set] ?? [], random);
    const readings = clean.map((reading) => (random.next() < share ? spoil(reading, random) : reading));
    const tool = planAndTry(opening, readings, random);
    count.tool += Number(tool.fits);
    count.naive += Number(tryNaive(opening, readings, random));
    count.doubt += Number(!tool.fits && tool.doubt);
    count.retaken += tool.retaken;
    count.open += Number(tool.open);
  }
  const ms = (performance.now() - start) / trials;
  const percent = (n: number) => `${((100 * n) / trials).toFixed(1)} %`;
  const cells = [percent(count.tool), percent(count.naive), percent(count.doubt)];
  return [set, ...cells, (count.retaken / trials).toFixed(2), percent(count.open), ms.toFixed(1)].join('\t');
}

/** The reading with a slip; a length that would come out as nothing is left as it is. */
function spoil(reading: Reading, random: Random): Reading {
  const value = reading.value + slipOf(reading, random);
  const length = reading.kind === 'distance' || reading.kind === 'width';
  return length && value <= 0 ? reading : { ...reading, value };
}

interface ToolTrial {
  readonly fits: boolean;
  /** The tool still warned of a slip when the frame was made. */
  readonly doubt: boolean;
  readonly retaken: number;
  readonly open: boolean;
}

function planAndTry(opening: TrueOpening, readings: readonly Reading[], random: Random): ToolTrial {
  const taken = [...readings, ...readBows(opening, random)];
  const first = adjust(taken);
  const suspects = first.adjustment.suspects.map(({ id }) => id);
  const keys = suspects.filter((id) => readings.some((reading) => reading.id === id)) as OpeningKey[];
  const again = [...drawReadings(opening, keys, random), ...readBows(opening, random)];
  const settled = taken.map((reading) =>
    suspects.includes(reading.id) ? (again.find(({ id }) => id === reading.id) ?? reading) : reading,
  );
  const { shape, adjustment } = suspects.length > 0 ? adjust(settled) : first;
  const doubt = adjustment.suspects.length > 0;
  const told = { doubt, retaken: suspects.length };
  if (!shape) return { ...told, fits: false, open: true };
  const built = buildPiece(doorFrame(), contextFor(shape));
  const made = makeFrame(built, random);
  const fits = made !== null && tryFrame(made, opening, frame.capacity).fits;
  return { ...told, fits, open: made === null };
}

/** A straightedge against each side, read to half a millimetre. */
function readBows({ bow }: TrueOpening, random: Random): readonly Reading[] {
  return edges.map(([side, from, to]) => {
    const value = Math.round(2 * (bow[side] + bowSigma * random.normal())) / 2;
    return { id: `b-${side}`, kind: 'bow', from, to, value };
  });
}

const edges: readonly (readonly [Side, Corner, Corner])[] = [
  ['left', 'BL', 'TL'],
  ['right', 'BR', 'TR'],
  ['head', 'TL', 'TR'],
  ['sill', 'BL', 'BR'],
];

function adjust(readings: readonly Reading[]): SurveyOutcome {
  return adjustSurvey({ seenFrom: 'from the saloon, looking forward', readings });
}

function tryNaive(opening: TrueOpening, readings: readonly Reading[], random: Random): boolean {
  const value = (id: string) => readings.find((reading) => reading.id === id)?.value ?? NaN;
  const [width, height] = [value('wb') - 2 * frame.packing, value('hl') - frame.packing];
  if (!(width > 0 && height > 0)) return false;
  return tryFrame(makeRectangle(width, height, random), opening, frame.capacity).fits;
}

function tellSlips(set: string, trials: number, seed: number): readonly string[] {
  const keys = sets[set] ?? [];
  const tape = keys.filter((key) => lineOf(key).kind === 'distance' || lineOf(key).kind === 'width');
  return slipSizes.map((size) => {
    const random = makeRandom(seed + size);
    const count = { found: 0, named: 0, listed: 0, alarms: 0 };
    for (let trial = 0; trial < trials; trial += 1) {
      const opening = drawOpening(random);
      const clean = [...drawReadings(opening, keys, random), ...readBows(opening, random)];
      const guilty = tape[random.whole(0, tape.length - 1)] ?? 'wb';
      const slip = size * (random.next() < 0.5 ? 1 : -1);
      const spoilt = clean.map((r) => (r.id === guilty ? { ...r, value: r.value + slip } : r));
      const named = adjust(spoilt).adjustment.suspects.map(({ id }) => id);
      count.found += Number(named.length > 0);
      count.named += Number(named.length === 1 && named[0] === guilty);
      count.listed += Number(named.includes(guilty));
      count.alarms += Number(adjust(clean).adjustment.suspects.length > 0);
    }
    const percent = (n: number) => `${((100 * n) / trials).toFixed(1)} %`;
    const cells = [count.found, count.named, count.listed, count.alarms].map(percent);
    return [set, size, ...cells].join('\t');
  });
}
