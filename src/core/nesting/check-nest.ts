import type { Problem } from '#core/problems';
import { checkNestTotals } from './check-nest-totals.ts';
import { gapFault, makeBody } from './check-distance.ts';
import type { Body } from './check-distance.ts';
import type { Corner, NestJob, NestPart, NestPlacement, NestPlan, NestSheet } from './types.ts';

/** Distances and sizes may fall short by this, mm: a hundredth of what a cutter can hold, far above the arithmetic's own fault. */
const nestSlack = 1e-5;

/**
 * Everything wrong with a plan for a job; empty when it can be cut. It shares nothing with the search: it knows the job,
 * the plan and the contract only.
 */
export function checkNest(job: NestJob, plan: NestPlan): readonly Problem[] {
  const problems = [...checkNestTotals(job, plan)];
  const bodies = plan.placements.map((placement, index): Placed | null => {
    const part = job.parts.find((each) => each.id === placement.id);
    const about = `placements[${index}]`;
    const faults = checkPlacement(job, plan, placement, about);
    problems.push(...faults);
    return part && faults.length === 0 ? { body: layBody(part, placement), placement, about } : null;
  });
  const placed = bodies.filter((each) => each !== null);
  for (const each of placed) problems.push(...checkEdges(job, plan, each), ...checkKeepOuts(job, plan, each));
  for (let i = 0; i < placed.length; i++) {
    for (let j = i + 1; j < placed.length; j++) problems.push(...checkPair(job, placed[i]!, placed[j]!));
  }
  return problems;
}

interface Placed {
  readonly body: Body;
  readonly placement: NestPlacement;
  readonly about: string;
}

function stop(code: string, about: string, message: string): Problem {
  return { severity: 'stop', code, about, message };
}

function say(value: number): string {
  return String(Math.round(value * 1e6) / 1e6);
}

function checkPlacement(
  job: NestJob,
  plan: NestPlan,
  placement: NestPlacement,
  about: string,
): readonly Problem[] {
  const part = job.parts.find((each) => each.id === placement.id);
  if (!part) return [stop('nest-part-unknown', about, `"${placement.id}" is no part of the job.`)];
  const problems: Problem[] = [];
  if (!(part.angles ?? [0]).includes(placement.angle))
    problems.push(
      stop(
        'nest-angle-forbidden',
        about,
        `Part "${part.id}" lies at ${placement.angle}°; it may lie at ${(part.angles ?? [0]).join('°, ')}°.`,
      ),
    );
  if (!plan.sheets[placement.sheet])
    problems.push(
      stop(
        'nest-sheet-unknown',
        about,
        `Part "${part.id}" lies on sheet ${placement.sheet}, which is not in the plan.`,
      ),
    );
  if (![placement.x, placement.y].every(Number.isFinite))
    problems.push(
      stop('nest-place-unknown', about, `Part "${part.id}" lies at (${placement.x}, ${placement.y}).`),
    );
  return problems;
}

/** The part where it lies. */
function layBody(part: NestPart, { angle, x, y }: NestPlacement): Body {
  const quarters = angle / 90;
  const radians = (angle * Math.PI) / 180;
  const wholeTurns = ((quarters % 4) + 4) % 4;
  const cos = Number.isInteger(quarters) ? [1, 0, -1, 0][wholeTurns]! : Math.cos(radians);
  const sin = Number.isInteger(quarters) ? [0, 1, 0, -1][wholeTurns]! : Math.sin(radians);
  const lay = ([u, v]: Corner): Corner => [u * cos - v * sin + x, u * sin + v * cos + y];
  return makeBody([part.outline, ...(part.holes ?? [])].map((ring) => ring.map(lay)));
}

function checkEdges(job: NestJob, plan: NestPlan, { body, placement, about }: Placed): readonly Problem[] {
  const stock = job.stock[0];
  const strip = stock && 'strip' in stock ? stock.strip : null;
  const sheet = sheetOf(job, plan, placement.sheet);
  const length = strip === null ? (sheet?.length ?? 0) : (plan.length ?? 0);
  const width = strip ?? sheet?.width ?? 0;
  const margin = strip === null ? (job.margin ?? 0) : 0;
  const [minX, minY, maxX, maxY] = body.box;
  const over = Math.max(margin - minX, margin - minY, maxX - (length - margin), maxY - (width - margin));
  if (over <= nestSlack) return [];
  return [
    stop(
      'nest-over-edge',
      about,
      `Part "${placement.id}" goes ${say(over)} mm over the ${margin > 0 ? `margin of ${margin} mm` : 'edge'} of sheet ${placement.sheet}.`,
    ),
  ];
}

function sheetOf(job: NestJob, plan: NestPlan, sheet: number): NestSheet | undefined {
  return job.stock.find(
    (each): each is NestSheet => !('strip' in each) && each.id === plan.sheets[sheet]?.stock,
  );
}

function checkKeepOuts(job: NestJob, plan: NestPlan, { body, placement, about }: Placed): readonly Problem[] {
  const zones = sheetOf(job, plan, placement.sheet)?.keepOut ?? [];
  return zones.flatMap(({ x, y, length, width }) => {
    const corners: Corner[] = [
      [x, y],
      [x + length, y],
      [x + length, y + width],
      [x, y + width],
    ];
    const zone = makeBody([corners]);
    const fault = gapFault(body, zone, job.gap ?? 0, nestSlack);
    if (fault === null) return [];
    return [
      stop(
        'nest-keep-out',
        about,
        `Part "${placement.id}" ${fault} the keep-out at (${say(x)}, ${say(y)}) of sheet ${placement.sheet}.`,
      ),
    ];
  });
}

function checkPair(job: NestJob, a: Placed, b: Placed): readonly Problem[] {
  if (a.placement.sheet !== b.placement.sheet) return [];
  const fault = gapFault(a.body, b.body, job.gap ?? 0, nestSlack);
  if (fault === null) return [];
  return [
    stop(
      'nest-gap',
      a.about,
      `Part "${a.placement.id}" ${fault} part "${b.placement.id}" (${b.about}) on sheet ${a.placement.sheet}.`,
    ),
  ];
}
