import type { Random } from '#core/numerics';
import type { Clash } from './clash.ts';
import type { Shapes } from './shapes.ts';
import { enterBox, makeWhereabouts } from './whereabouts.ts';
import type { Whereabouts } from './whereabouts.ts';

/**
 * Parts lying on sheets, clashes and all, with what each clash weighs in the search. Parts from `count` on are fixed:
 * keep-outs. A strip is one sheet whose length changes.
 */
export interface Nest {
  readonly shapes: Shapes;
  readonly clash: Clash;
  readonly random: Random;
  readonly count: number;
  readonly all: number;
  /** Source of each part. */
  readonly source: Int32Array;
  readonly pose: Int32Array;
  /** Sheet of each part; -1 when it lies on none. */
  readonly sheet: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Box of each grown part as it lies: minX, minY, maxX, maxY. */
  readonly lies: Float64Array;
  /** The parts on each sheet, how many, and where in the list each part is. */
  readonly members: Int32Array[];
  readonly memberCount: Int32Array;
  readonly slot: Int32Array;
  /** Clash of each pair, and its weight; both symmetrical. Empty in a nest that is never searched. */
  readonly loss: Float32Array;
  readonly weight: Float32Array;
  /** Which parts clash with each, as bits: so many words of 32 a part. */
  readonly words: number;
  readonly clashing: Int32Array;
  /** Pairs (i * all + j, i below j) that weigh more than 1. */
  readonly heavy: number[];
  /** Null in a nest that is never searched. */
  readonly where: Whereabouts | null;
  /** Usable sizes. */
  readonly sheetLength: Float64Array;
  readonly sheetWidth: Float64Array;
  /** Sheets in use. */
  sheets: number;
  /** Parts moved so far: the measure of work. */
  moves: number;
}

export interface NestSetup {
  readonly shapes: Shapes;
  readonly clash: Clash;
  readonly random: Random;
  readonly source: Int32Array;
  /** How many of the parts, from the end, are fixed. */
  readonly fixed: number;
  readonly mostSheets: number;
  /** Whether clashes are kept and weighed. */
  readonly searched: boolean;
}

export function makeNest({ shapes, clash, random, source, fixed, mostSheets, searched }: NestSetup): Nest {
  const all = source.length;
  const words = (all + 31) >> 5;
  const pairs = searched ? all * all : 0;
  return {
    shapes,
    clash,
    random,
    count: all - fixed,
    all,
    source,
    pose: Int32Array.from(source, (each) => shapes.firstPose[each]!),
    sheet: new Int32Array(all).fill(-1),
    x: new Float64Array(all),
    y: new Float64Array(all),
    lies: new Float64Array(4 * all),
    members: Array.from({ length: mostSheets }, () => new Int32Array(Math.min(all, 16))),
    memberCount: new Int32Array(mostSheets),
    slot: new Int32Array(all),
    loss: new Float32Array(pairs),
    weight: new Float32Array(pairs).fill(1),
    words,
    clashing: new Int32Array(searched ? all * words : 0),
    heavy: [],
    where: searched ? makeWhereabouts(all, mostSheets) : null,
    sheetLength: new Float64Array(mostSheets),
    sheetWidth: new Float64Array(mostSheets),
    sheets: 0,
    moves: 0,
  };
}

/** A place for a part: pose, sheet, corner, and what its clashes there weigh. */
export interface Place {
  pose: number;
  sheet: number;
  x: number;
  y: number;
  loss: number;
}

export function emptyPlace(): Place {
  return { pose: 0, sheet: 0, x: 0, y: 0, loss: Infinity };
}

export function copyPlace(from: Place, to: Place): void {
  to.pose = from.pose;
  to.sheet = from.sheet;
  to.x = from.x;
  to.y = from.y;
  to.loss = from.loss;
}

/** Lays a part down; its clashes are not measured. Sheet -1 takes it away. */
export function layDown(nest: Nest, i: number, place: Readonly<Place>): void {
  const { pose, sheet, x, y, lies, shapes } = nest;
  if (sheet[i] !== place.sheet) {
    leave(nest, i);
    enter(nest, i, place.sheet);
  }
  pose[i] = place.pose;
  x[i] = place.x;
  y[i] = place.y;
  const p = 4 * place.pose;
  lies[4 * i] = place.x + shapes.box[p]!;
  lies[4 * i + 1] = place.y + shapes.box[p + 1]!;
  lies[4 * i + 2] = place.x + shapes.box[p + 2]!;
  lies[4 * i + 3] = place.y + shapes.box[p + 3]!;
  if (nest.where) enterBox(nest.where, i, place.sheet, lies);
}

function leave({ sheet, members, memberCount, slot }: Nest, i: number): void {
  const from = sheet[i]!;
  if (from < 0) return;
  const list = members[from]!;
  const last = list[--memberCount[from]!]!;
  list[slot[i]!] = last;
  slot[last] = slot[i]!;
  sheet[i] = -1;
}

function enter({ sheet, members, memberCount, slot }: Nest, i: number, to: number): void {
  sheet[i] = to;
  if (to < 0) return;
  if (memberCount[to]! === members[to]!.length) members[to] = longer(members[to]!);
  slot[i] = memberCount[to]!;
  members[to]![memberCount[to]!++] = i;
}

function longer(list: Int32Array): Int32Array {
  const copy = new Int32Array(2 * list.length);
  copy.set(list);
  return copy;
}
