import type { CuttingJob } from './types.ts';

/** The finest step the search works on, mm (DESIGN section 7). */
export const finestStep = 0.01;
/** Slack when a size is taken to the grid: far below what a file's digits can mean. */
const gridSlack = 1e-6;

/** Size in whole units, never less than it is. */
export function gridUp(value: number, unit: number): number {
  return Math.ceil(value / unit - gridSlack);
}

/** Size in whole units, never more than it is. */
export function gridDown(value: number, unit: number): number {
  return Math.floor(value / unit + gridSlack);
}

/** The coarsest step, mm, of which every size of the job is a multiple, and whether a size was finer than 0.01 mm. */
export function findGrid(job: CuttingJob): { readonly unit: number; readonly rounded: boolean } {
  const sizes = collectSizes(job).filter((size) => size > 0);
  let divisor = 0;
  let rounded = false;
  for (const size of sizes) {
    const steps = Math.round(size / finestStep);
    if (Math.abs(size / finestStep - steps) > gridSlack * Math.max(1, steps)) rounded = true;
    let [a, b] = [divisor, steps];
    while (b > 0) [a, b] = [b, a % b];
    divisor = a;
  }
  return rounded || divisor === 0 ? { unit: finestStep, rounded } : { unit: fromSteps(divisor), rounded };
}

/** Steps of 0.01 mm as mm, without the tail a product with 0.01 would leave. */
function fromSteps(steps: number): number {
  return steps / (1 / finestStep);
}

function collectSizes(job: CuttingJob): readonly number[] {
  const flat = job.cuts?.style === 'length';
  const trim = job.trim ?? {};
  const sizes = [job.kerf ?? 0, trim.left ?? 0, trim.right ?? 0];
  if (!flat) sizes.push(trim.bottom ?? 0, trim.top ?? 0);
  for (const each of [...job.stock, ...job.parts]) {
    sizes.push(each.length);
    if (!flat) sizes.push(each.width ?? 0);
  }
  return sizes;
}
