import type { Point } from '#core/geometry';
import { formatNumber, markSize } from '#core/units';
import type { Problem } from '#core/problems';
import { frontPlane, layFlat } from '../flat/lay-flat.ts';
import { isConvex, keepLeft, leftBy, lineOf, wayTo } from '../flat/polygon.ts';
import {
  checkMoisture,
  checkSheetThickness,
  checkWall,
  checkWideSolid,
  openFindings,
  type Say,
} from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';
import type { Part } from '../types.ts';
import { memberOutline, widthOf } from './members.ts';
import { tongueGroups } from './parts.ts';
import { usesDepth, usesThickness, type FreeFrameLayout } from './sizes.ts';

const show = markSize;
const leastLap = 12; // thickness for a half-lap (joinery C6)
const leastTongue = 15; // along the joint (common practice, no source)
const same = 1e-6; // mm, sizes worked out and drawn
const sharpest = 30; // degrees of a mitre from its edge before the point breaks (common practice, no source)

/** Why no frame can be made; empty when one can. */
export function refuseFrame(layout: FreeFrameLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, points, inner } = layout;
  const stop = (code: string, message: string, remedy: string) =>
    say('stop', code, { message, remedy, source: 'joinery B1' });
  const sides = choices.chosen?.sides ?? [];
  if (!isConvex(sides.map(({ from }) => from))) {
    stop(
      'frame-has-dent',
      'The outline has a corner that points inwards, or one that is no corner: members do not go round it.',
      'Take two frames, or a panel with a cut-out.',
    );
    return all();
  }
  if (points.length === 0 || !inner) {
    stop(
      'frame-leaves-nothing',
      points.length === 0
        ? 'The gaps leave nothing of one of the sides.'
        : 'The members leave no opening between them.',
      'Enter smaller gaps or narrower members.',
    );
    return all();
  }
  points.forEach((from, i) => {
    const line = lineOf(from, points[(i + 1) % points.length] ?? from);
    const beside = [points[(i + points.length - 1) % points.length], points[(i + 2) % points.length]];
    const least = Math.min(...beside.map((point) => (point ? leftBy(point, line) : 0)));
    if (points.length === 3 || least >= widthOf(layout, i)) return;
    stop(
      'member-wider-than-side',
      `Member ${i + 1} is ${show(widthOf(layout, i))} wide; the side beside it ends ${show(least)} from its outer edge.`,
      'Take a narrower member.',
    );
  });
  if (all().length === 0) checkMembers(stop, layout);
  if (all().length === 0) checkApart(stop, layout);
  if (all().length === 0) checkTongues(stop, layout);
  return all();
}

/** A member of which the joints at its ends leave no whole width. */
function checkMembers(stop: Stop, layout: FreeFrameLayout): void {
  layout.points.forEach((from, i) => {
    const way = wayTo(from, layout.points[(i + 1) % layout.points.length] ?? from);
    const outline = memberOutline(layout, i);
    const { length, width } =
      outline.length < 3 ? { length: 0, width: 0 } : layFlat(outline, way, frontPlane());
    const wanted = { length: layout.book.value(`L_${i + 1}`), width: widthOf(layout, i) };
    if (Math.abs(length - wanted.length) < same && Math.abs(width - wanted.width) < same) return;
    stop(
      'member-too-short',
      `Member ${i + 1}, ${show(wanted.width)} wide, has an outer edge of ${show(layout.book.value(`side_${i + 1}`))}: its joints meet within it.`,
      'Take narrower members, or mitres.',
    );
  });
}

/** Members that are no neighbours and yet run into each other, over a side that is too short between them. */
function checkApart(stop: Stop, layout: FreeFrameLayout): void {
  const outlines = layout.points.map((_, i) => memberOutline(layout, i));
  const count = outlines.length;
  outlines.forEach((outline, i) =>
    outlines.slice(0, i).forEach((other, j) => {
      const apart = Math.min(i - j, count - i + j);
      if (apart < 2) return;
      const sides = other.map((from, k) => lineOf(from, other[(k + 1) % other.length] ?? from));
      if (areaOf(keepLeft(outline, sides)) < leastShared) return;
      stop(
        'member-too-short',
        `Members ${j + 1} and ${i + 1} run into each other: the side between them is too short for joints ${show(widthOf(layout, j))} and ${show(widthOf(layout, i))} wide.`,
        'Take narrower members, or mitres.',
      );
    }),
  );
}

