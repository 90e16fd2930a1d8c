import type { Problem } from '#core/problems';
import { say, stop } from './check-words.ts';
import { finestStep } from './grid.ts';
import type { CuttingJob, CuttingPart, CuttingStock, Rectangle } from './types.ts';

/** The largest size and the largest count a job may name: ten kilometres, a million parts. */
const largestSize = 1e7;
const largestCount = 1e6;

/**
 * Parts planned at once, all counts together: as each sheet and part is kept by itself, many more take longer
 * to start than a time of two seconds allows (measured: 100000 took twice that, and 0.7 GB of memory).
 */
const largestTotal = 3e4;

/** What makes a job senseless, one sentence each; empty when it can be planned. It does not ask whether all parts fit. */
export function checkJob(job: CuttingJob): readonly Problem[] {
  const flat = job.cuts?.style === 'length';
  return [
    ...checkSaw(job),
    ...checkRules(job),
    ...checkIds('stock', job.stock),
    ...checkIds('parts', job.parts),
    ...job.stock.flatMap((stock, i) => checkStock(job, stock, `stock[${i}]`, flat)),
    ...job.parts.flatMap((part, i) => checkPart(part, `parts[${i}]`, flat)),
    ...checkTotalCount(job),
  ];
}

function wrong(about: string, message: string, remedy: string): Problem {
  return stop('job-wrong', about, message, remedy);
}

function checkSaw(job: CuttingJob): readonly Problem[] {
  const problems = checkNotNegative('kerf', job.kerf);
  for (const side of ['left', 'right', 'bottom', 'top'] as const) {
    problems.push(...checkNotNegative(`trim.${side}`, job.trim?.[side]));
  }
  const { minLength, minWidth } = job.keepLeftover ?? {};
  problems.push(...checkNotNegative('keepLeftover.minLength', minLength));
  problems.push(...checkNotNegative('keepLeftover.minWidth', minWidth));
  return problems;
}

function checkNotNegative(about: string, value: number | undefined): Problem[] {
  if (value === undefined || (value >= 0 && value <= largestSize)) return [];
  return [
    wrong(
      about,
      `"${about}" is ${value}; it must be a number of mm from 0 to ${largestSize}.`,
      'Enter 0 or more, in mm.',
    ),
  ];
}

function checkRules(job: CuttingJob): readonly Problem[] {
  const { maxStages, maxRip, maxCut } = job.cuts ?? {};
  const problems: Problem[] = [];
  if (maxStages != null && !(Number.isInteger(maxStages) && maxStages >= 1)) {
    problems.push(
      wrong(
        'cuts.maxStages',
        `"cuts.maxStages" is ${maxStages}; it must be a whole number from 1, or null.`,
        'Enter 2 or 3, or leave it out for any number of stages.',
      ),
    );
  }
  for (const [name, value] of [
    ['maxRip', maxRip],
    ['maxCut', maxCut],
  ] as const) {
    if (value == null || (value > 0 && value <= largestSize)) continue;
    problems.push(
      wrong(
        `cuts.${name}`,
        `"cuts.${name}" is ${value}; it must be more than 0 mm, or null.`,
        'Enter the reach of the saw in mm, or leave it out.',
      ),
    );
  }
  return problems;
}

function checkIds(list: 'stock' | 'parts', items: readonly { readonly id: string }[]): readonly Problem[] {
  const seen = new Map<string, number>();
  const problems: Problem[] =
    items.length === 0
      ? [
          wrong(
            list,
            `The job has no ${list}.`,
            list === 'stock' ? 'Name at least one size to cut from.' : 'Name at least one part.',
          ),
        ]
      : [];
  items.forEach(({ id }, i) => {
    const first = seen.get(id);
    if (first === undefined) seen.set(id, i);
    else
      problems.push(
        wrong(
          `${list}[${i}].id`,
          `The name "${id}" is given to ${list}[${first}] and ${list}[${i}].`,
          'Give each its own name.',
        ),
      );
  });
  return problems;
}

