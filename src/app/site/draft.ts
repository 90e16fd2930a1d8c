import type { ReadingPlace } from '#core/drawing';
import type { Reading } from '#core/measuring';
import type { ShapeOutcome } from '#core/pipeline';
import { ringOf } from '#core/pipeline';
import { unreachable } from '#core/problems';
import { placeTask, placeWords, type SiteTask } from './task.ts';

/** A reading of the user's own while it is being said where it goes. */
export interface Draft {
  readonly kind: Reading['kind'];
  /** Points tapped so far, in the order asked for. */
  readonly points: readonly string[];
  /** Of an ordinate or a tick the station, mm; of a width the height as a share of its edges; null: not said yet. */
  readonly at: number | null;
  /** Of a tick the board, of a thickness the place. */
  readonly name: string;
}

export interface DraftWords {
  readonly name: string;
  readonly purpose: string;
  /** What is asked for, point by point. */
  readonly points: readonly string[];
  /** What `at` is; left out where there is none. */
  readonly at?: string;
  /** What `name` is; left out where there is none. */
  readonly label?: string;
}

/** What each kind of reading is called, is for and needs. */
export const draftWords: Readonly<Record<Reading['kind'], DraftWords>> = {
  distance: { name: 'Distance', purpose: 'Tape between two points', points: ['from', 'to'] },
  plumb: { name: 'Lean', purpose: 'Plumb line: right of', points: ['hang it at', 'measure to'] },
  level: { name: 'Rise', purpose: 'Level: above', points: ['level from', 'measure to'] },
  angle: {
    name: 'Angle',
    purpose: 'Bevel gauge at a corner',
    points: ['one leg to', 'the corner', 'other leg to'],
  },
  bow: { name: 'Bow', purpose: 'Straightedge along an edge', points: ['edge from', 'edge to'] },
  offset: { name: 'Offset', purpose: 'Square off a line', points: ['line from', 'line to', 'the point'] },
  ordinate: {
    name: 'Ordinate',
    purpose: 'A point by batten and square',
    points: ['batten from', 'batten to', 'the point'],
    at: 'Along the batten, mm',
  },
  width: {
    name: 'Width',
    purpose: 'Across, part of the way up',
    points: ['left edge, foot', 'left edge, top', 'right edge, foot', 'right edge, top'],
    at: 'How far up, as a share (0.5 is half)',
  },
  tick: {
    name: 'Tick',
    purpose: 'A point by joggle stick',
    points: ['the point'],
    at: 'Along the edge of the board, mm',
    label: 'Name of the board',
  },
  twist: {
    name: 'Twist',
    purpose: 'Gap of two crossed strings',
    points: ['first string from', 'to', 'second string from', 'to'],
  },
  thickness: { name: 'Thickness', purpose: 'Of what it is fixed to', points: [], label: 'At which place' },
};

/** Kinds that make sense for a shape, the commonest first. */
export function draftKinds({ shape }: ShapeOutcome): readonly Reading['kind'][] {
  switch (shape.kind) {
    case 'sections':
      return ['thickness'];
    case 'walls':
      return ['distance', 'offset', 'bow', 'thickness'];
    default:
      return [
        'distance',
        'angle',
        'bow',
        'plumb',
        'level',
        'offset',
        'ordinate',
        'width',
        'tick',
        'twist',
        'thickness',
      ];
  }
}

/** Points that can be named in a reading of a shape: its own, and those that readings brought in. */
export function knownPoints({ shape, adjustment }: ShapeOutcome): readonly string[] {
  return [...new Set([...ringOf(shape).corners, ...adjustment.points.map(({ id }) => id)])];
}

/** What a draft asks for next; null when it lacks nothing. */
export function askOf(draft: Draft): string | null {
  const words = draftWords[draft.kind];
  const next = words.points[draft.points.length];
  if (next !== undefined) return next;
  if (words.at !== undefined && draft.at === null) return words.at;
  return words.label !== undefined && draft.name.trim() === '' ? words.label : null;
}

/** What to do with the drawing while points are asked for; empty when none are. */
export function promptOf(draft: Draft | null): string {
  const words = draft && draftWords[draft.kind];
  const point = draft && words?.points[draft.points.length];
  return words && point ? `${words.name}: tap ${point}` : '';
}

/** The reading as a task to enter; null while something lacks. */
export function draftTask(outcome: ShapeOutcome, draft: Draft): SiteTask | null {
  if (askOf(draft) !== null) return null;
  const place = placeOf(draft);
  const id = shortId(draft, outcome);
  const words = `${draftWords[draft.kind].name.toLowerCase()} ${draft.points.join('–')}${draft.name && ` ${draft.name}`}`;
  return placeTask(outcome, { id, place, reading: null, words, where: placeWords(place) });
}

/** Short enough to stand on a drawing: `A-C`, `a1`, `b2`. */
function shortId({ kind, points }: Draft, { shape }: ShapeOutcome): string {
  const taken = shape.readings.map((reading) => reading.id);
  const pair = points.join('-');
  if (kind === 'distance' && !taken.includes(pair)) return pair;
  const prefix = kind === 'twist' || kind === 'thickness' ? kind.slice(0, 2) : kind.slice(0, 1);
  const free = Array.from({ length: taken.length + 1 }, (_, at) => `${prefix}${at + 1}`);
  return free.find((id) => !taken.includes(id)) ?? prefix;
}

function placeOf({ kind, points, at: said, name }: Draft): ReadingPlace {
  const at = said ?? 0;
  const [a = '', b = '', c = '', d = ''] = points;
  switch (kind) {
    case 'distance':
    case 'plumb':
    case 'level':
    case 'bow':
      return { kind, from: a, to: b };
    case 'angle':
      return { kind, from: a, at: b, to: c };
    case 'offset':
      return { kind, from: a, to: b, point: c };
    case 'ordinate':
      return { kind, from: a, to: b, point: c, station: at };
    case 'width':
      return { kind, left: [a, b], right: [c, d], at };
    case 'tick':
      return { kind, point: a, board: name.trim(), station: at };
    case 'twist':
      return { kind, first: [a, b], second: [c, d] };
    case 'thickness':
      return { kind, place: name.trim() };
    default:
      return unreachable(kind);
  }
}
