import type { Point } from '#core/geometry';
import { adjustSurvey, sigmaOf } from '#core/measuring';
import type { Reading, SurveyOutcome } from '#core/measuring';
import type { Random } from '#core/numerics';
import { slipOf } from './fit-openings.ts';

/** A true outline, counter-clockwise, its corners A, B, C and so on. */
export type TrueOutline = Readonly<Record<string, Point>>;

/** Gap of the panel on every edge, and the widest that is still good, mm (invented: a lid with a gap of 3). */
const panel = { gap: 3, widest: 6 } as const;
/** Scatter of an edge as sawn and planed, mm, one standard deviation (invented). */
const sawn = 0.3;

/** What is read of an outline. */
export const outlineSets = ['fan', 'braced', 'board'] as const;
export type OutlineSet = (typeof outlineSets)[number];

/** An outline of five to seven corners, 600 to 1800 across: a hatch, a locker mouth, a berth front (invented). */
export function drawOutline(random: Random): TrueOutline {
  const count = random.whole(5, 7);
  const [wide, tall] = [random.whole(300, 900), random.whole(300, 600)];
  const entries = Array.from({ length: count }, (_, k): [string, Point] => {
    const angle = ((k + 0.5 * (random.next() - 0.5)) * 2 * Math.PI) / count;
    const reach = 0.9 + 0.2 * random.next();
    return [
      String.fromCharCode(65 + k),
      { x: wide * reach * Math.cos(angle), y: tall * reach * Math.sin(angle) },
    ];
  });
  return Object.fromEntries(entries);
}

/**
 * `fan`: the sides and the diagonals from A, just enough to draw it. `braced`: sides and the diagonals over one corner.
 * `board`: every corner brought over on one board by stick, and the sides taped.
 */
export function readOutline(outline: TrueOutline, set: OutlineSet, random: Random): readonly Reading[] {
  const names = Object.keys(outline);
  const sides = names.map((name, k) => [name, names[(k + 1) % names.length] ?? name] as const);
  const fan = names.slice(2, -1).map((name) => ['A', name] as const);
  const short = names.map((name, k) => [name, names[(k + 2) % names.length] ?? name] as const);
  const pairs = { fan: [...sides, ...fan], braced: [...sides, ...short], board: sides }[set];
  const seen = new Set<string>();
  const distances = pairs.flatMap(([from, to]): Reading[] => {
    const id = [from, to].sort().join('');
    if (seen.has(id)) return [];
    seen.add(id);
    const [a, b] = [outline[from], outline[to]];
    const value = a && b ? Math.hypot(b.x - a.x, b.y - a.y) : NaN;
    return [{ id, kind: 'distance', from, to, value }];
  });
  return [...(set === 'board' ? tickAll(outline, random) : []), ...distances].map((r) => scatter(r, random));
}

function tickAll(outline: TrueOutline, random: Random): readonly Reading[] {
  const turn = 2 * Math.PI * random.next();
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return Object.entries(outline).map(([point, { x, y }]): Reading => {
    const [station, value] = [1500 + x * cos + y * sin, 1500 + y * cos - x * sin];
    return { id: `t${point}`, kind: 'tick', board: '1', point, station, value };
  });
}

/** As a careful hand takes it: the scatter of joinery A1, to whole mm. */
function scatter(reading: Reading, random: Random): Reading {
  const sigma = sigmaOf(reading);
  const hand = Math.sqrt(Math.max(0, sigma * sigma - 1 / 12));
  const look = (exact: number) => Math.round(exact + hand * random.normal());
  const value = look(reading.value);
  return reading.kind === 'tick'
    ? { ...reading, value, station: look(reading.station) }
    : { ...reading, value };
}

/** The reading with a slip of joinery A5; a length that would come out as nothing is left as it is. */
export function spoilOutline(reading: Reading, random: Random): Reading {
  const value = reading.value + slipOf({ ...reading, kind: 'distance' } as Reading, random);
  return value > 0 ? { ...reading, value } : reading;
}

