import type { Method, Reading } from './types.ts';

/** Keys of the twelve standard readings of an opening. */
export type OpeningKey = 'wb' | 'w13' | 'w23' | 'wt' | 'hl' | 'hr' | 'd1' | 'd2' | 'pl' | 'pr' | 'ls' | 'lh';

/** One line of the checklist of an opening. */
export interface ChecklistLine {
  readonly key: OpeningKey;
  /** What it is, as `bottom width`. */
  readonly words: string;
  /** Where the tape goes. */
  readonly where: string;
  readonly kind: 'distance' | 'width' | 'plumb' | 'level';
  readonly method: Method;
  /** Points it runs between; for a width at a fraction, the edges are the two jambs. */
  readonly from: string;
  readonly to: string;
  readonly at?: number;
}

/** The edges of an opening, counter-clockwise as seen. */
export const openingEdges = [
  { name: 'sill', from: 'BL', to: 'BR' },
  { name: 'right jamb', from: 'BR', to: 'TR' },
  { name: 'head', from: 'TR', to: 'TL' },
  { name: 'left jamb', from: 'TL', to: 'BL' },
] as const;

const corners: Readonly<Record<string, string>> = {
  BL: 'bottom left corner',
  BR: 'bottom right corner',
  TR: 'top right corner',
  TL: 'top left corner',
};

/** A point in words: the corners of an opening by name, any other as `point A`. */
export function pointWords(point: string): string {
  return corners[point] ?? `point ${point}`;
}

/** An edge in words: those of an opening by name, any other as `A–B`. */
function edgeWords({ from, to }: { readonly from: string; readonly to: string }): string {
  const side = openingEdges.find((edge) =>
    edge.from === from ? edge.to === to : edge.from === to && edge.to === from,
  );
  return side ? `the ${side.name}` : `${from}–${to}`;
}

const plumbWhere = (side: string) =>
  `Plumb line or level against the ${side} jamb: how far its top stands right of its foot; to the left is minus.`;
const levelWhere = (edge: string) =>
  `Level along the ${edge}: how far its right end stands above its left end; below is minus.`;

/** The twelve readings of an opening, in the order of one visit. Source: joinery A3 and A10. */
export const openingChecklist: readonly ChecklistLine[] = [
  { ...line('wb', 'bottom width', 'BL', 'BR'), where: 'Along the sill, from jamb to jamb.' },
  {
    ...line('w13', 'width at one third', 'BL', 'BR'),
    ...{ kind: 'width', at: 1 / 3, where: 'From jamb to jamb, one third of each jamb up from the sill.' },
  },
  {
    ...line('w23', 'width at two thirds', 'BL', 'BR'),
    ...{ kind: 'width', at: 2 / 3, where: 'From jamb to jamb, two thirds of each jamb up from the sill.' },
  },
  { ...line('wt', 'top width', 'TL', 'TR'), where: 'Along the head, from jamb to jamb.' },
  { ...line('hl', 'left height', 'BL', 'TL'), where: 'Up the left jamb, from sill to head.' },
  { ...line('hr', 'right height', 'BR', 'TR'), where: 'Up the right jamb, from sill to head.' },
  {
    ...line('d1', 'rising diagonal', 'BL', 'TR'),
    where: 'From the bottom left corner to the top right corner.',
  },
  {
    ...line('d2', 'falling diagonal', 'BR', 'TL'),
    where: 'From the bottom right corner to the top left corner.',
  },
  { ...plumb('pl', 'lean of the left jamb', 'BL', 'TL'), where: plumbWhere('left') },
  { ...plumb('pr', 'lean of the right jamb', 'BR', 'TR'), where: plumbWhere('right') },
  { ...level('ls', 'rise of the sill', 'BL', 'BR'), where: levelWhere('sill') },
  { ...level('lh', 'rise of the head', 'TL', 'TR'), where: levelWhere('head') },
];

function line(key: OpeningKey, words: string, from: string, to: string) {
  return { key, words, kind: 'distance', method: 'M1', from, to } as const;
}

function plumb(key: OpeningKey, words: string, from: string, to: string) {
  return { key, words, kind: 'plumb', method: 'M6', from, to } as const;
}

function level(key: OpeningKey, words: string, from: string, to: string) {
  return { ...plumb(key, words, from, to), kind: 'level' } as const;
}

/** One of the twelve standard readings with its value, mm; the method is the usual one unless given. */
export function makeOpeningReading(
  key: OpeningKey,
  value: number,
  options: Partial<Pick<Reading, 'id' | 'sigma' | 'method' | 'repeats' | 'toFace' | 'note'>> = {},
): Reading {
  const entry = openingChecklist.find((candidate) => candidate.key === key);
  if (!entry) throw new Error(`no such reading of an opening: ${key}`);
  const base = { id: key, method: entry.method, ...options, value };
  if (entry.kind === 'width')
    return { ...base, kind: 'width', left: ['BL', 'TL'], right: ['BR', 'TR'], at: entry.at ?? 0.5 };
  return { ...base, kind: entry.kind, from: entry.from, to: entry.to };
}

/** Which of the twelve a reading is; null when it is none of them. */
export function openingKeyOf(reading: Reading): OpeningKey | null {
  const match = openingChecklist.find((entry) => {
    if (entry.kind !== reading.kind) return false;
    if (reading.kind === 'width')
      return isJambWidth(reading) && Math.abs(fractionUp(reading) - (entry.at ?? 0)) < 0.02;
    if (reading.kind !== 'distance' && reading.kind !== 'plumb' && reading.kind !== 'level') return false;
    const ends = [reading.from, reading.to];
    return ends.includes(entry.from) && ends.includes(entry.to);
  });
  return match?.key ?? null;
}

function isJambWidth(reading: Extract<Reading, { kind: 'width' }>): boolean {
  const edges = [reading.left, reading.right].map((edge) => [...edge].sort().join());
  return edges.includes('BL,TL') && edges.includes('BR,TR');
}

function fractionUp(reading: Extract<Reading, { kind: 'width' }>): number {
  return reading.left[0].startsWith('T') ? 1 - reading.at : reading.at;
}

/** A reading in words, as `bottom width wb`. */
export function readingWords(reading: Reading): string {
  const key = openingKeyOf(reading);
  const words = openingChecklist.find((entry) => entry.key === key)?.words;
  if (words !== undefined) return `${words} ${reading.id}`;
  if (reading.kind === 'width') return `width ${reading.id}`;
  if (reading.kind === 'tick') return `tick of ${reading.point} on board ${reading.board} ${reading.id}`;
  if (reading.kind === 'twist') return `gap of the strings ${reading.id}`;
  if (reading.kind === 'thickness') return `thickness at ${reading.place} ${reading.id}`;
  const line = `${reading.from}–${reading.to}`;
  if (reading.kind === 'offset') return `offset of ${reading.point} from ${line} ${reading.id}`;
  if (reading.kind === 'ordinate') return `ordinate of ${reading.point} from ${line} ${reading.id}`;
  if (reading.kind === 'angle') return `angle ${reading.from}–${reading.at}–${reading.to} ${reading.id}`;
  if (reading.kind === 'bow') return `bow of ${edgeWords(reading)} ${reading.id}`;
  const kind = { distance: 'distance', plumb: 'lean', level: 'rise' }[reading.kind];
  return `${kind} ${line} ${reading.id}`;
}
