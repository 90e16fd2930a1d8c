import { makeRandom } from '#core/numerics';
import type { Random } from '#core/numerics';
import { listParts } from './lay-columns.ts';
import { makeLoad, readNest } from './load.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { emptyPlace, layDown, makeNest } from './nest.ts';
import type { Nest, Place } from './nest.ts';
import { listOpenAngles, measureTurns, meetingsOn, nameSpot, nearAngle, wrap } from './open-angles.ts';
import type { OpenAngle, Turns } from './open-angles.ts';
import type { Pausing } from './strip-search.ts';
import { isFree } from './weigh-place.ts';

/** Areas that differ by less than this share count as equal. */
const sameArea = 1e-9;
/** More parts or corners than this are not tried. */
const most = { parts: 150, corners: 3000 } as const;
/** Parts laid before a try begins anew, in the first try; each has so much more than the last; in all; in all times the parts of the job. */
const patience = { first: 60, growth: 1.3, all: 4000, timesParts: 240_000 } as const;

interface Jigsaw {
  readonly nest: Nest;
  readonly turns: Turns;
  readonly random: Random;
  readonly isOver: () => boolean;
  /** Parts that may still be laid in this try. */
  left: number;
}

/**
 * Parts laid so that they fill sheets of one size to the last corner; null when their areas rule that out or no such way
 * was found in so many parts laid. Angles that are open where parts meet are filled by corners, the one with the fewest
 * choices first, and taken back where nothing fits any more.
 */
export function* solveJigsaw(
  model: Model,
  limits: { readonly seed: number; readonly work: number; readonly isOver: () => boolean },
): Pausing<Load | null> {
  const sheets = sheetsFilled(model);
  if (sheets === 0) return null;
  const random = makeRandom(limits.seed);
  const parts = model.kinds.reduce((sum, kind) => sum + kind.count, 0);
  const enough = Math.min(patience.all, patience.timesParts / parts, limits.work);
  let laid = 0;
  for (let left: number = patience.first; laid < enough && !limits.isOver(); left = grow(left)) {
    yield 0;
    const jigsaw = openJigsaw(model, sheets, { random, left, isOver: limits.isOver });
    laid += left;
    if (fillSheet(jigsaw, 0))
      return makeLoad(model, new Array<number>(sheets).fill(0), readNest(jigsaw.nest), []);
  }
  return null;
}

function grow(left: number): number {
  return Math.ceil(left * patience.growth);
}

/** How many sheets the parts fill exactly; 0 when they do not, or may not be tried. */
function sheetsFilled({ kinds, bins, shapes, gap, strip }: Model): number {
  const [bin] = bins;
  if (!bin || bins.length > 1 || strip !== null || gap > 0 || bin.zones.length > 0) return 0;
  const parts = kinds.reduce((sum, kind) => sum + kind.count, 0);
  if (parts > most.parts || shapes.cornerStart[shapes.count]! > most.corners) return 0;
  if (kinds.some((kind) => kind.figure.holes.length > 0)) return 0;
  const area = kinds.reduce((sum, kind) => sum + kind.count * kind.area, 0);
  const filled = area / (bin.length * bin.width);
  const sheets = Math.round(filled);
  return Math.abs(filled - sheets) <= sameArea * filled && sheets <= bin.count ? sheets : 0;
}

function openJigsaw(model: Model, sheets: number, given: Pick<Jigsaw, 'random' | 'isOver' | 'left'>): Jigsaw {
  const nest = makeNest({
    ...{ shapes: model.shapes, clash: model.clash, random: given.random },
    ...{ source: Int32Array.from(listParts(model)), fixed: 0, mostSheets: sheets, searched: false },
  });
  nest.sheets = sheets;
  nest.sheetLength.fill(model.bins[0]!.length);
  nest.sheetWidth.fill(model.bins[0]!.width);
  return { ...given, nest, turns: measureTurns(model.shapes) };
}

/** A part laid with a corner into an open angle. */
interface Choice {
  readonly i: number;
  readonly place: Place;
  readonly worth: number;
}

/** Fills a sheet and those after it; false when that was not possible, with all taken back from there on. */
function fillSheet(jigsaw: Jigsaw, sheet: number): boolean {
  const { nest } = jigsaw;
  if (sheet === nest.sheets) return nest.sheet.every((each) => each >= 0);
  const open = listOpenAngles(nest, sheet, jigsaw.turns);
  if (open.length === 0) return fillSheet(jigsaw, sheet + 1);
  for (const { i, place } of fewestChoices(jigsaw, sheet, open)) {
    if (jigsaw.left-- <= 0 || jigsaw.isOver()) return false;
    layDown(nest, i, place);
    if (fillSheet(jigsaw, sheet)) return true;
    layDown(nest, i, { ...place, sheet: -1 });
  }
  return false;
}

