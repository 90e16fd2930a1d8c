import type { Problem } from '#core/problems';
import { checkSlack, roundingAllowance, say, sayRectangle, stop, usableOf } from './check-words.ts';
import type { CutNode, CuttingJob, CuttingStock, Layout, Rectangle } from './types.ts';

/** Replays the tree of cuts of one layout on its stock. `free` and `length` layouts have none. */
export function checkCuts(
  job: CuttingJob,
  stock: CuttingStock,
  layout: Layout,
  about: string,
): readonly Problem[] {
  const sawn = (job.cuts?.style ?? 'guillotine') === 'guillotine';
  if (!sawn) {
    return layout.cuts === null
      ? []
      : [stop('plan-cuts', `${about}.cuts`, 'Only a guillotine layout has a tree of cuts.')];
  }
  if (!layout.cuts) return [stop('plan-cuts', `${about}.cuts`, 'The layout has no tree of cuts.')];
  const replay: Replay = {
    job,
    kerf: job.kerf ?? 0,
    slack: slackOf(job),
    parts: [],
    leftovers: [],
    problems: [],
  };
  const usable = usableOf(job, stock);
  if (!isSame(layout.cuts, usable, replay.slack)) {
    report(
      replay,
      `${about}.cuts`,
      'plan-cuts-root',
      `The first rectangle is ${sayRectangle(layout.cuts)}, the usable stock ${sayRectangle(usable)}.`,
    );
  }
  checkFirst(replay, layout.cuts, `${about}.cuts`);
  walk(replay, layout.cuts, `${about}.cuts`, { stage: 0, cut: null });
  checkLeaves(replay, layout, about);
  return replay.problems;
}

interface Replay {
  readonly job: CuttingJob;
  readonly kerf: number;
  readonly slack: number;
  readonly parts: { readonly id: string; readonly at: Rectangle }[];
  readonly leftovers: Rectangle[];
  readonly problems: Problem[];
}

/** Where in the stages a rectangle was cut free, and by which direction. */
interface Before {
  readonly stage: number;
  readonly cut: 'along' | 'across' | null;
}

function report(replay: Replay, about: string, code: string, message: string): void {
  replay.problems.push(stop(code, about, message));
}

/** A kerf or trim given finer than 0.01 mm goes up to it, so the tree may be off by as much. */
function slackOf(job: CuttingJob): number {
  const { left = 0, right = 0, bottom = 0, top = 0 } = job.trim ?? {};
  const isFine = (size: number) => Math.abs(size * 100 - Math.round(size * 100)) > 1e-6;
  const fine = [
    job.kerf ?? 0,
    left,
    right,
    bottom,
    top,
    ...job.stock.flatMap((s) => [s.length, s.width ?? 0]),
  ].some(isFine);
  return fine ? 2 * roundingAllowance : checkSlack;
}

function isSame(a: Rectangle, b: Rectangle, slack: number): boolean {
  return (
    Math.abs(a.x - b.x) <= slack &&
    Math.abs(a.y - b.y) <= slack &&
    Math.abs(a.length - b.length) <= slack &&
    Math.abs(a.width - b.width) <= slack
  );
}

function checkFirst(replay: Replay, root: CutNode, path: string): void {
  const first = replay.job.cuts?.firstCut ?? 'either';
  if (first === 'either' || !('cut' in root) || root.cut === first) return;
  report(replay, path, 'plan-first-cut', `The first cut goes ${root.cut}; the job wants ${first}.`);
}

function walk(replay: Replay, node: CutNode, path: string, before: Before): void {
  if ('part' in node) {
    replay.parts.push({ id: node.part, at: node });
    return;
  }
  if ('leftover' in node) {
    replay.leftovers.push(node);
    return;
  }
  if (!('cut' in node)) return;
  const stage = node.cut === before.cut ? before.stage : before.stage + 1;
  checkCut(replay, node, path);
  checkStage(replay, node, path, stage);
  node.children.forEach((child, i) =>
    walk(replay, child, `${path}.children[${i}]`, { stage, cut: node.cut }),
  );
}

type Cut = Extract<CutNode, { cut: 'along' | 'across' }>;

