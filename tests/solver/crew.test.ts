import { describe, expect, test } from 'vitest';
import { checkPlan, startCuttingRun } from '#core/cutting';
import type { CuttingJob, CuttingNews, CuttingPlan } from '#core/cutting';
import { checkNest, startNestingRun } from '#core/nesting';
import type { NestJob, NestNews, NestPlan } from '#core/nesting';
import { makeLocalHand, makeLocalMate, runCrew } from '#solver/crew';
import type { Hand, Mate, News } from '#solver/crew';
import { loadGlpk } from '#solver/glpk';
import { runCli } from '../support/run-cli.ts';

const solveLp = await loadGlpk();
const clock = () => performance.now();

/** Parts of many sizes on sheets they fill badly: not proven within a moment. */
const job: CuttingJob = {
  kerf: 3,
  turn: true,
  stock: [
    { id: 'large', length: 2440, width: 1220, cost: 61 },
    { id: 'small', length: 1520, width: 1220, cost: 39 },
  ],
  parts: Array.from({ length: 34 }, (_, i) => ({
    id: `p${i}`,
    length: 263 + ((i * 397) % 911),
    width: 151 + ((i * 211) % 463),
  })),
};

interface Wish {
  readonly work: number;
  readonly seed?: number;
}

function startRun({ work, seed = 1 }: Wish, isMate: boolean) {
  return startCuttingRun(job, { solveLp, clock, work, seed, isMate });
}

/** Both hands in this thread. */
function cutInOneThread(wish: Wish, hands: 1 | 2): Promise<CuttingPlan> {
  return runCrew<CuttingNews, CuttingPlan>({
    lead: makeLocalHand(startRun(wish, false)),
    callMate: hands === 1 ? null : () => makeLocalMate(startRun(wish, true)),
    work: wish.work,
  });
}

const untimed = ({ seconds, ...plan }: CuttingPlan): unknown => ({ ...plan, hasSeconds: seconds >= 0 });

describe('two runs of one job', () => {
  test('what one has found the other goes on from, and the bound with it', () => {
    const rich = startRun({ work: 4500 }, false);
    const told = rich.work({});
    const poor = startRun({ work: 100 }, true);
    poor.work({ steps: 0 });
    const heard = poor.work({ heard: structuredClone(told), steps: 0 });
    expect(heard.cost).toBe(Math.min(heard.cost, told.cost));
    expect(heard.bound).toBeGreaterThanOrEqual(told.bound);
    const plan = poor.finish();
    expect(plan.cost).toBeLessThanOrEqual(told.cost);
    expect(checkPlan(job, plan)).toEqual([]);
  });

  test('a load is told once, and not back to where it came from', () => {
    const rich = startRun({ work: 3000 }, false);
    const told = rich.work({});
    expect(told.found).not.toBeNull();
    expect(rich.work({ steps: 0 }).found).toBeNull();
    const poor = startRun({ work: 100 }, true);
    const echo = poor.work({ heard: told, steps: 0 });
    expect(echo.cost < told.cost || echo.found === null).toBe(true);
  });

  test('a plan without a tree of cuts is told too', () => {
    const freely: CuttingJob = {
      cuts: { style: 'free' },
      stock: [{ id: 's', length: 5, width: 5, cost: 1 }],
      // the pinwheel: four 3 x 2 round one 1 x 1, which no saw cuts from edge to edge
      parts: [
        { id: 'a', length: 3, width: 2, count: 4, turn: true },
        { id: 'b', length: 1, width: 1 },
      ],
    };
    const tools = { solveLp, clock, work: 20_000 };
    const rich = startCuttingRun(freely, tools);
    const told = rich.work({});
    expect(told).toMatchObject({ cost: 1, state: 'settled' });
    const poor = startCuttingRun(freely, { ...tools, work: 1, seed: 9 });
    poor.work({ heard: structuredClone(told), steps: 0 });
    const plan = poor.finish();
    expect(plan).toMatchObject({ cost: 1, proven: true });
    expect(checkPlan(freely, plan)).toEqual([]);
  });
});