/** The choices at the open angle, and the side of it, that has the fewest; the snuggest first. */
function fewestChoices(jigsaw: Jigsaw, sheet: number, open: readonly OpenAngle[]): readonly Choice[] {
  const meetings = meetingsOn(jigsaw.nest, sheet);
  let best: readonly Choice[] | null = null;
  for (const angle of open) {
    for (const atEnd of [false, true]) {
      const choices = listChoices(jigsaw, {
        sheet,
        angle,
        atEnd,
        meetings,
        enough: best?.length ?? Infinity,
      });
      if (best && choices.length >= best.length) continue;
      best = choices;
      if (best.length === 0) return best;
    }
  }
  return [...(best ?? [])].sort((a, b) => b.worth - a.worth);
}

interface Question {
  readonly sheet: number;
  readonly angle: OpenAngle;
  /** Whether the part lies along the end of the angle, not its beginning. */
  readonly atEnd: boolean;
  /** Corners on the sheet, by their names. */
  readonly meetings: ReadonlyMap<string, unknown>;
  /** So many choices need not be told apart from more. */
  readonly enough: number;
}

function listChoices(jigsaw: Jigsaw, question: Question): readonly Choice[] {
  const { nest } = jigsaw;
  const { firstPose } = nest.shapes;
  const choices: Choice[] = [];
  const asked = new Set<number>();
  for (let i = 0; i < nest.count && choices.length < question.enough; i++) {
    const kind = nest.source[i]!;
    if (nest.sheet[i]! >= 0 || asked.has(kind)) continue;
    asked.add(kind);
    for (let pose = firstPose[kind]!; pose < firstPose[kind + 1]!; pose++)
      choices.push(...choicesOf(jigsaw, question, i, pose));
  }
  return choices;
}

function choicesOf(jigsaw: Jigsaw, question: Question, i: number, pose: number): Choice[] {
  const { nest, turns, random } = jigsaw;
  const { sheet, angle, atEnd, meetings } = question;
  const { corners, cornerStart, width, height } = nest.shapes;
  const found: Choice[] = [];
  for (let k = cornerStart[pose]!; k < cornerStart[pose + 1]!; k++) {
    const turn = turns.turn[k]!;
    if (turn > angle.turn + nearAngle) continue;
    const off = atEnd
      ? wrap(turns.from[k]! + turn - angle.from - angle.turn)
      : wrap(turns.from[k]! - angle.from);
    if (off > nearAngle) continue;
    const place = {
      ...emptyPlace(),
      pose,
      sheet,
      x: angle.x - corners[2 * k]!,
      y: angle.y - corners[2 * k + 1]!,
    };
    if (!settle(nest, place, width[pose]!, height[pose]!) || !isFree(nest, i, place)) continue;
    const filled = angle.turn - turn <= nearAngle ? 1 : 0;
    found.push({ i, place, worth: filled + countMet(nest, place, meetings) + random.next() });
  }
  return found;
}

/** Moves a place that sticks out by no more than rounding inside; false when it sticks out. */
function settle(nest: Nest, place: Place, width: number, height: number): boolean {
  const roomX = nest.sheetLength[place.sheet]! - width;
  const roomY = nest.sheetWidth[place.sheet]! - height;
  const near = 1e-9 * Math.max(nest.sheetLength[place.sheet]!, nest.sheetWidth[place.sheet]!);
  if (place.x < -near || place.y < -near || place.x > roomX + near || place.y > roomY + near) return false;
  place.x = Math.min(Math.max(0, place.x), roomX);
  place.y = Math.min(Math.max(0, place.y), roomY);
  return true;
}

/** How many corners of a part would lie on corners that are there. */
function countMet({ shapes }: Nest, { pose, x, y }: Place, meetings: ReadonlyMap<string, unknown>): number {
  const { corners, cornerStart } = shapes;
  let met = 0;
  for (let k = cornerStart[pose]!; k < cornerStart[pose + 1]!; k++)
    if (meetings.has(nameSpot(x + corners[2 * k]!, y + corners[2 * k + 1]!))) met++;
  return met;
}
