import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import {
  checkMoisture,
  checkSheetThickness,
  checkWideSolid,
  openFindings,
  type Say,
} from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';
import type { Part } from '../types.ts';
import type { TopLayout } from './sizes.ts';

const show = markSize;
const between = 60; // mm between cut-outs (joinery B9)
const leastOverlap = 6; // mm of flange on the wood (joinery B9)
const leastInner = 6; // mm radius of inner corners (joinery B9)
const hipRadius = 25; // mm, corners at hip and knee height (joinery F9)
const usualRail = 60; // mm, top rails of a carcase (joinery B7)
const spanShare = 25; // times the thickness: 450 of 18 (joinery B9.4)

/** Why no countertop can be made; empty when one can. */
export function refuseTop(layout: TopLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, points, crowded, awkward, core } = layout;
  const stop = (code: string, message: string, remedy: string) =>
    say('stop', code, { message, remedy, source: 'joinery B9' });
  if (points.length === 0)
    stop('gaps-leave-nothing', 'The gaps at the walls leave nothing of the top.', 'Enter smaller gaps.');
  else if (crowded)
    stop(
      'radius-too-large',
      `The radii at the ends of side ${(layout.side[crowded.side] ?? 0) + 1} want ${show(crowded.need)} of it; it is ${show(crowded.have)} long.`,
      'Take a smaller radius.',
    );
  else if (awkward.length > 0)
    stop(
      'radius-needs-both-edges',
      `At corner ${awkward.map((i) => (layout.side[i] ?? 0) + 1).join(', ')} a solid edge of ${show(choices.lipping)} cannot follow the radius: both its sides need the edge, and a radius not below it.`,
      'Make both sides open or neither, and the radius 0 or as large as the edge.',
    );
  else if (core.length === 0)
    stop(
      'lipping-leaves-nothing',
      'The solid edges leave nothing of the top, or an open side is curved.',
      'Take narrower edges, or none and laminate the edge.',
    );
  const sides = choices.chosen?.sides.length ?? 0;
  const wrong = [...choices.openSides, ...choices.fiddleSides].filter(
    (i) => i !== -1 && !(Number.isInteger(i) && i >= 0 && i < sides),
  );
  if (wrong.length > 0)
    stop(
      'side-unknown',
      `There is no side ${wrong.map((i) => i + 1).join(', ')}: the top has ${sides}.`,
      `Count them counter-clockwise, 1 to ${sides}.`,
    );
  if (choices.cutouts.length % 6 !== 0)
    stop(
      'list-incomplete',
      `${choices.cutouts.length} numbers were entered for cut-outs; each takes 6.`,
      'Enter middle x and y, body width and depth, flange width and depth.',
    );
  checkInside(stop, layout);
  return all();
}

function checkInside(
  stop: (code: string, message: string, remedy: string) => void,
  { cutouts }: TopLayout,
): void {
  for (const { number, bridge, min, max } of cutouts) {
    if (bridge > 0 && max.x > min.x && max.y > min.y) continue;
    stop(
      'cutout-outside',
      `Cut-out ${number} from ${show(min.x)}, ${show(min.y)} to ${show(max.x)}, ${show(max.y)} does not lie within the top.`,
      'Check where its middle is, from the lower left of the top.',
    );
  }
}

/** Findings on the form of a countertop (joinery B9, F9). */
export function checkTop(
  layout: TopLayout,
  parts: readonly Part[],
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, book } = layout;
  checkBridges(say, layout);
  checkFlanges(say, layout);
  checkSupports(say, layout);
  checkCorners(say, layout);
  checkSheetThickness(say, choices.stock.top, book.value('T'), 'Top');
  checkWideSolid(say, parts);
  checkMoisture(
    say,
    settings,
    parts.some(({ kind }) => kind === 'solid'),
  );
  return all();
}