function checkSizeOf(about: string, value: number | undefined, what: string): Problem[] {
  if (value !== undefined && value >= finestStep && value <= largestSize) return [];
  const words = value === undefined ? 'is missing' : `is ${value}`;
  const least = value !== undefined && value > 0 ? `at least ${finestStep}` : 'more than 0';
  return [
    wrong(
      about,
      `The ${what} ${words}; it must be ${least} and at most ${largestSize} mm.`,
      'Measure it and enter it in mm.',
    ),
  ];
}

function checkCountOf(about: string, value: number | null | undefined, least: number): Problem[] {
  if (value == null || (Number.isInteger(value) && value >= least && value <= largestCount)) return [];
  return [
    wrong(
      about,
      `The count is ${value}; it must be a whole number from ${least} to ${largestCount}.`,
      'Enter how many there are.',
    ),
  ];
}

function checkPart(part: CuttingPart, about: string, flat: boolean): readonly Problem[] {
  return [
    ...checkSizeOf(`${about}.length`, part.length, `length of part "${part.id}"`),
    ...(flat ? [] : checkSizeOf(`${about}.width`, part.width, `width of part "${part.id}"`)),
    ...checkCountOf(`${about}.count`, part.count, 0),
  ];
}

function checkStock(job: CuttingJob, stock: CuttingStock, about: string, flat: boolean): readonly Problem[] {
  const problems = [
    ...checkSizeOf(`${about}.length`, stock.length, `length of stock "${stock.id}"`),
    ...(flat ? [] : checkSizeOf(`${about}.width`, stock.width, `width of stock "${stock.id}"`)),
    ...checkCountOf(`${about}.count`, stock.count, 0),
    ...(stock.keepOut ?? []).flatMap((zone, i) => checkZone(zone, `${about}.keepOut[${i}]`, flat)),
  ];
  if (stock.cost !== undefined && !(stock.cost >= 0 && stock.cost <= 1e12)) {
    problems.push(
      wrong(
        `${about}.cost`,
        `The cost of stock "${stock.id}" is ${stock.cost}; it must be 0 or more.`,
        'Enter its price, or leave it out.',
      ),
    );
  }
  if (problems.length === 0) problems.push(...checkTrims(job, stock, about, flat));
  return problems;
}

function checkTrims(job: CuttingJob, stock: CuttingStock, about: string, flat: boolean): readonly Problem[] {
  const { left = 0, right = 0, bottom = 0, top = 0 } = job.trim ?? {};
  const lengthLeft = stock.length - left - right;
  const widthLeft = flat ? Infinity : (stock.width ?? 0) - bottom - top;
  if (lengthLeft > 0 && widthLeft > 0) return [];
  return [
    wrong(
      about,
      `The trims leave nothing of stock "${stock.id}": ${say(lengthLeft)} mm of ${say(stock.length)} mm along${flat ? '' : `, ${say(widthLeft)} mm of ${say(stock.width ?? 0)} mm across`}.`,
      'Enter smaller trims, or leave this stock out.',
    ),
  ];
}

function checkZone(zone: Rectangle, about: string, flat: boolean): readonly Problem[] {
  const sizes = flat ? [zone.x, zone.length] : [zone.x, zone.y, zone.length, zone.width];
  const sound =
    sizes.every((size) => Math.abs(size) <= largestSize) && zone.length > 0 && (flat || zone.width > 0);
  return sound
    ? []
    : [
        wrong(
          about,
          `The keep-out ${JSON.stringify(zone)} is no rectangle with a size.`,
          'Enter x, y, length and width in mm; the sizes more than 0.',
        ),
      ];
}

function checkTotalCount(job: CuttingJob): readonly Problem[] {
  const total = job.parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
  if (total <= largestTotal) return [];
  return [
    wrong(
      'parts',
      `The job asks for ${total} parts in all; at most ${largestTotal} can be planned at once.`,
      `Split the job into ${Math.ceil(total / largestTotal)}, or plan one of several equal lots and cut its plan as often.`,
    ),
  ];
}