describe('a crew', () => {
  test('the same seed and work give the same plan, in one thread as in two', async () => {
    const wish = { work: 4500, seed: 5 };
    const once = await cutInOneThread(wish, 2);
    expect(untimed(await cutInOneThread(wish, 2))).toEqual(untimed(once));
    expect(checkPlan(job, once)).toEqual([]);
    const threads = ['--work', '4500', '--seed', '5', '--workers', '2'];
    const run = runCli(['cut', '-', '--json', ...threads], { input: JSON.stringify(job) });
    expect(untimed(JSON.parse(run.stdout) as CuttingPlan)).toEqual(untimed(once));
  });

  test('by the clock it ends in time with a plan the checker passes', () => {
    const run = runCli(['cut', '-', '--json', '--seconds', '3', '--workers', '2'], {
      input: JSON.stringify(job),
    });
    expect(run.code).toBe(0);
    const plan = JSON.parse(run.stdout) as CuttingPlan;
    expect(checkPlan(job, plan)).toEqual([]);
    expect(plan.proven || plan.seconds < 3.3).toBe(true);
  });
});

const triangle = [
  [0, 0],
  [310, 0],
  [0, 190],
] as const;
const hook = [
  [0, 0],
  [260, 0],
  [260, 70],
  [80, 70],
  [80, 220],
  [0, 220],
] as const;
const shapes = {
  gap: 5,
  parts: [
    { id: 'a', outline: triangle, count: 7, angles: [0, 90, 180, 270] },
    { id: 'b', outline: hook, count: 7, angles: [0, 90, 180, 270] },
  ],
};
const nestJobs: readonly (readonly [string, NestJob])[] = [
  ['a strip', { ...shapes, stock: [{ strip: 700 }] }],
  ['sheets', { ...shapes, stock: [{ id: 's', length: 640, width: 430 }] }],
];

describe('shapes laid by two', () => {
  const tools = { clock, seed: 3 };
  const timeless = ({ seconds, ...plan }: NestPlan): unknown => ({ ...plan, hasSeconds: seconds >= 0 });

  function nestInOneThread(job: NestJob, wish: Wish, hands: 1 | 2): Promise<NestPlan> {
    const mate = { ...tools, ...wish, isMate: true };
    return runCrew<NestNews, NestPlan>({
      lead: makeLocalHand(startNestingRun(job, { ...tools, ...wish })),
      callMate: hands === 1 ? null : () => makeLocalMate(startNestingRun(job, mate)),
      work: wish.work,
    });
  }

  test.each(nestJobs)('on %s one goes on from what the other has found', (_, job) => {
    const rich = startNestingRun(job, { ...tools, work: 5000 });
    const told = rich.work({});
    const best = rich.finish();
    const poor = startNestingRun(job, { ...tools, work: 100, isMate: true });
    poor.work({ heard: structuredClone(told), steps: 0 });
    const plan = poor.finish();
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan.cost).toBeLessThanOrEqual(best.cost + 1e-9);
    // and it goes on in turns
    poor.work({ steps: 50 });
    poor.work({ steps: 50 });
    expect(checkNest(job, poor.finish())).toEqual([]);
  });

  test.each(nestJobs)(
    'on %s the same seed and work give the same plan, in one thread as in two',
    async (_, job) => {
      const once = await nestInOneThread(job, { work: 6000, seed: 3 }, 2);
      expect(checkNest(job, once)).toEqual([]);
      const run = runCli(['nest', '-', '--json', '--work', '6000', '--seed', '3', '--workers', '2'], {
        input: JSON.stringify(job),
      });
      expect(timeless(JSON.parse(run.stdout) as NestPlan)).toEqual(timeless(once));
    },
  );

  test.each(nestJobs)('on %s the second hand has a part in the answer', async (_, job) => {
    expect(await hasPart((seed, hands) => nestInOneThread(job, { work: 5000, seed }, hands), timeless)).toBe(
      true,
    );
  });

  test('turns change nothing: a run in many gives what a run in one gives', () => {
    for (const [, job] of nestJobs) {
      const whole = startNestingRun(job, { ...tools, work: 3000 });
      whole.work({});
      const turned = startNestingRun(job, { ...tools, work: 3000 });
      while (turned.work({ steps: 300 }).state === 'working');
      expect(timeless(turned.finish())).toEqual(timeless(whole.finish()));
    }
  });
});

