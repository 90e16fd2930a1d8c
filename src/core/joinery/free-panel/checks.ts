import { boxOfPoints, flattenOutline, isInside, type Outline, type Point } from '#core/geometry';
import { markSize } from '#core/units';
import type { Problem } from '#core/problems';
import { angleAt } from '../flat/polygon.ts';
import { tangentLength } from '../flat/round-corners.ts';
import {
  checkCrossGrain,
  checkFilms,
  checkMoisture,
  checkSheetThickness,
  checkWideSolid,
  openFindings,
  type Say,
} from '../piece-findings.ts';
import { scribe } from '../rules.ts';
import type { JoinerySettings } from '../piece-types.ts';
import type { Part } from '../types.ts';
import { panelHoles } from './parts.ts';
import { radiiOf, type PanelLayout } from './sizes.ts';

const show = markSize;
const leastWeb = 10; // mm of wood beside a hole (common practice, no source)
const leastAtCorner = 3; // mm of solid edge left at a rounded corner (common practice, no source)

/** Why no panel can be cut; empty when one can. */
export function refusePanel(layout: PanelLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, points, core, crowded, lipped } = layout;
  const stop = (code: string, message: string, remedy: string) =>
    say('stop', code, { message, remedy, source: 'joinery A10' });
  if (points.length === 0) {
    stop(
      'gaps-leave-nothing',
      'The gaps leave nothing of the panel at one of its sides.',
      'Enter smaller gaps.',
    );
    return all();
  }
  const sides = choices.chosen?.sides.length ?? 0;
  checkSideNumbers(stop, layout, sides);
  if (lipped.size > 0 && !core) {
    stop(
      'lipping-leaves-nothing',
      `Solid edges of ${show(layout.book.value('a'))} leave nothing of the panel within them.`,
      'Take narrower edges, or leave them out.',
    );
  }
  const curved = choices.chosen?.sides.some(({ between }) => between.length > 0);
  if (curved && isRounded(layout) && (lipped.size > 0 || choices.radii !== undefined)) {
    stop(
      'radius-beside-curve',
      'Where sides are curved, corners are rounded only all alike, and without solid edges.',
      'Take one radius for all, or none; round the others by hand.',
    );
  }
  if (crowded) {
    stop(
      'radius-too-large',
      `The radii at the ends of side ${(layout.side[crowded.side] ?? 0) + 1} want ${show(crowded.need)} of it; it is ${show(crowded.have)} long.`,
      'Take a smaller radius.',
    );
  }
  checkLists(stop, layout);
  if (all().length === 0) checkCorners(stop, layout);
  return all();
}

const isRounded = ({ choices }: PanelLayout): boolean =>
  choices.radius > 0 || (choices.radii ?? []).some((radius) => radius > 0);

type Stop = (code: string, message: string, remedy: string) => void;

function checkSideNumbers(stop: Stop, { choices, lipped }: PanelLayout, sides: number): void {
  const named = [...(choices.lippedSides ?? []), ...(choices.scribedSides ?? [])];
  const wrong = named.filter((number) => !(Number.isInteger(number) && number >= 1 && number <= sides));
  if (wrong.length > 0) {
    stop(
      'side-unknown',
      `There is no side ${wrong.join(', ')}: the panel has ${sides}.`,
      `Count them counter-clockwise, 1 to ${sides}.`,
    );
  }
  const curved = [...lipped].filter((i) => (choices.chosen?.sides[i]?.between.length ?? 0) > 0);
  if (curved.length > 0) {
    stop(
      'curved-side-lipped',
      `Side ${curved.map((i) => i + 1).join(', ')} is curved: a straight solid edge does not lie on it.`,
      'Leave it bare and fill its edge, or glue veneer or thin strips round it.',
    );
  }
}

function checkLists(stop: Stop, layout: PanelLayout): void {
  const { choices } = layout;
  const lists = [
    ['Round holes', choices.holes ?? [], 3, 'x, y and diameter'],
    ['Cut-outs', choices.cutouts ?? [], 4, 'x, y, width and height'],
  ] as const;
  for (const [name, list, size, what] of lists) {
    if (list.length % size === 0) continue;
    stop(
      'list-incomplete',
      `${name}: ${list.length} numbers were entered; each takes ${size} (${what}).`,
      'Complete the list.',
    );
  }
  panelHoles(layout).forEach((hole, i) => {
    const room = roomBeside(hole, layout.outline);
    if (room > 0) return;
    stop('hole-outside', `Hole ${i + 1} does not lie within the panel.`, 'Move it in, or make it smaller.');
  });
}

/** A rounded corner must lie within the solid edges that meet there. */
function checkCorners(stop: Stop, { choices, points, side, lipped, core, book }: PanelLayout): void {
  if (lipped.size === 0 || !core) return;
  radiiOf(choices, points, side).forEach((radius, i) => {
    const [after, before] = [side[i] ?? 0, side[(i + side.length - 1) % side.length] ?? 0];
    const count = Number(lipped.has(after)) + Number(lipped.has(before));
    if (radius <= 0 || count === 0) return;
    const [outer, inner] = [points[i], core[i]];
    if (!outer || !inner) return;
    const deep = Math.hypot(inner.x - outer.x, inner.y - outer.y);
    const angle = angleAt(points, i);
    const taken =
      count === 2 ? radius * (1 / Math.sin((angle * Math.PI) / 360) - 1) : tangentLength(radius, angle);
    if (deep - taken >= (count === 2 ? leastAtCorner : -1e-9)) return;
    stop(
      'radius-cuts-lipping',
      `A radius of ${show(radius)} at corner ${after + 1} leaves ${show(Math.max(0, deep - taken))} of the solid edge of ${show(book.value('a'))}.`,
      `Take a radius of ${show(book.value('a'))} or less, or a wider edge.`,
    );
  });
}