function checkBridges(say: Say, { cutouts, book }: TopLayout): void {
  const least = Math.max(50, 2.5 * book.value('T'));
  for (const { number, bridge } of cutouts) {
    if (bridge >= least) continue;
    say('warn', 'bridge-too-narrow', {
      message: `Beside cut-out ${number} ${show(bridge)} of the sheet are left; ${show(least)} are needed.`,
      remedy: 'Move it, or glue a strip of hardwood under the narrow place.',
      source: 'joinery B9.1',
    });
  }
  cutouts.forEach((one, i) =>
    cutouts.slice(i + 1).forEach((other) => {
      const apart = Math.max(
        one.min.x - other.max.x,
        other.min.x - one.max.x,
        one.min.y - other.max.y,
        other.min.y - one.max.y,
      );
      if (apart >= between) return;
      say(apart > 0 ? 'warn' : 'stop', 'cutouts-too-close', {
        message: `Cut-outs ${one.number} and ${other.number} ${apart > 0 ? `leave ${show(apart)} between them` : `overlap by ${show(-apart)}`}; ${between} are needed.`,
        remedy: 'Move one of them.',
        source: 'joinery B9',
      });
    }),
  );
}

function checkFlanges(say: Say, { cutouts, choices }: TopLayout): void {
  const narrow = cutouts.filter(({ overlap }) => overlap < leastOverlap);
  for (const { number, overlap } of narrow)
    say('stop', 'flange-too-narrow', {
      message: `The flange of cut-out ${number} would lie on ${show(overlap)} of wood; ${show(leastOverlap)} are needed.`,
      remedy: 'Measure body and flange again, or take less clearance.',
      source: 'joinery B9',
    });
  if (cutouts.length === 0 || choices.cutoutRadius >= leastInner) return;
  say('warn', 'cutout-corner-sharp', {
    message: `Inner corners of ${show(choices.cutoutRadius)} crack the laminate; ${show(leastInner)} are needed.`,
    remedy: `Make them ${show(leastInner)} or more.`,
    source: 'joinery B9',
  });
}

function checkSupports(say: Say, { choices, book, cutouts }: TopLayout): void {
  const width = book.value('top_W');
  const places = [...(choices.supports ?? [0, width])].sort((a, b) => a - b);
  const spans = places.slice(1).map((to, i) => to - (places[i] ?? 0));
  const along = Math.max(places[0] ?? 0, width - (places[places.length - 1] ?? width), ...spans);
  const widest = choices.railed ? Math.min(along, book.value('top_D') - 2 * usualRail) : along;
  const most = spanShare * book.value('T');
  if (widest > most)
    say('warn', 'top-unsupported', {
      message: `The top spans ${show(widest)} unsupported; ${show(book.value('T'))} thick it carries ${show(most)}.`,
      remedy: 'Put a bearer or a carcase end under it, or enter where it is held.',
      source: 'joinery B9.4',
    });
  for (const { number, min, max } of cutouts) {
    const met = (choices.supports ?? []).find((x) => x > min.x && x < max.x);
    if (met === undefined) continue;
    say('stop', 'body-meets-support', {
      message: `The body in cut-out ${number}, ${show(min.x)} to ${show(max.x)} from the left, hangs ${show(choices.bodyDepth)} down where the support at ${show(met)} is.`,
      remedy: 'Move the cut-out, or the support.',
      source: 'joinery B9.3',
    });
  }
}

function checkCorners(say: Say, { book, points, side, choices }: TopLayout): void {
  points.forEach((_, i) => {
    const before = side[(i + side.length - 1) % side.length] ?? 0;
    const here = side[i] ?? 0;
    const open = before !== here && choices.openSides.has(before) && choices.openSides.has(here);
    const radius = book.has(`R_${i + 1}`) ? book.value(`R_${i + 1}`) : 0;
    if (!open || radius >= hipRadius) return;
    say('warn', 'corner-at-hip-height', {
      message: `Corner ${here + 1} stands free with a radius of ${show(radius)}; at hip height ${show(hipRadius)} or more spares bruises.`,
      remedy: `Round it ${show(40)}.`,
      source: 'joinery B9, F9',
    });
  });
}