/** Whether for one of some seeds two hands give another answer than one. */
async function hasPart<Plan>(
  plan: (seed: number, hands: 1 | 2) => Promise<Plan>,
  bare: (plan: Plan) => unknown,
): Promise<boolean> {
  for (let seed = 1; seed <= 8; seed++) {
    const [one, two] = [await plan(seed, 1), await plan(seed, 2)];
    if (JSON.stringify(bare(one)) !== JSON.stringify(bare(two))) return true;
  }
  return false;
}

interface Letter extends News {
  readonly found: number | null;
}

/** A hand that does as it is told: one answer a turn, the last for ever. */
function follow(script: readonly Letter[]): {
  readonly hand: Hand<Letter, string>;
  readonly heard: unknown[];
} {
  const heard: unknown[] = [];
  let at = 0;
  const work: Hand<Letter, string>['work'] = (turn) => {
    heard.push(turn.heard?.found ?? null);
    return Promise.resolve(script[Math.min(at++, script.length - 1)] as Letter);
  };
  return { hand: { work, finish: () => Promise.resolve('done') }, heard };
}

function mateOf(hand: Hand<Letter, string>): { readonly mate: Mate<Letter>; readonly log: string[] } {
  const log: string[] = [];
  return { mate: { work: hand.work, dismiss: () => void log.push('dismissed') }, log };
}

describe('how two hands go along', () => {
  const working: Letter = { state: 'working', found: null };
  const idle: Letter = { state: 'idle', found: null };

  test('a job settled in the first turn calls no second hand', async () => {
    const { hand } = follow([{ state: 'settled', found: 1 }]);
    const callMate = () => {
      throw new Error('called');
    };
    expect(await runCrew({ lead: hand, callMate, work: null })).toBe('done');
    expect(await runCrew({ lead: hand, callMate, work: 100_000 })).toBe('done');
  });

  test.each([null, 100_000])('the end comes when neither sees a way to more (work %s)', async (work) => {
    const lead = follow([working, idle]);
    const second = follow([{ state: 'working', found: 7 }, idle]);
    const { mate, log } = mateOf(second.hand);
    expect(await runCrew({ lead: lead.hand, callMate: () => mate, work })).toBe('done');
    expect(lead.heard).toContain(7);
    expect(log).toEqual(['dismissed']);
  });

  test.each([null, 100_000])('what the second hand settles ends the run (work %s)', async (work) => {
    const lead = follow([working]);
    const second = follow([{ state: 'settled', found: 3 }]);
    const settling: Hand<Letter, string> = {
      ...lead.hand,
      work: async (turn) =>
        turn.heard?.found === 3 ? { state: 'settled', found: null } : lead.hand.work(turn),
    };
    const { mate, log } = mateOf(second.hand);
    expect(await runCrew({ lead: settling, callMate: () => mate, work })).toBe('done');
    expect(log).toEqual(['dismissed']);
  });

  test('by the clock a second hand that fails is missed, no more', async () => {
    const lead = follow([working, working, idle]);
    const mate: Mate<Letter> = {
      work: () => Promise.reject(new Error('out of memory')),
      dismiss: () => undefined,
    };
    expect(await runCrew({ lead: lead.hand, callMate: () => mate, work: null })).toBe('done');
  });

  test('in a run by work a second hand that fails is told: the answer would be another', async () => {
    const lead = follow([working, working, idle]);
    const mate: Mate<Letter> = {
      work: () => Promise.reject(new Error('out of memory')),
      dismiss: () => undefined,
    };
    await expect(runCrew({ lead: lead.hand, callMate: () => mate, work: 100_000 })).rejects.toThrow(
      'out of memory',
    );
  });
});