const leastShared = 1e-3; // mm², less is two points that touch

const areaOf = (polygon: readonly Point[]): number =>
  polygon.reduce((sum, a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);

type Stop = (code: string, message: string, remedy: string) => void;

function checkTongues(stop: Stop, layout: FreeFrameLayout): void {
  if (usesThickness(layout.choices) && layout.book.value('t') > layout.book.value('T') - 2) {
    stop(
      'tongue-too-thick',
      `A spline or tenon of ${show(layout.book.value('t'))} leaves nothing of members ${show(layout.book.value('T'))} thick.`,
      'Take a third of the thickness.',
    );
  }
  if (!usesDepth(layout.choices)) return;
  for (const group of tongueGroups(layout)) {
    const width = group[0]?.width ?? 0;
    if (width >= leastTongue) continue;
    stop(
      'tongue-no-room',
      `At corner ${group.map(({ corner }) => corner + 1).join(', ')} only ${show(Math.max(0, width))} along the joint is left for the spline or tenon; ${leastTongue} is the least.`,
      'Take a smaller depth, wider members, or a half-lap.',
    );
  }
}

/** Findings on a frame that can be made (joinery B1, C0, C3, C6, C14). */
export function checkFrame(
  layout: FreeFrameLayout,
  parts: readonly Part[],
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, book, points } = layout;
  checkJoint(say, layout);
  checkMitres(say, layout);
  checkCurves(say, layout);
  checkWideSolid(say, parts.slice(0, points.length));
  checkSheetThickness(say, choices.material, book.value('T'), 'Members');
  checkMoisture(say, settings, choices.material.kind === 'solid');
  return all();
}

function checkJoint(say: Say, { choices, book }: FreeFrameLayout): void {
  const T = book.value('T');
  if (usesThickness(choices)) checkWall(say, 'Beside the spline or tenon', (T - book.value('t')) / 2, T);
  if (choices.joint === 'half-lap' && T < leastLap) {
    say('warn', 'lap-thin', {
      message: `Half-laps leave ${show(T / 2)} of members ${show(T)} thick; ${show(leastLap)} is the least thickness for them.`,
      remedy: 'Take thicker members, or a mitre with a spline.',
      source: 'joinery C6',
    });
  }
  if (choices.joint === 'half-lap' && choices.material.kind === 'sheet') {
    say('warn', 'lap-in-plywood', {
      message: `A half-lap in ${choices.material.name} loses half its plies.`,
      remedy: 'Only with a backing; else take a loose tenon, or solid timber.',
      source: 'joinery C6',
    });
  }
  if (choices.joint === 'mitre' || choices.joint === 'butt') {
    const isMitre = choices.joint === 'mitre';
    say(isMitre ? 'note' : 'warn', isMitre ? 'mitre-without-spline' : 'screw-into-end-grain', {
      message: isMitre
        ? 'A mitre that is only glued holds light trim; as a frame it opens.'
        : 'Screws of a butted corner go into end grain: they hold three quarters or less.',
      remedy: isMitre
        ? 'Take a spline, or fix every member to what lies behind.'
        : 'Glue with epoxy, or take a loose tenon.',
      source: 'joinery C0, C14',
    });
  }
}

function checkMitres(say: Say, { book, points, ends }: FreeFrameLayout): void {
  if (ends[0]?.after !== 'mitre') return;
  points.forEach((_, i) => {
    const angles = [book.value(`phi_a_${i + 1}`), book.value(`phi_b_${i + 1}`)];
    const least = Math.min(...angles);
    if (least >= sharpest) return;
    say('warn', 'mitre-sharp', {
      message: `The mitre at corner ${i + 1} runs at ${formatNumber(least)}° to the edge: its long point is short grain and breaks.`,
      remedy: 'Take members of more equal width, or a half-lap.',
      source: 'joinery C0.3',
    });
  });
}

function checkCurves(say: Say, { choices }: FreeFrameLayout): void {
  const curved = (choices.chosen?.sides ?? []).flatMap((side, i) =>
    side.between.length > 0 ? [`${i + 1} (${side.name})`] : [],
  );
  if (curved.length === 0) return;
  say('warn', 'frame-straight-on-curve', {
    message: `Side ${curved.join(', ')} is curved; the member there is straight from corner to corner.`,
    remedy: 'Leave it wider and scribe it, pack behind it, or cover the gap.',
    source: 'joinery A11',
  });
}
