import type { Problem } from '#core/problems';
import type { CuttingJob, CuttingStock, Rectangle } from './types.ts';

/** Sizes closer than this are equal to the checker, mm: a tenth of the finest step a plan is made on. */
export const checkSlack = 0.001;
/** A part may be cut larger than wanted by the finest step, mm, because finer sizes go up. */
export const roundingAllowance = 0.01;

export function stop(code: string, about: string, message: string, remedy?: string): Problem {
  return remedy
    ? { severity: 'stop', code, about, message, remedy }
    : { severity: 'stop', code, about, message };
}

/** A number as a person writes it, mm. */
export function say(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

export function sayRectangle(r: Rectangle): string {
  return `${say(r.length)} × ${say(r.width)} at (${say(r.x)}, ${say(r.y)})`;
}

/** The stock inside its trims. In one dimension y is 0 and the width nothing. */
export function usableOf(job: CuttingJob, stock: CuttingStock): Rectangle {
  const trim = job.trim ?? {};
  const x = trim.left ?? 0;
  const length = stock.length - x - (trim.right ?? 0);
  if (job.cuts?.style === 'length') return { x, y: 0, length, width: 0 };
  const y = trim.bottom ?? 0;
  return { x, y, length, width: (stock.width ?? 0) - y - (trim.top ?? 0) };
}
