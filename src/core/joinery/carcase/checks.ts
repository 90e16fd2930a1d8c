import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import { clearOfObstacle } from '../hull/back-edge.ts';
import { heightRange } from '../hull/hull.ts';
import { checkMoisture, checkSheetThickness, openFindings, type Say } from '../piece-findings.ts';
import { leastBeyondHousing } from '../rules.ts';
import type { JoinerySettings } from '../piece-types.ts';
import { railJoint, shelfJoint } from './joints.ts';
import type { CarcaseLayout } from './sizes.ts';
import { checkGauge } from './gauge-notes.ts';
import { sides, sideName } from './sides.ts';

const show = markSize;
const uselessDepth = 80; // mm (joinery B7.2)
const featherBevel = 35; // degrees (joinery B7.3)
const guessed = 50; // mm beyond the measured hull that may be guessed (common practice, no source)

/** Why no carcase can be built; empty when one can. */
export function refuseCarcase({ choices, book }: CarcaseLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { hull, shelves, cleat, cleats } = choices;
  const v = book.value;
  const [low, high] = heightRange(hull);
  const beyond = Math.max(low - v('y0'), v('top') - high);
  if (beyond > guessed)
    say('stop', 'hull-not-measured-there', {
      message: `The ends run from ${show(v('y0'))} to ${show(v('top'))}, but the hull was measured from ${show(low)} to ${show(high)}: ${show(beyond)} would be guessed.`,
      remedy: 'Measure further up or down, or make the carcase lower.',
      source: 'joinery A10, B7',
    });
  const room = cleats ? cleat : 0;
  const levels = shelves.map((y) => [y - room, y + v('Ts')] as const);
  const outside = levels.find(([from, to]) => from < v('y0') - 1e-9 || to > v('top') - v('T') - 1e-9);
  if (outside)
    say('stop', 'shelf-outside', {
      message: `A shelf with its cleats from ${show(outside[0])} to ${show(outside[1])} is not between the foot at ${show(v('y0'))} and the top rails at ${show(v('top') - v('T'))}.`,
      remedy: 'Enter the undersides of the shelves from the level that the hull was measured from.',
      source: 'joinery B7',
    });
  const clash = levels.slice(1).find(([from], i) => from < (levels[i]?.[1] ?? 0));
  if (clash)
    say('stop', 'shelves-too-close', {
      message: `The shelf at ${show(clash[0] + room)} with its cleats does not clear the one below it.`,
      remedy: 'Enter the undersides rising, further apart.',
      source: 'joinery B7',
    });
  if (v('g') > v('T') / 2 + 1e-9)
    say('stop', 'housing-too-deep', {
      message: `Housings ${show(v('g'))} deep are more than half of the ends, ${show(v('T'))} thick.`,
      remedy: `Make them ${show(v('T') / 2)} or less.`,
      source: 'joinery C7',
    });
  return all();
}

/** Findings on the form of a carcase (joinery B7, B8.1, C0, C7). */
export function checkCarcase(layout: CarcaseLayout, settings: JoinerySettings): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, book } = layout;
  checkHull(say, layout);
  checkShelves(say, layout);
  checkRacking(say, layout);
  checkAir(say, layout);
  checkObstacles(say, layout);
  checkSheetThickness(say, choices.stock.panel, book.value('T'), 'Ends');
  checkMoisture(say, settings, choices.cleats && choices.shelves.length > 0);
  return [...all(), ...jointFindings(layout)];
}

/** What the joints themselves have to say, once each. Rails are glued, their screws are clamps. */
function jointFindings(layout: CarcaseLayout): readonly Problem[] {
  const clamps = ['screw-into-end', 'screw-no-room'];
  const found = sides.flatMap((side) => [
    ...layout.choices.shelves.flatMap((_, i) => shelfJoint(layout, side, i + 1)?.findings ?? []),
    ...railJoint(layout, side).findings.filter(({ code }) => !clamps.includes(code)),
  ]);
  return [...new Map(found.map((one) => [one.message, one])).values()];
}

function checkHull(say: Say, { choices, book }: CarcaseLayout): void {
  const { hull, start, width, clearance } = choices;
  const v = book.value;
  const last = hull.stations[hull.stations.length - 1]?.at ?? 0;
  if (hull.source !== 'you' && hull.stations.length > 1 && start + width > last + guessed)
    say('warn', 'hull-guessed', {
      message: `The right end stands ${show(start + width - last)} beyond the last section: the hull is taken to run on as it is there.`,
      remedy: 'Take a section at that end.',
      source: 'joinery A10',
    });
  if (clearance < hull.u95)
    say('warn', 'clearance-below-uncertainty', {
      message: `${show(clearance)} is kept clear of the hull, but it is known to ${show(hull.u95)} only.`,
      remedy: 'Keep more clear, or make a template of the ends first.',
      source: 'joinery A11, B7',
    });
  for (const side of sides) {
    const [fall, bevel] = [v(`fall_${side}`), v(`bevel_${side}`)];
    if (Math.abs(bevel) > featherBevel && choices.endBack === 'bevelled')
      featherEdge(say, `The ${sideName[side]} end`, Math.abs(bevel));
    checkGauge(say, { book, choices }, side);
    if (Math.abs(fall) > 3 && choices.endBack === 'square')
      say('note', 'end-square-gap', {
        message: `Cut square, the ${sideName[side]} end has ${show(Math.abs(fall))} more gap to the hull at its ${fall > 0 ? 'outer' : 'inner'} face.`,
        remedy: 'Leave it, or bevel its back edge to the hull.',
        source: 'joinery A6, G25',
      });
  }
}