/** The least distance of a hole from the outline, mm; 0 or less when it reaches it. */
export function roomBeside(hole: Outline, outline: Outline): number {
  const [inner, outer] = [flattenOutline(hole), flattenOutline(outline)];
  if (!inner.every((point) => isInside(point, outline))) return 0;
  return Math.min(
    ...inner.map((point) => distanceTo(point, outer)),
    ...outer.map((point) => distanceTo(point, inner)),
  );
}

function distanceTo(point: Point, polygon: readonly Point[]): number {
  const distances = polygon.map((a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const size = dx * dx + dy * dy;
    const share =
      size === 0 ? 0 : Math.max(0, Math.min(1, ((point.x - a.x) * dx + (point.y - a.y) * dy) / size));
    return Math.hypot(a.x + dx * share - point.x, a.y + dy * share - point.y);
  });
  return Math.min(...distances);
}

/** Findings on a panel that can be cut. */
export function checkPanel(
  layout: PanelLayout,
  parts: readonly Part[],
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, book } = layout;
  if (choices.fixed === 'loose') checkFilms(say, 'the panel', book.value('g'), settings);
  checkHoles(say, layout);
  checkScribe(say, layout);
  checkSwelling(say, layout);
  checkWideSolid(say, parts);
  checkCrossGrain(say, parts.slice(0, 1));
  checkSheetThickness(say, choices.stock.panel, book.value('T'), 'Panel');
  checkMoisture(say, settings, choices.stock.panel.kind === 'solid');
  return all();
}

function checkHoles(say: Say, layout: PanelLayout): void {
  const holes = panelHoles(layout);
  holes.forEach((hole, i) => {
    const rooms = [
      roomBeside(hole, layout.outline),
      ...holes.slice(i + 1).map((other) => apart(hole, other)),
    ];
    const least = Math.min(...rooms);
    if (least >= leastWeb) return;
    say('warn', 'hole-near-edge', {
      message: `Beside hole ${i + 1} ${show(Math.max(0, least))} of wood is left; ${show(leastWeb)} is the least.`,
      remedy: 'Move it, or make it smaller.',
      source: 'common practice, no source',
    });
  });
}

function apart(one: Outline, other: Outline): number {
  const [a, b] = [flattenOutline(one), flattenOutline(other)];
  if (a.some((point) => isInside(point, other)) || b.some((point) => isInside(point, one))) return 0;
  return Math.min(...a.map((point) => distanceTo(point, b)), ...b.map((point) => distanceTo(point, a)));
}

function checkScribe(say: Say, { choices, scribed, book }: PanelLayout): void {
  for (const [side, left] of scribed) {
    const name = `u_${side + 1}`;
    if (!book.has(name)) continue;
    const wanted = book.value(`dev_${side + 1}`) + 2 * book.value(name) + scribe.margin;
    if (wanted <= scribe.most) continue;
    say('stop', 'scribe-too-wide', {
      message: `Side ${side + 1} would need ${show(wanted)} left on to scribe; over ${scribe.most} a square edge is not scribed, ${show(left)} is reckoned.`,
      remedy: 'Make a template of that side, or measure it with ordinates.',
      source: 'joinery A11, G25',
    });
  }
  const wide = choices.gaps ?? [];
  const lone = [...scribed.keys()].filter((side) => (wide[side] ?? choices.gap) > 0);
  if (lone.length === 0) return;
  say('note', 'scribed-with-gap', {
    message: `Side ${lone.map((side) => side + 1).join(', ')} is scribed, and still a gap of ${show(choices.gap)} is reckoned.`,
    remedy: 'Enter 0 as its gap if it is to touch.',
    source: 'joinery A11',
  });
}

/** G13: a solid panel between fixed sides swells across its grain. */
function checkSwelling(say: Say, { choices, book, points }: PanelLayout): void {
  if (choices.stock.panel.kind !== 'solid') return;
  const box = boxOfPoints(points);
  const swell = book.value('swell');
  const room = 2 * choices.gap;
  const across = choices.grain === 'across' ? box.maxY - box.minY : box.maxX - box.minX;
  if (swell > room + 1e-9) {
    say('warn', 'panel-swells', {
      message: `The panel, ${show(across)} across its grain, will swell ${show(swell)} aboard; the gaps leave ${show(room)}.`,
      remedy: `Make the gaps ${show(Math.ceil(swell / 2))} each, or take a sheet.`,
      source: 'joinery D1, G13',
    });
  }
  if (choices.fixed !== 'glued' || across <= 75) return;
  say('warn', 'solid-glued-across', {
    message: `A solid panel ${show(across)} wide glued down cannot move; over ${show(75)} it splits.`,
    remedy: 'Screw it through slots, or let it lie loose.',
    source: 'joinery D3, G13',
  });
}
