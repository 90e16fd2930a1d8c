import { adjustSurvey } from '#core/measuring';
import type { Reading } from '#core/measuring';
import { makeRandom } from '#core/numerics';
import { drawOpening } from './fit-openings.ts';
import {
  adjustOutline,
  drawOutline,
  outlineSets,
  readOutline,
  spoilOutline,
  tryPanel,
} from './fit-outlines.ts';
import type { OutlineSet, TrueOutline } from './fit-outlines.ts';

interface Run {
  readonly trials: number;
  readonly share: number;
  readonly seed: number;
}

const slipSizes = [5, 10, 20, 100] as const;

/** Outlines of five to seven corners: how many panels fit, and how many slips are found and named. */
export function tellOutlines(run: Run): readonly string[] {
  return [
    '\noutline by\tfits, tool\tfits, no check\tnot fit, tool still in doubt\tretaken\tnot fixed',
    ...outlineSets.map((set) => tellPanels(set, run)),
    '\noutline by\tslip mm\tfound\tnamed\tamong those named\tfalse alarms without a slip',
    ...outlineSets.flatMap((set) => slipSizes.map((size) => tellSlip(set, size, run))),
  ];
}

function percent(count: number, trials: number): string {
  return `${((100 * count) / trials).toFixed(1)} %`;
}

function tellPanels(set: OutlineSet, { trials, share, seed }: Run): string {
  const random = makeRandom(seed);
  const count = { tool: 0, bare: 0, doubt: 0, retaken: 0, open: 0 };
  for (let trial = 0; trial < trials; trial += 1) {
    const outline = drawOutline(random);
    const clean = readOutline(outline, set, random);
    const readings = clean.map((r) => (random.next() < share ? spoilOutline(r, random) : r));
    const first = adjustOutline(readings, outline);
    const suspects = first.adjustment.suspects.map(({ id }) => id);
    // A fresh look is a reading as careful as the first, without its slip.
    const again = readings.map((r) =>
      suspects.includes(r.id) ? (clean.find(({ id }) => id === r.id) ?? r) : r,
    );
    const last = suspects.length > 0 ? adjustOutline(again, outline) : first;
    const fits = last.shape !== null && tryPanel(last.shape.points, outline, random);
    count.tool += Number(fits);
    count.bare += Number(first.shape !== null && tryPanel(first.shape.points, outline, random));
    count.doubt += Number(!fits && last.adjustment.suspects.length > 0);
    count.retaken += suspects.length;
    count.open += Number(last.shape === null);
  }
  const shares = [count.tool, count.bare, count.doubt].map((n) => percent(n, trials));
  return [set, ...shares, (count.retaken / trials).toFixed(2), percent(count.open, trials)].join('\t');
}

function tellSlip(set: OutlineSet, size: number, { trials, seed }: Run): string {
  const random = makeRandom(seed + size);
  const count = { found: 0, named: 0, listed: 0, alarms: 0 };
  const suspectsOf = (readings: readonly Reading[], outline: TrueOutline) =>
    adjustOutline(readings, outline).adjustment.suspects.map(({ id }) => id);
  for (let trial = 0; trial < trials; trial += 1) {
    const outline = drawOutline(random);
    const clean = readOutline(outline, set, random);
    const guilty = clean[random.whole(0, clean.length - 1)]?.id ?? '';
    const slip = size * (random.next() < 0.5 ? 1 : -1);
    const named = suspectsOf(
      clean.map((r) => (r.id === guilty ? { ...r, value: r.value + slip } : r)),
      outline,
    );
    count.found += Number(named.length > 0);
    count.named += Number(named.length === 1 && named[0] === guilty);
    count.listed += Number(named.includes(guilty));
    count.alarms += Number(suspectsOf(clean, outline).length > 0);
  }
  const shares = [count.found, count.named, count.listed, count.alarms].map((n) => percent(n, trials));
  return [set, size, ...shares].join('\t');
}

/** How often strings across an opening tell a twist that matters: more than 3 mm (joinery A4), the gap read to half a millimetre. */
export function tellTwists({ trials, seed }: Run): string {
  const random = makeRandom(seed);
  const count = { twisted: 0, told: 0, flat: 0, alarms: 0 };
  for (let trial = 0; trial < trials; trial += 1) {
    const opening = drawOpening(random);
    const gap = opening.corners.TR.z / 2 + 0.5 * random.normal(); // joinery A1, M8
    const strings: Reading = {
      ...{ id: 's', kind: 'twist', first: ['BL', 'TR'], second: ['BR', 'TL'] },
      value: Math.round(2 * gap) / 2,
    };
    const { findings } = adjustSurvey({ seenFrom: 'from aft', readings: [strings] }).adjustment;
    const told = findings.some(({ code }) => code === 'opening-twisted');
    const twist = Math.abs(opening.corners.TR.z);
    if (twist > 4) [count.twisted, count.told] = [count.twisted + 1, count.told + Number(told)];
    if (twist < 2) [count.flat, count.alarms] = [count.flat + 1, count.alarms + Number(told)];
  }
  return (
    `\ntwist by strings: of ${count.twisted} openings twisted by more than 4 mm ${percent(count.told, count.twisted)} told; ` +
    `of ${count.flat} twisted by less than 2 mm ${percent(count.alarms, count.flat)} told all the same.`
  );
}

/** Time of an adjustment, processor time, the median of some runs. */
export function tellSpeed(): readonly string[] {
  const sizes = [
    [50, 200],
    [200, 800],
  ] as const;
  return [
    '\npoints\treadings\tms first time\tms then (processor time)\tms with a slip of 100 mm',
    ...sizes.map(([points, count]) => {
      const readings = drawField(points, count);
      const [first = NaN, ...rest] = Array.from({ length: 6 }, () => timeOf(readings));
      const slip = timeOf(readings.map((r, k) => (k === 37 ? { ...r, value: r.value + 100 } : r)));
      const median = rest.sort((a, b) => a - b)[2] ?? NaN;
      return [points, count, ...[first, median, slip].map((ms) => ms.toFixed(0))].join('\t');
    }),
  ];
}

function timeOf(readings: readonly Reading[]): number {
  const start = process.cpuUsage();
  adjustSurvey({ seenFrom: 'from above', readings });
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

/** A field of points in rows of twenty some 400 apart, with the shortest distances between them. */
function drawField(points: number, count: number): readonly Reading[] {
  const random = makeRandom(3);
  const field = Array.from({ length: points }, (_, k) => ({
    name: `p${k}`,
    x: (k % 20) * 400 + 100 * random.next(),
    y: Math.floor(k / 20) * 400 + 100 * random.next(),
  }));
  const pairs = field.flatMap((a, i) =>
    field.slice(i + 1).map((b) => ({ from: a.name, to: b.name, length: Math.hypot(a.x - b.x, a.y - b.y) })),
  );
  return [...pairs]
    .sort((a, b) => a.length - b.length)
    .slice(0, count)
    .map(({ from, to, length }, k): Reading => {
      return { id: `r${k}`, kind: 'distance', from, to, value: length + 0.5 * random.normal(), sigma: 0.5 };
    });
}
