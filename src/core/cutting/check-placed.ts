import type { Problem } from '#core/problems';
import { checkSlack, roundingAllowance, say, sayRectangle, stop, usableOf } from './check-words.ts';
import type { CuttingJob, CuttingStock, Layout, PlacedPart, Rectangle } from './types.ts';

/** Parts and leftovers of one layout: sizes, turning, trims, keep-outs, room for the saw between neighbours. */
export function checkPlaced(
  job: CuttingJob,
  stock: CuttingStock,
  layout: Layout,
  about: string,
): readonly Problem[] {
  const flat = job.cuts?.style === 'length';
  const parts = layout.placed.map((placed, i) => ({
    name: `${about}.placed[${i}] (${placed.id})`,
    at: rectangleOf(placed, flat),
  }));
  const leftovers = layout.leftovers.map((left, i) => ({
    name: `${about}.leftovers[${i}]`,
    at: rectangleOf(left, flat),
  }));
  const things = [...parts, ...leftovers];
  return [
    ...layout.placed.flatMap((placed, i) => checkSize(job, placed, parts[i]?.name ?? about)),
    ...things.flatMap(({ name, at }) => checkInside(usableOf(job, stock), at, name, flat)),
    ...things.flatMap(({ name, at }) => checkKeepOut(stock, at, name, flat)),
    ...checkApart(things, job.kerf ?? 0, flat),
    ...leftovers.flatMap(({ name, at }) => checkKept(job, at, name, flat)),
  ];
}

interface Thing {
  readonly name: string;
  readonly at: Rectangle;
}

function rectangleOf(
  each: { readonly x: number; readonly y?: number; readonly length: number; readonly width?: number },
  flat: boolean,
): Rectangle {
  return {
    x: each.x,
    y: flat ? 0 : (each.y ?? NaN),
    length: each.length,
    width: flat ? 0 : (each.width ?? NaN),
  };
}

function checkSize(job: CuttingJob, placed: PlacedPart, name: string): readonly Problem[] {
  const part = job.parts.find((each) => each.id === placed.id);
  if (!part) return [stop('plan-part-unknown', name, `The job has no part "${placed.id}".`)];
  const flat = job.cuts?.style === 'length';
  const problems: Problem[] = [];
  if (placed.turned && (flat || !(part.turn ?? job.turn ?? false))) {
    problems.push(
      stop('plan-part-turned', name, `Part "${part.id}" is turned across the grain, which is not allowed.`),
    );
  }
  const wanted = placed.turned ? [part.width, part.length] : [part.length, part.width];
  const got = [placed.length, placed.width];
  for (let i = 0; i < (flat ? 1 : 2); i++) {
    const over = (got[i] ?? NaN) - (wanted[i] ?? NaN);
    if (over >= -checkSlack && over <= roundingAllowance + checkSlack) continue;
    problems.push(
      stop(
        'plan-part-size',
        name,
        `It is ${say(got[i] ?? NaN)} mm along ${i ? 'y' : 'x'} where the part needs ${say(wanted[i] ?? NaN)} mm.`,
      ),
    );
  }
  return problems;
}

function checkInside(usable: Rectangle, at: Rectangle, name: string, flat: boolean): readonly Problem[] {
  const outside = [
    usable.x - at.x,
    at.x + at.length - usable.x - usable.length,
    flat ? 0 : usable.y - at.y,
    flat ? 0 : at.y + at.width - usable.y - usable.width,
  ];
  const most = Math.max(...outside.map((each) => (Number.isFinite(each) ? each : Infinity)));
  return most <= checkSlack
    ? []
    : [
        stop(
          'plan-outside-stock',
          name,
          `${sayRectangle(at)} reaches ${say(most)} mm beyond the usable ${sayRectangle(usable)}.`,
        ),
      ];
}

function checkKeepOut(stock: CuttingStock, at: Rectangle, name: string, flat: boolean): readonly Problem[] {
  return (stock.keepOut ?? []).flatMap((zone) => {
    const x = overlap(at.x, at.length, zone.x, zone.length);
    const y = flat ? Infinity : overlap(at.y, at.width, zone.y, zone.width);
    return x > checkSlack && y > checkSlack
      ? [stop('plan-in-keep-out', name, `${sayRectangle(at)} lies on the keep-out ${sayRectangle(zone)}.`)]
      : [];
  });
}

function overlap(a: number, aSize: number, b: number, bSize: number): number {
  return Math.min(a + aSize, b + bSize) - Math.max(a, b);
}

/** Two things must lie a kerf apart in x or in y. */
function checkApart(things: readonly Thing[], kerf: number, flat: boolean): readonly Problem[] {
  const sorted = [...things].sort((a, b) => a.at.x - b.at.x);
  const problems: Problem[] = [];
  sorted.forEach((a, i) => {
    for (const b of sorted.slice(i + 1)) {
      const gapX = b.at.x - a.at.x - a.at.length;
      if (gapX >= kerf - checkSlack) break;
      const gapY = flat ? -Infinity : Math.max(b.at.y - a.at.y - a.at.width, a.at.y - b.at.y - b.at.width);
      if (gapY >= kerf - checkSlack) continue;
      const gap = Math.max(gapX, gapY);
      const words = gap < 0 ? `overlap by ${say(-gap)} mm` : `lie ${say(gap)} mm apart`;
      problems.push(
        stop('plan-too-close', a.name, `${a.name} and ${b.name} ${words}; the saw needs ${say(kerf)} mm.`),
      );
    }
  });
  return problems;
}

function checkKept(job: CuttingJob, at: Rectangle, name: string, flat: boolean): readonly Problem[] {
  const keep = job.keepLeftover;
  if (!keep) return [stop('plan-leftover-unasked', name, 'The job asks for no leftovers.')];
  const small =
    at.length < keep.minLength - checkSlack || (!flat && at.width < (keep.minWidth ?? 0) - checkSlack);
  return small
    ? [stop('plan-leftover-small', name, `${sayRectangle(at)} is smaller than the leftovers worth keeping.`)]
    : [];
}