export function adjustOutline(readings: readonly Reading[], outline: TrueOutline): SurveyOutcome {
  return adjustSurvey({ seenFrom: 'from above, looking down', readings, corners: Object.keys(outline) });
}

/** A panel made from the corners as measured and tried in the true outline: turned and shifted until it goes, or not. */
export function tryPanel(
  measured: Readonly<Record<string, Point>>,
  outline: TrueOutline,
  random: Random,
): boolean {
  const names = Object.keys(outline);
  const ring = names.map((name) => measured[name] ?? { x: NaN, y: NaN });
  const hole = names.map((name) => outline[name] ?? { x: NaN, y: NaN });
  const made = inset(ring, () => panel.gap + sawn * random.normal());
  let pose = seat(
    made,
    inset(hole, () => panel.gap),
  );
  let room = roomOf(place(made, pose), hole);
  for (let step = 2; step > 0.01; step /= 2)
    for (let round = 0; round < 8; round += 1) {
      const size = Math.hypot(...made.flatMap(({ x, y }) => [x, y])) / made.length;
      const tries = [
        ...[step, -step].map((d) => ({ ...pose, x: pose.x + d })),
        ...[step, -step].map((d) => ({ ...pose, y: pose.y + d })),
        ...[step, -step].map((d) => ({ ...pose, turn: pose.turn + d / size })),
      ];
      const best = tries
        .map((one) => ({ one, room: roomOf(place(made, one), hole) }))
        .reduce((a, b) => (b.room > a.room ? b : a));
      if (best.room <= room) break;
      [pose, room] = [best.one, best.room];
    }
  return room >= 0;
}

interface Pose extends Point {
  readonly turn: number;
}

/** Every edge moved inwards by its own gap; corners where the moved edges cross. */
function inset(ring: readonly Point[], gap: () => number): readonly Point[] {
  const lines = ring.map((a, k) => {
    const b = ring[(k + 1) % ring.length] ?? a;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const normal = { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
    return { ...normal, c: normal.x * a.x + normal.y * a.y + gap() };
  });
  return lines.map((line, k) => {
    const before = lines[(k + lines.length - 1) % lines.length] ?? line;
    const cross = before.x * line.y - before.y * line.x;
    return {
      x: (before.c * line.y - before.y * line.c) / cross,
      y: (before.x * line.c - before.c * line.x) / cross,
    };
  });
}

/** The rigid motion that brings the corners nearest to each other. */
function seat(from: readonly Point[], to: readonly Point[]): Pose {
  const mean = (list: readonly Point[], key: 'x' | 'y') =>
    list.reduce((sum, p) => sum + p[key], 0) / list.length;
  const [fx, fy, tx, ty] = [mean(from, 'x'), mean(from, 'y'), mean(to, 'x'), mean(to, 'y')];
  let [dot, cross] = [0, 0];
  from.forEach((p, k) => {
    const q = to[k] ?? p;
    dot += (p.x - fx) * (q.x - tx) + (p.y - fy) * (q.y - ty);
    cross += (p.x - fx) * (q.y - ty) - (p.y - fy) * (q.x - tx);
  });
  const turn = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { x: tx - fx * cos + fy * sin, y: ty - fx * sin - fy * cos, turn };
}

function place(ring: readonly Point[], { x, y, turn }: Pose): readonly Point[] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return ring.map((p) => ({ x: x + p.x * cos - p.y * sin, y: y + p.x * sin + p.y * cos }));
}

/** The least by which any corner keeps clear of touching, and of gaping; below 0 the panel does not fit. */
function roomOf(ring: readonly Point[], hole: readonly Point[]): number {
  let room = Infinity;
  ring.forEach((p, k) => {
    for (const at of [k, (k + hole.length - 1) % hole.length]) {
      const [a, b] = [hole[at] ?? p, hole[(at + 1) % hole.length] ?? p];
      const gap = ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y);
      room = Math.min(room, gap, panel.widest - gap);
    }
  });
  return Number.isFinite(room) ? room : -Infinity;
}
