import type { Problem } from '#core/problems';
import { checkFigure } from './check-figure.ts';
import type { KeepOut, NestJob, NestPart, NestSheet, NestStock } from './types.ts';

/** The largest size, mm, and the most parts a job may name: ten kilometres, five thousand parts. */
const largestSize = 1e7;
const largestCount = 5000;
const mostAngles = 360;
const mostCorners = 100_000;

/** What makes a job senseless, one sentence each; empty when it can be planned. It does not ask whether all parts fit. */
export function checkNestJob(job: NestJob): readonly Problem[] {
  return [
    ...checkNotNegative('gap', job.gap),
    ...checkNotNegative('margin', job.margin),
    ...checkStockList(job),
    ...checkPartList(job),
    ...job.parts.flatMap((part, i) => checkPart(part, `parts[${i}]`)),
  ];
}

export function isStrip(stock: NestStock): stock is Extract<NestStock, { readonly strip: number }> {
  return 'strip' in stock;
}

export function wrong(about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code: 'job-wrong', about, message, remedy };
}

function checkNotNegative(about: string, value: number | undefined): readonly Problem[] {
  if (value === undefined || (value >= 0 && value <= largestSize)) return [];
  return [
    wrong(
      about,
      `"${about}" is ${value}; it must be a number of mm from 0 to ${largestSize}.`,
      'Enter 0 or more, in mm.',
    ),
  ];
}

function checkSize(about: string, value: number, what: string): readonly Problem[] {
  if (value > 0 && value <= largestSize) return [];
  return [
    wrong(
      about,
      `The ${what} is ${value}; it must be more than 0 and at most ${largestSize} mm.`,
      'Measure it and enter it in mm.',
    ),
  ];
}

function checkCount(about: string, value: number | null | undefined): readonly Problem[] {
  if (value == null || (Number.isInteger(value) && value >= 0 && value <= 1e6)) return [];
  return [
    wrong(about, `The count is ${value}; it must be a whole number from 0.`, 'Enter how many there are.'),
  ];
}

function checkStockList(job: NestJob): readonly Problem[] {
  const { stock } = job;
  if (stock.length === 0)
    return [wrong('stock', 'The job has no stock.', 'Name a sheet size, or one strip.')];
  const strips = stock.filter(isStrip);
  const first = strips[0];
  if (first && stock.length > 1)
    return [
      wrong(
        'stock',
        `A strip is the only stock of its job; here are ${strips.length} of them among ${stock.length}.`,
        'Name one strip, or sheets only.',
      ),
    ];
  if (first) return checkSize('stock[0].strip', first.strip, 'width of the strip');
  const sheets = stock as readonly NestSheet[];
  return [
    ...checkIds('stock', sheets),
    ...sheets.flatMap((sheet, i) => checkSheet(job, sheet, `stock[${i}]`)),
  ];
}

function checkIds(list: string, items: readonly { readonly id: string }[]): readonly Problem[] {
  const seen = new Map<string, number>();
  return items.flatMap(({ id }, i) => {
    const first = seen.get(id);
    if (first === undefined) seen.set(id, i);
    if (first === undefined) return [];
    return [
      wrong(
        `${list}[${i}].id`,
        `The name "${id}" is given to ${list}[${first}] and ${list}[${i}].`,
        'Give each its own name.',
      ),
    ];
  });
}

function checkSheet(job: NestJob, sheet: NestSheet, about: string): readonly Problem[] {
  const problems = [
    ...checkSize(`${about}.length`, sheet.length, `length of stock "${sheet.id}"`),
    ...checkSize(`${about}.width`, sheet.width, `width of stock "${sheet.id}"`),
    ...checkCount(`${about}.count`, sheet.count),
    ...(sheet.keepOut ?? []).flatMap((zone, i) => checkZone(zone, `${about}.keepOut[${i}]`)),
  ];
  if (sheet.cost !== undefined && !(sheet.cost >= 0 && sheet.cost <= 1e12))
    problems.push(
      wrong(
        `${about}.cost`,
        `The cost of stock "${sheet.id}" is ${sheet.cost}; it must be 0 or more.`,
        'Enter its price, or leave it out.',
      ),
    );
  const margin = job.margin ?? 0;
  if (problems.length === 0 && !(2 * margin < Math.min(sheet.length, sheet.width)))
    problems.push(
      wrong(
        about,
        `A margin of ${margin} mm all round leaves nothing of stock "${sheet.id}", ${sheet.length} x ${sheet.width} mm.`,
        'Enter a smaller margin, or leave this stock out.',
      ),
    );
  return problems;
}

function checkZone(zone: KeepOut, about: string): readonly Problem[] {
  const { x, y, length, width } = zone;
  const isSound =
    [x, y, length, width].every((size) => Math.abs(size) <= largestSize) && length > 0 && width > 0;
  if (isSound) return [];
  return [
    wrong(
      about,
      `The keep-out ${JSON.stringify(zone)} is no rectangle with a size.`,
      'Enter x, y, length and width in mm; the sizes more than 0.',
    ),
  ];
}

function checkPartList(job: NestJob): readonly Problem[] {
  if (job.parts.length === 0) return [wrong('parts', 'The job has no parts.', 'Name at least one part.')];
  const total = job.parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
  const tooMany =
    total > largestCount
      ? [
          wrong(
            'parts',
            `The job asks for ${total} parts; at most ${largestCount} can be laid at once.`,
            'Split the job.',
          ),
        ]
      : [];
  const corners = job.parts
    .flatMap((part) => [part.outline, ...(part.holes ?? [])])
    .reduce((sum, ring) => sum + ring.length, 0);
  const tooFine =
    corners > mostCorners
      ? [
          wrong(
            'parts',
            `The outlines have ${corners} corners together; at most ${mostCorners} can be handled.`,
            'Draw their curves with longer chords, or split the job.',
          ),
        ]
      : [];
  return [...checkIds('parts', job.parts), ...tooMany, ...tooFine];
}

function checkPart(part: NestPart, about: string): readonly Problem[] {
  const angles = part.angles ?? [0];
  const isSound = angles.length > 0 && angles.length <= mostAngles && angles.every(Number.isFinite);
  const wrongAngles = isSound
    ? []
    : [
        wrong(
          `${about}.angles`,
          `Part "${part.id}" has ${angles.length} angles to lie at; 1 to ${mostAngles} are possible, each a number of degrees.`,
          'Leave them out where it must not turn, or enter as [0, 180].',
        ),
      ];
  return [...checkCount(`${about}.count`, part.count), ...wrongAngles, ...checkFigure(part, about)];
}