function featherEdge(say: Say, what: string, bevel: number): void {
  say('warn', 'bevel-feather-edge', {
    message: `${what} meets the hull at ${formatNumber(bevel)}° off square: over ${featherBevel}° the bevel ends in a feather edge.`,
    remedy: 'Cut it square and let a cleat close the gap.',
    source: 'joinery B7.3',
  });
}

function checkShelves(say: Say, { choices, book }: CarcaseLayout): void {
  const v = book.value;
  choices.shelves.forEach((y, i) => {
    const n = i + 1;
    const depth = Math.min(v(`depth_l_${n}`), v(`depth_r_${n}`));
    if (depth < uselessDepth)
      say('warn', 'shelf-too-shallow', {
        message: `Shelf ${n} at ${show(y)} is only ${show(depth)} deep at its shallow end; below ${uselessDepth} it is of no use.`,
        remedy: 'Set it higher, or leave it out.',
        source: 'joinery B7.2',
      });
    const steep = Math.max(Math.abs(v(`beta_l_${n}`)), Math.abs(v(`beta_r_${n}`)));
    if (choices.shelfBack === 'bevelled' && steep > featherBevel) featherEdge(say, `Shelf ${n}`, steep);
    const fromFoot = y - v('y0');
    if (v('g') > 0 && fromFoot < leastBeyondHousing)
      say('warn', 'housing-near-end', {
        message: `The housing of shelf ${n} is ${show(fromFoot)} from the foot of the ends; below ${show(leastBeyondHousing)} the wood breaks out.`,
        remedy: 'Set it higher.',
        source: 'joinery B1.10, C21',
      });
  });
  if (choices.shelves.length === 0 || v('sag') <= v('sag_limit')) return;
  const needed = v('Ts') * Math.cbrt(v('sag') / v('sag_limit'));
  say('warn', 'shelf-sags', {
    message: `The shallowest shelf will sag ${show(v('sag'))} in time under ${formatNumber(choices.load)} kg; the eye sees ${show(v('sag_limit'))}.`,
    remedy: `Take shelves ${show(Math.ceil(needed))} thick, or glue a fiddle along the front.`,
    source: 'joinery B8.1, G14',
  });
}

function checkRacking(say: Say, { choices, book, backRail }: CarcaseLayout): void {
  const holds = choices.joint === 'loose-tenon' || book.value('g') > 0;
  const fixed = choices.shelves.length > 0 && holds;
  if (!fixed && choices.frontThickness === 0)
    say('warn', 'carcase-racks', {
      message:
        'It has no back, no shelf housed or tenoned in its ends and no front: nothing keeps it square.',
      remedy: 'House a shelf in the ends or tenon it, or put a face frame before it.',
      source: 'joinery B7',
    });
  if (backRail) return;
  say('note', 'no-rear-rail', {
    message: `Under the top there are ${show(book.value('rail_back'))} to the hull: only the front rail finds room.`,
    remedy: 'Fix the top to the hull side with a bonded tab.',
    source: 'joinery B7',
  });
}

function checkAir(say: Say, { choices, book, vents }: CarcaseLayout): void {
  const placed = vents.l.length + vents.r.length;
  const needed = book.value('air_needed');
  const area = placed * Math.PI * (choices.ventDiameter / 2) ** 2;
  if (placed >= 2 && area >= needed) return;
  say('warn', 'locker-without-air', {
    message: `${placed} vents of ${formatNumber(area / 100)} cm² together are made; ${show(book.value('W'))} × ${show(book.value('H'))} of front want 2 or more, low and high, and ${formatNumber(needed / 100)} cm².`,
    remedy: 'Make more or larger vents, here or in the doors.',
    source: 'joinery B7.6, common practice',
  });
}

function checkObstacles(say: Say, layout: CarcaseLayout): void {
  const { choices, book } = layout;
  const { start, width } = choices;
  const v = book.value;
  for (const { name, box, from, to } of choices.hull.obstacles) {
    if (to < start || from > start + width || box.maxY < v('y0') || box.minY > v('top')) continue;
    const deepest = Math.max(v('end_l_D'), v('end_r_D')) + v('Tfr');
    if (box.minX - clearOfObstacle >= deepest) continue;
    say('note', 'obstacle-cut-round', {
      message: `${name} reaches to ${show(box.minX)} from the front, ${show(box.minY)} to ${show(box.maxY)} up: wood is kept ${show(clearOfObstacle)} clear of it.`,
      remedy: 'Look aboard whether it runs as drawn before the notches are cut.',
      source: 'joinery A6, B7.4',
    });
  }
}
