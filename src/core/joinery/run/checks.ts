import { boxOfPoints3, placePoint, type Box3 } from '#core/geometry';
import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { openFindings, type Say } from '../piece-findings.ts';
import type { Part } from '../types.ts';
import { stripHeight } from './cabinets.ts';
import type { Member } from './members.ts';
import { hasStrips, liftOf, type RunPlan } from './plan.ts';

const show = markSize;
const guide = 12; // mm, beside a drawer (joinery B5, common practice)

/** Findings on what the members of a run share (joinery B5, B7.5, B9.3, G16, G18). */
export function checkRun(
  plan: RunPlan,
  members: readonly Member[],
  parts: readonly Part[],
): readonly Problem[] {
  const { say, all } = openFindings();
  checkStrips(say, plan);
  checkInset(say, plan);
  checkBodies(say, plan, members, parts);
  return all();
}

/** Runners, kickers and guides of drawers need room behind stiles and rails. */
function checkStrips(say: Say, { cells, of, choices, context }: RunPlan): void {
  if (!hasStrips(choices)) return;
  const drawers = cells.flatMap((row, r) => row.flatMap((cell, c) => (cell === 'drawer' ? [{ r, c }] : [])));
  if (drawers.length === 0) return;
  const panel = context.materials.find(({ id }) => id === choices.materials.panel);
  const end = panel?.kind === 'sheet' ? panel.thickness : 12;
  const stile = 2 * (end + guide);
  if (choices.columns > 1 && of('ws') < stile)
    say('stop', 'stile-hides-no-guide', {
      message: `Behind a stile of ${show(of('ws'))} two ends of ${show(end)} and two guides of ${guide} find no room; they want ${show(stile)}.`,
      remedy: `Make the stiles ${show(Math.ceil(stile))} or wider.`,
      source: 'joinery B5, B6',
    });
  if (drawers.some(({ r }) => r === 0) && of('wt') < stripHeight + end)
    say('stop', 'top-rail-hides-no-kicker', {
      message: `Behind a top rail of ${show(of('wt'))} a kicker of ${stripHeight} and the rail of the carcase, ${show(end)}, find no room.`,
      remedy: `Make the top rail ${show(Math.ceil(stripHeight + end))} or more.`,
      source: 'joinery B5',
    });
  const stacked = drawers.some(({ r, c }) => cells[r - 1]?.[c] === 'drawer');
  if (!stacked) return;
  const needed = liftOf(choices) + stripHeight;
  const off = of('wm') - needed;
  if (off < 0)
    say('stop', 'rail-hides-no-runner', {
      message: `Runners ${stripHeight} high begin ${show(liftOf(choices))} below the upper edge of the rails; rails of ${show(of('wm'))} leave them hanging ${show(-off)} into the drawer below.`,
      remedy: `Make the rails between ${show(needed)} or more, or the lift smaller.`,
      source: 'joinery B5',
    });
  else if (off > 3)
    say('warn', 'kicker-not-level', {
      message: `The runners of the drawer above keep a drawer down, but their underside is ${show(off)} above that of the rail: it tips by as much.`,
      remedy: `Make the rails between ${show(needed)}, or pack the runners down.`,
      source: 'joinery B5',
    });
}

/** Fronts in the openings end with the frame: what stands behind it begins there. */
function checkInset(say: Say, { choices, of }: RunPlan): void {
  if (choices.fronts !== 'inset' || of('tff') <= of('T')) return;
  say('stop', 'front-thicker-than-frame', {
    message: `Fronts ${show(of('tff'))} thick in openings of a frame ${show(of('T'))} thick reach ${show(of('tff') - of('T'))} into the carcases.`,
    remedy: 'Take a thicker frame or a thinner sheet, or lay the fronts over the frame.',
    source: 'joinery B6',
  });
}

/** Bodies of appliances against everything that stands under the top. */
function checkBodies(
  say: Say,
  { choices, piece }: RunPlan,
  members: readonly Member[],
  parts: readonly Part[],
): void {
  const top = members.find(({ group }) => group === 'top');
  if (!top) return;
  const value = (name: string) => top.built.working.find((step) => step.name === `top_${name}`)?.value;
  const count = Math.floor(choices.cutouts.length / 6);
  const under = parts.filter(({ name }) => !name.startsWith('Top,'));
  for (let n = 1; n <= count; n++) {
    const [mx, my, w, d] = [`mid_x_${n}`, `mid_y_${n}`, `body_w_${n}`, `body_d_${n}`].map(value);
    if (mx === undefined || my === undefined || w === undefined || d === undefined) continue;
    const body: Box3 = {
      min: { x: top.at.x + mx - w / 2, y: top.at.y - choices.bodyDepth, z: top.at.z - my - d / 2 },
      max: { x: top.at.x + mx + w / 2, y: top.at.y, z: top.at.z - my + d / 2 },
    };
    const single = under.filter((part) => part.placements.some((_, i) => meets(body, boxOf(part, i))));
    // a drawer slides: what stands in its empty box is in its way too
    const titles = members
      .filter((one) => one.group === 'drawer' && one.built.parts.length > 0 && meets(body, whereIs(one)))
      .map(({ title }) => title);
    const loose = single.filter(({ name }) => !titles.some((title) => name.startsWith(`${title},`)));
    if (titles.length + loose.length === 0) continue;
    const named = [...titles, ...loose.map(({ id, name }) => `${id} (${name})`)].join(', ');
    say('stop', 'body-meets-part', {
      about: loose[0]?.id ?? piece.letter,
      message: `The body in cut-out ${n} hangs ${show(choices.bodyDepth)} down into ${named}.`,
      remedy: 'Move the cut-out, leave its opening without drawer or shelf, or take a shallower body.',
      source: 'joinery B9.3',
    });
  }
}

function whereIs({ built, at }: Member): Box3 {
  const { min, max } = built.envelope;
  return {
    min: { x: min.x + at.x, y: min.y + at.y, z: min.z + at.z },
    max: { x: max.x + at.x, y: max.y + at.y, z: max.z + at.z },
  };
}

function boxOf(part: Part, i: number): Box3 {
  const at = part.placements[i];
  const { length, width, thickness } = part.finished;
  if (!at) throw new Error('a placement that is not there');
  return boxOfPoints3([
    placePoint(at, { x: 0, y: 0, z: 0 }),
    placePoint(at, { x: length, y: width, z: thickness }),
  ]);
}

function meets(one: Box3, other: Box3): boolean {
  return (['x', 'y', 'z'] as const).every(
    (axis) => one.min[axis] < other.max[axis] - 0.5 && one.max[axis] > other.min[axis] + 0.5,
  );
}
