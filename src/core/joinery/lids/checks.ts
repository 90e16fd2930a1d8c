import { outlineArea } from '#core/geometry';
import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import { shrink } from './aperture.ts';
import { layHoles } from './holes.ts';
import { shortestCleat } from './parts.ts';
import type { LidsLayout } from './layout.ts';
import { checkFilms, openFindings, type Say } from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';

const show = markSize;

const leastBearing = 15; // mm (joinery B10.1)
const holeToBearer = 40; // middle of the finger hole, mm (joinery B10.2)
const heaviest = 6; // kg (joinery B10.3)
const ventShare = 1; // percent of a lid, common practice

/** Lids that no longer have an outline, or cross each other. */
export function refuseLids({ choices, book, lids }: LidsLayout): readonly Problem[] {
  const inner = shrink(choices.aperture.corners, Math.max(book.value('cw'), book.value('g')));
  const whole = outlineArea(inner) > 0 && lids.every(({ corners }) => corners.length >= 3);
  if (whole && lids.length > 0) return [];
  return [
    {
      severity: 'stop',
      code: 'lids-impossible',
      message: `The aperture of ${show(book.value('L'))} × ${show(book.value('W'))} is too small or too pointed for ${lids.length} lids on cleats of ${show(book.value('cw'))}.`,
      remedy: 'Check the unit of the sizes, or take fewer lids or narrower cleats.',
      source: 'joinery B10',
    },
  ];
}

/** Findings on lids (joinery B10.1 to B10.3, sag, vents, films). */
export function checkLids(layout: LidsLayout, settings: JoinerySettings): readonly Problem[] {
  const { say, all } = openFindings();
  checkFilms(say, 'a lid', layout.book.value('g'), settings);
  checkBearing(say, layout);
  checkHole(say, layout);
  checkStrength(say, layout);
  checkVents(say, layout);
  const short = layout.choices.aperture.corners.filter(
    (_, i) => layout.book.value(`cleat${i + 1}_L`) < shortestCleat,
  );
  if (short.length > 0) {
    say('note', 'cleat-in-pieces', {
      message: `${short.length} sides of the aperture are shorter than ${show(shortestCleat)}, as along a curve: they get no cleat of their own here.`,
      remedy: `Fit short lengths of cleat there to the curve, so that no lid bridges more than ${show(300)}.`,
      source: 'joinery B10',
    });
  }
  return all();
}

function checkBearing(say: Say, { book, bearers }: LidsLayout): void {
  const v = book.value;
  const places = { cleats: v('bearing'), ...(bearers.length > 0 && { 'cross bearers': v('bearing_mid') }) };
  for (const [place, bearing] of Object.entries(places)) {
    if (bearing >= leastBearing - 1e-9) continue;
    say('warn', 'bearing-small', {
      message: `A lid bears ${show(bearing)} on its ${place}; ${show(leastBearing)} is the least.`,
      remedy: `Make the ${place} ${show((leastBearing - bearing) * (place === 'cleats' ? 1 : 2))} wider, or the gap smaller.`,
      source: 'joinery B10.1',
    });
  }
}

function checkHole(say: Say, layout: LidsLayout): void {
  const v = layout.book.value;
  const distances = {
    'the front cleat': v('hole_in') - v('bearing'),
    'a cross bearer': layout.bearers.length > 0 ? v('lid_L') / 2 - v('bearing_mid') : Infinity,
    'the back cleat': v('lid_W') - v('hole_in') - v('bearing'),
  };
  for (const [place, distance] of Object.entries(distances)) {
    if (distance >= holeToBearer - 1e-9) continue;
    say('warn', 'hole-over-bearer', {
      message: `The middle of the finger hole is ${show(distance)} from ${place}; a finger needs ${holeToBearer}.`,
      remedy:
        place === 'a cross bearer'
          ? 'Make the lids longer: take fewer.'
          : 'Move the hole towards the middle of the lid.',
      source: 'joinery B10.2',
    });
  }
}

function checkStrength(say: Say, { book }: LidsLayout): void {
  const v = book.value;
  if (v('lid_mass') > heaviest) {
    say('warn', 'lid-heavy', {
      message: `A lid ${show(v('lid_L'))} × ${show(v('lid_W'))} weighs ${formatNumber(v('lid_mass'))} kg; over ${heaviest} it is hard to lift out.`,
      remedy: `Take ${v('n') + 1} lids or more.`,
      source: 'joinery B10.3',
    });
  }
  if (v('sag') <= v('sag_limit')) return;
  const thick = v('T') * Math.cbrt(v('sag') / v('sag_limit'));
  say('warn', 'lid-sags', {
    message: `Under 80 kg a lid of ${show(v('T'))} sags ${show(v('sag'))} over ${show(v('span'))}; a hundredth, ${show(v('sag_limit'))}, is the most.`,
    remedy: `Take a sheet ${show(Math.ceil(thick))} thick or more, or a bearer along the middle.`,
    source: 'joinery B10, B8',
  });
}

function checkVents(say: Say, layout: LidsLayout): void {
  if (!layout.choices.vents) return;
  layout.lids.forEach((lid, i) => {
    const vents = layHoles(layout, lid).filter(({ kind }) => kind === 'vent');
    const share = (100 * vents.reduce((sum, { r }) => sum + Math.PI * r ** 2, 0)) / outlineArea(lid.corners);
    if (share >= ventShare) return;
    say('note', 'vents-few', {
      message: `Lid ${i + 1} has ${vents.length} vent holes, ${formatNumber(share, 2)} % of its area; ${ventShare} % keeps a mattress dry.`,
      remedy: 'Set the holes closer or make them larger.',
      source: 'joinery B10, common practice',
    });
  });
}