/** The children are what one saw line leaves, and the machine can make it. */
function checkCut(replay: Replay, node: Cut, path: string): void {
  const { kerf } = replay;
  const lengthwise = node.cut === 'across';
  const [start, size] = lengthwise ? [node.x, node.length] : [node.y, node.width];
  const take = node.at - start;
  const rest = Math.max(0, size - take - kerf);
  const low = lengthwise ? { ...node, length: take } : { ...node, width: take };
  const high = lengthwise
    ? { ...node, x: node.at + kerf, length: rest }
    : { ...node, y: node.at + kerf, width: rest };
  if (!(take > checkSlack && take < size - checkSlack)) {
    report(
      replay,
      path,
      'plan-cut-outside',
      `The cut at ${say(node.at)} does not run inside ${sayRectangle(node)}.`,
    );
  }
  [low, high].forEach((expected, i) => {
    const child = node.children[i] as CutNode;
    if (isSame(child, expected, replay.slack)) return;
    report(
      replay,
      `${path}.children[${i}]`,
      'plan-cut-child',
      `It is ${sayRectangle(child)}; the cut leaves ${sayRectangle(expected)}.`,
    );
  });
  checkMachine(replay, node, path, Math.min(take, rest));
}

function checkMachine(replay: Replay, node: Cut, path: string, rip: number): void {
  const { maxRip, maxCut } = replay.job.cuts ?? {};
  const line = node.cut === 'along' ? node.length : node.width;
  if (maxRip != null && rip > maxRip + checkSlack) {
    report(
      replay,
      path,
      'plan-rip',
      `The cut leaves ${say(rip)} mm on its narrower side; the fence reaches ${say(maxRip)} mm.`,
    );
  }
  if (maxCut != null && line > maxCut + checkSlack) {
    report(
      replay,
      path,
      'plan-cut-long',
      `The saw line is ${say(line)} mm long; the longest possible is ${say(maxCut)} mm.`,
    );
  }
}

/** Stages as in the literature: one more where the direction changes; beyond the last only one trimming cut, unless exact. */
function checkStage(replay: Replay, node: Cut, path: string, stage: number): void {
  const { maxStages, exact } = replay.job.cuts ?? {};
  if (maxStages == null || stage <= maxStages) return;
  const [low, high] = node.children;
  const trims =
    [low, high].some((child) => 'part' in child) &&
    [low, high].every((child) => !('cut' in child)) &&
    !('part' in low && 'part' in high);
  if (stage === maxStages + 1 && !exact && trims) return;
  report(
    replay,
    path,
    'plan-stages',
    `It is a cut of stage ${stage}; the job allows ${maxStages}${exact ? ' without trimming' : ''}.`,
  );
}

/** What the tree cuts out is what the layout lists, rectangle by rectangle. */
function checkLeaves(replay: Replay, layout: Layout, about: string): void {
  const listed = layout.placed.map((placed) => ({
    id: placed.id,
    at: { ...placed, y: placed.y ?? NaN, width: placed.width ?? NaN },
  }));
  matchLeaves(replay, replay.parts, listed, `${about}.placed`);
  const kept = layout.leftovers.map((left) => ({
    id: 'leftover',
    at: { ...left, y: left.y ?? NaN, width: left.width ?? NaN },
  }));
  matchLeaves(
    replay,
    replay.leftovers.map((at) => ({ id: 'leftover', at })),
    kept,
    `${about}.leftovers`,
  );
}

interface Leaf {
  readonly id: string;
  readonly at: Rectangle;
}

function matchLeaves(replay: Replay, cut: readonly Leaf[], listed: readonly Leaf[], about: string): void {
  const open = [...cut];
  for (const { id, at } of listed) {
    const found = open.findIndex((leaf) => leaf.id === id && isSame(leaf.at, at, checkSlack));
    if (found >= 0) open.splice(found, 1);
    else report(replay, about, 'plan-leaf-missing', `No cut frees "${id}" as ${sayRectangle(at)}.`);
  }
  for (const { id, at } of open) {
    report(
      replay,
      about,
      'plan-leaf-unlisted',
      `The cuts free "${id}" as ${sayRectangle(at)}, which is not listed.`,
    );
  }
}
