import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { solveCutting, type CuttingJob, type CuttingPlan } from '#core/cutting';
import { planEverything, understandProject } from '#core/pipeline';
import { readProject } from '#formats/json';
import { loadGlpk } from '#solver/glpk';

const read = readProject(readFileSync('static/projects/curlew.json', 'utf8'));
if (!read.ok) throw new Error('the demo cannot be read');
const { groups, ...rest } = understandProject(read.value);
const understanding = { ...rest, groups };
const solveLp = await loadGlpk();

const partsOf = (job: CuttingJob) => job.parts.reduce((sum, { count = 1 }) => sum + count, 0);
const nest = () => Promise.reject(new Error('nothing is routed'));

interface Call {
  readonly job: CuttingJob;
  readonly seconds: number | undefined;
  readonly start: CuttingPlan | undefined;
}

/** Cuts by work, on a clock that runs only as long as each job is said to take; proven where it is said to be. */
function makeCut(takes: (call: Call) => { readonly seconds: number; readonly proven: boolean }) {
  const calls: Call[] = [];
  let now = 0;
  const cut = (job: CuttingJob, seconds: number | undefined, start?: CuttingPlan): Promise<CuttingPlan> => {
    const call = { job, seconds, start };
    calls.push(call);
    const took = takes(call);
    now += took.seconds * 1000;
    const plan = solveCutting(job, { solveLp, clock: () => 0, work: 20, start });
    return Promise.resolve({
      ...plan,
      bound: took.proven ? plan.cost : plan.cost / 2,
      proven: took.proven,
    });
  };
  return { calls, cut, clock: () => now };
}

describe('the time of a run is shared among the groups', () => {
  test('small jobs come first, and what they leave goes to the large ones', async () => {
    // the small ones are proven in no time, the largest takes all it gets
    const largest = Math.max(...groups.map(({ job }) => partsOf(job)));
    const { calls, ...tools } = makeCut(({ job, seconds = 0 }) =>
      partsOf(job) < largest ? { seconds: 0, proven: true } : { seconds, proven: false },
    );
    await planEverything(understanding, { ...tools, nest, seconds: 4 });
    expect(calls).toHaveLength(groups.length);
    expect(calls.map(({ job }) => partsOf(job))).toEqual(
      groups.map(({ job }) => partsOf(job)).sort((a, b) => a - b),
    );
    expect(calls.at(-1)?.seconds).toBeCloseTo(4, 9);
  });

  test('few parts get a quarter of an even share at least', async () => {
    const { calls, ...tools } = makeCut(({ seconds = 0 }) => ({ seconds, proven: false }));
    await planEverything(understanding, { ...tools, nest, seconds: 6 });
    for (const { seconds } of calls) expect(seconds).toBeGreaterThan(6 / groups.length / 4);
    expect(tools.clock()).toBeLessThanOrEqual(6000 + 1e-6);
  });

  test('what is left at the end goes to the groups not proven yet, from the plans they have', async () => {
    // the two smallest need more than their first share; all others are proven in no time
    const small = groups.map(({ job }) => partsOf(job)).sort((a, b) => a - b)[1] ?? 0;
    const { calls, ...tools } = makeCut(({ job, seconds = 0, start }) =>
      partsOf(job) <= small
        ? { seconds: start ? seconds / 2 : seconds, proven: start !== undefined }
        : { seconds: 0, proven: true },
    );
    const { planned } = await planEverything(understanding, { ...tools, nest, seconds: 4 });
    const again = calls.slice(groups.length);
    expect(again.map(({ job }) => partsOf(job) <= small)).toEqual([true, true]);
    for (const call of again) expect(call.start?.layouts.length).toBeGreaterThan(0);
    expect(planned.every(({ plan }) => plan.proven)).toBe(true);
    expect(planned.map(({ group }) => group.id)).toEqual(groups.map(({ id }) => id));
  });

  test('a run by work asks for each plan once and for no seconds', async () => {
    const { calls, ...tools } = makeCut(() => ({ seconds: 0, proven: false }));
    await planEverything(understanding, { ...tools, nest, seconds: 4, isByWork: true });
    expect(calls).toHaveLength(groups.length);
    expect(calls.every(({ seconds, start }) => seconds === undefined && start === undefined)).toBe(true);
  });
});
