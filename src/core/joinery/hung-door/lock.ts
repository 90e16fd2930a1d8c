import { markSize } from '#core/units';
import type { HungChoices } from './hung-choices.ts';
import { cutBox, drillThrough } from './cut-box.ts';
import { boxAtEdge, outOfLockEdge, pointAtEdge } from './lock-edge.ts';
import { isRebated } from './pair.ts';
import type { DoorLock } from './types.ts';
import { putParameters } from '../parameter-book.ts';
import type { Range } from '../parts.ts';
import type { ParameterInfo } from '../piece-types.ts';
import type { Fixing, Part } from '../types.ts';
import type { WorkingBook } from '../working.ts';

const show = markSize;
const cp = 'common practice, no source';

/** Where a lock can go in a door of one kind. mm. */
export interface LockSite {
  /** Solid wood from the lock edge to a groove or housing; null in a sheet. */
  readonly stile: number | null;
  /** What is in the way along the lock edge: between two heights, from so far in. */
  readonly obstacles: readonly LockObstacle[];
}

export interface LockObstacle {
  readonly what: string;
  readonly up: Range;
  readonly from: number;
}

/** The lock as it is made: the door that is bolted has none of its own. */
export function lockOf({ lock, leaf }: Pick<HungChoices, 'lock' | 'leaf'>): DoorLock {
  return leaf === 'second' ? 'none' : lock;
}

/** A mortise lock that can be let in: where doors are rebated into each other it cannot. */
export const isLetIn = (choices: HungChoices): boolean =>
  lockOf(choices) === 'mortise-lock' && !isRebated(choices);

/** Works out where the lock of a door sits and what is cut for it, from Wd, Hd, T and beta. */
export function sizeLock(
  book: WorkingBook,
  choices: HungChoices,
  from: { readonly infos: readonly ParameterInfo[]; readonly site: LockSite },
): void {
  const lock = lockOf(choices);
  if (lock === 'none' || lock === 'face-latch') return;
  const { infos, site } = from;
  const given = { infos, values: choices, given: choices.given };
  sizeBackset(book, choices, site);
  if (lock === 'turn-button') {
    book.put('finger_D', 28, 'finger hole, diameter', cp);
    putHeight(book, choices, site, [20, 20]);
    return;
  }
  putParameters(book, given, { lockCaseHeight: 'case_H' });
  if (choices.lockDepth === undefined) book.work('case_D', 'backset + 15', 'lock case, depth', cp);
  else book.putChoice('lockDepth', 'case_D', choices.lockDepth, 'lock case, depth', 'you');
  book.put('case_up', 20, 'lock case, from the middle of the handle to its top', cp);
  if (isLetIn(choices)) {
    putParameters(book, given, {
      lockCaseThickness: 'case_T',
      forendHeight: 'forend_H',
      forendWidth: 'forend_W',
      forendThickness: 'forend_T',
    });
  }
  const more = book.has('forend_H') ? Math.max(0, (book.value('forend_H') - book.value('case_H')) / 2) : 0;
  putHeight(book, choices, site, [book.value('case_H') - 20 + more, 20 + more]);
  book.work('key_at', 'lock_at - max(0, case_H - 40)', 'keyhole above the lower edge', cp);
  book.work('case_mid', 'lock_at + case_up - case_H/2', 'lock case, its middle above the lower edge', cp);
  if (isLetIn(choices)) sizeBolt(book);
}

function sizeBackset(book: WorkingBook, choices: HungChoices, { stile }: LockSite): void {
  const label = 'backset, lock edge to the middle of the handle';
  if (choices.lockBackset !== undefined) {
    book.putChoice('lockBackset', 'backset', choices.lockBackset, label, 'you');
    return;
  }
  const finger = choices.lock === 'turn-button';
  const usual =
    finger && stile !== null ? stile / 2 : choices.lock === 'mortise-lock' || stile !== null ? 25 : 40;
  book.put('backset', usual, label, cp);
}

/** The bolt and its strike: what goes into the jamb, behind the gap that the bolt crosses first. */
function sizeBolt(book: WorkingBook): void {
  book.work('forend_in', 'forend_T + T/2*tand(beta)', 'forend let into the bevelled edge', cp);
  book.put('throw', 12, 'throw of the bolt', cp);
  book.work('strike_H', 'case_H - 20', 'bolt hole in the jamb, height', cp);
  book.work('strike_W', 'case_T + 1', 'bolt hole in the jamb, width', cp);
  const gap = book.has('gm') ? 'gm' : 'gs';
  book.work('strike_in', `throw + 2 - ${gap}`, 'bolt hole in the jamb, depth: throw less the gap, and 2', cp);
}

/** The height of the handle: as asked, or half way up and clear of what is in the way. */
function putHeight(
  book: WorkingBook,
  { lockHeight }: HungChoices,
  site: LockSite,
  [below, above]: Range,
): void {
  const label = 'middle of the handle above the lower edge';
  if (lockHeight !== undefined) {
    book.putChoice('lockHeight', 'lock_at', lockHeight, label, 'you');
    return;
  }
  const usual = Math.min(1000, book.value('Hd') / 2);
  const clear = clearHeight(usual, [below, above], reachedBy(book, site));
  if (clear === usual) book.work('lock_at', 'min(1000, Hd/2)', label, cp);
  else book.put('lock_at', clear, `${label}, clear of the rails`, cp);
}

/** What the lock would run into with its depth. */
export function reachedBy(book: WorkingBook, { obstacles }: LockSite): readonly LockObstacle[] {
  const depth = book.has('case_D') ? book.value('case_D') : book.value('backset') + 15;
  return obstacles.filter(({ from }) => depth > from - 5);
}

const spare = 10; // mm between a lock and a joint, common practice, no source

/** The height nearest to the one wanted at which nothing is in the way between so much below and above; it itself when none is. */
export function clearHeight(
  wanted: number,
  [below, above]: Range,
  obstacles: readonly LockObstacle[],
): number {
  const blocked = (height: number) =>
    obstacles.some(({ up: [low, high] }) => height + above > low + 1e-9 && height - below < high - 1e-9);
  const tries = obstacles.flatMap(({ up: [low, high] }) => [low - above - spare, high + below + spare]);
  const free = [wanted, ...tries].filter((height) => height - below > 0 && !blocked(height));
  const off = (height: number) => Math.abs(height - wanted);
  return free.sort((one, other) => off(one) - off(other))[0] ?? wanted;
}

/** Parts no lock is cut from: they lie loose in the frame. */
const loose = ['Panel', 'Slat', 'Loose tenon'];

/** The parts of a door with the mortise, the forend's bed and the holes of its lock. */
export function cutLock(parts: readonly Part[], book: WorkingBook, choices: HungChoices): readonly Part[] {
  const v = book.value;
  if (!book.has('lock_at')) return parts;
  const isLoose = (part: Part) => loose.some((name) => part.name.startsWith(name));
  const solid = parts.filter((part) => !isLoose(part));
  const cut = drillHoles(isLetIn(choices) ? mortise(solid, book, choices) : solid, book, choices);
  const done = new Map(cut.map((part) => [part.id, part]));
  if (!(v('backset') > 0)) return parts;
  return parts.map((part) => done.get(part.id) ?? part);
}

function mortise(parts: readonly Part[], book: WorkingBook, choices: HungChoices): readonly Part[] {
  const v = book.value;
  const out = outOfLockEdge(choices);
  const thick = (size: number): Range => [(v('T') - size) / 2, (v('T') + size) / 2];
  const high = (size: number): Range => [v('case_mid') - size / 2, v('case_mid') + size / 2];
  const bed = cutBox(parts, {
    name: 'housing',
    box: boxAtEdge(book, choices, {
      into: [0, v('forend_in')],
      up: high(v('forend_H')),
      deep: thick(v('forend_W')),
    }),
    out,
    note: 'forend of the lock; size from the lock itself',
  });
  return cutBox(bed, {
    name: 'mortise',
    box: boxAtEdge(book, choices, {
      into: [0, v('case_D')],
      up: high(v('case_H')),
      deep: thick(v('case_T')),
    }),
    out,
    note: 'case of the lock; size from the lock itself',
  });
}

const spindle = 12; // hole for a handle's square and its rose, common practice, no source
const keyhole = 10;

function drillHoles(parts: readonly Part[], book: WorkingBook, choices: HungChoices): readonly Part[] {
  const v = book.value;
  const at = (up: number) => pointAtEdge(book, choices, { into: v('backset'), up });
  if (lockOf(choices) === 'turn-button') {
    return drillThrough(parts, {
      at: at(v('lock_at')),
      diameter: v('finger_D'),
      note: `finger hole, edges rounded ${show(3)}`,
    });
  }
  const handle = drillThrough(parts, { at: at(v('lock_at')), diameter: spindle, note: 'handle of the lock' });
  if (v('lock_at') - v('key_at') < (spindle + keyhole) / 2 + 3) return handle;
  return drillThrough(handle, { at: at(v('key_at')), diameter: keyhole, note: 'keyhole' });
}

/** Half of the widest hole, mm. */
export const holeRadius = (book: WorkingBook): number =>
  (book.has('finger_D') ? book.value('finger_D') : spindle) / 2;

/** What to buy that holds a door shut; null for nothing. */
export function lockFixing(book: WorkingBook, choices: HungChoices): Fixing | null {
  const hand = `hinges on the ${choices.hinged} seen from their knuckles`;
  const size = () =>
    `case ${show(book.value('case_D'))} × ${show(book.value('case_H'))}, backset ${show(book.value('backset'))}`;
  switch (lockOf(choices)) {
    case 'none':
      return null;
    case 'face-latch':
      return {
        item: 'Latch with strike',
        quantity: 1,
        use: 'door, cannot open at heel',
        source: 'joinery B2',
      };
    case 'mortise-lock':
      return {
        item: `Mortise lock with strike and handles, ${size()}`,
        quantity: 1,
        use: `door, ${hand}`,
        source: cp,
      };
    case 'rim-lock':
      return {
        item: `Rim lock with keep and handles, ${size()}`,
        quantity: 1,
        use: `door, ${hand}`,
        source: cp,
      };
    case 'turn-button':
      return { item: 'Turn button with screw', quantity: 1, use: 'door, on the frame', source: cp };
  }
}
