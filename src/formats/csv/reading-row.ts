import {
  methods,
  openingChecklist,
  makeOpeningReading,
  type Method,
  type OpeningKey,
  type Reading,
} from '#core/measuring';
import { unreachable } from '#core/problems';
import { parseLength } from '#core/units';

/** The cells of a row by the names of their columns, in lower case; none is empty. */
export type Cells = ReadonlyMap<string, string>;

/** A reading, or what is wrong with its row: a sentence without its beginning. */
export type RowReading = { readonly reading: Reading } | { readonly fault: string };

type Common = Pick<Reading, 'id' | 'value'> &
  Partial<Pick<Reading, 'sigma' | 'method' | 'toFace' | 'note' | 'repeats'>>;

/** What each kind needs beside its value. */
const needs: Readonly<Record<Reading['kind'], readonly string[]>> = {
  distance: ['from', 'to'],
  width: ['left', 'right', 'at'],
  plumb: ['from', 'to'],
  level: ['from', 'to'],
  offset: ['point', 'from', 'to'],
  angle: ['at', 'from', 'to'],
  bow: ['from', 'to'],
  ordinate: ['point', 'from', 'to', 'station'],
  tick: ['board', 'point', 'station'],
  twist: ['first', 'second'],
  thickness: ['place'],
};

/** The reading of one row of a table. */
export function readReadingRow(cells: Cells): RowReading {
  const id = cells.get('id');
  if (id === undefined) return { fault: 'has no id' };
  const kind = kindOf(cells, id);
  if (kind === 'standard') return standardReading(cells, id as OpeningKey);
  if (!isKind(kind))
    return { fault: `is of the kind "${kind}", which is none of ${Object.keys(needs).join(', ')}` };
  const missing = needs[kind].filter((name) => !cells.has(name));
  if (missing.length > 0) return { fault: `is a ${kind} but has no ${missing.join(' and no ')}` };
  const common = readCommon(cells, id, kind);
  if ('fault' in common) return common;
  return makeReading(kind, common, cells);
}

function isKind(kind: string): kind is Reading['kind'] {
  return Object.hasOwn(needs, kind);
}

/** A row that names neither kind nor points is one of the standard readings of an opening, else a distance. */
function kindOf(cells: Cells, id: string): string {
  const kind = cells.get('kind');
  if (kind !== undefined) return kind.toLowerCase();
  const isStandard = openingChecklist.some(({ key }) => key === id);
  return isStandard && !cells.has('from') ? 'standard' : 'distance';
}

function standardReading(cells: Cells, id: OpeningKey): RowReading {
  const common = readCommon(cells, id, 'distance');
  if ('fault' in common) return common;
  const { value, ...options } = common;
  return { reading: makeOpeningReading(id, value, options) };
}

function readCommon(cells: Cells, id: string, kind: Reading['kind']): Common | { readonly fault: string } {
  const read = (name: string): number | null => readNumber(cells.get(name) ?? '', kind);
  const value = read('value');
  if (!cells.has('value')) return { fault: 'has no value' };
  if (value === null)
    return {
      fault: `has the value "${cells.get('value')}", which is no ${kind === 'angle' ? 'angle' : 'length'}`,
    };
  const sigma = read('sigma');
  if (cells.has('sigma') && sigma === null)
    return { fault: `has the sigma "${cells.get('sigma')}", which is no number` };
  const method = cells.get('method')?.toUpperCase();
  if (method !== undefined && !isMethod(method))
    return { fault: `has the method "${method}", which is none of M1 to M14` };
  const again = (cells.get('repeats') ?? '').split(/[;|]/).filter((text) => text.trim() !== '');
  const repeats = again.map((text) => readNumber(text, kind));
  if (repeats.includes(null))
    return { fault: `has the repeats "${cells.get('repeats')}", which are no numbers` };
  const [toFace, note] = [cells.get('toface'), cells.get('note')];
  return {
    id,
    value,
    ...(sigma !== null && { sigma }),
    ...(method !== undefined && { method }),
    ...(toFace !== undefined && { toFace }),
    ...(note !== undefined && { note }),
    ...(repeats.length > 0 && { repeats: repeats.flatMap((each) => each ?? []) }),
  };
}

function isMethod(method: string): method is Method {
  return Object.hasOwn(methods, method);
}

/** mm, also from inches with their sign; an angle in degrees; a decimal comma counts. */
function readNumber(text: string, kind: Reading['kind']): number | null {
  const plain = text
    .trim()
    .replace(/°$/, '')
    .replace(/^([+-]?\d+),(\d+)$/, '$1.$2')
    .replace(/^\u2212/, '-');
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain)) return Number(plain);
  if (kind === 'angle') return null;
  const length = parseLength(plain, 'mm');
  return length.ok ? length.value : null;
}

function makeReading(kind: Reading['kind'], common: Common, cells: Cells): RowReading {
  const text = (name: string): string => cells.get(name) ?? '';
  const fault = findPlaceFault(kind, text);
  if (fault !== null) return { fault };
  const pair = (name: string): readonly [string, string] => pairOf(text(name)) ?? ['', ''];
  const number = (name: string): number => readNumber(text(name), 'distance') ?? 0;
  const ends = { from: text('from'), to: text('to') };
  switch (kind) {
    case 'distance':
    case 'plumb':
    case 'level':
    case 'bow':
      return { reading: { ...common, kind, ...ends } };
    case 'width':
      return { reading: { ...common, kind, left: pair('left'), right: pair('right'), at: number('at') } };
    case 'offset':
      return { reading: { ...common, kind, point: text('point'), ...ends } };
    case 'angle':
      return { reading: { ...common, kind, at: text('at'), ...ends } };
    case 'ordinate':
      return { reading: { ...common, kind, point: text('point'), ...ends, station: number('station') } };
    case 'tick': {
      const reach = cells.has('reach') ? { reach: number('reach') } : {};
      const place = { board: text('board'), point: text('point'), station: number('station') };
      return { reading: { ...common, kind, ...place, ...reach } };
    }
    case 'twist':
      return { reading: { ...common, kind, first: pair('first'), second: pair('second') } };
    case 'thickness':
      return { reading: { ...common, kind, place: text('place') } };
    default:
      return unreachable(kind);
  }
}

/** Where a reading was taken, if that cannot be read. */
function findPlaceFault(kind: Reading['kind'], text: (name: string) => string): string | null {
  const wanted = needs[kind];
  const pair = ['left', 'right', 'first', 'second'].find(
    (name) => wanted.includes(name) && pairOf(text(name)) === null,
  );
  if (pair !== undefined) return `has "${text(pair)}" as its ${pair}; two points are wanted, as "BL TL"`;
  const isLost = (name: string): boolean => readNumber(text(name), 'distance') === null;
  if (kind === 'width' && isLost('at')) return `is taken at "${text('at')}", which is no fraction`;
  if (wanted.includes('station') && isLost('station'))
    return `has the station "${text('station')}", which is no length`;
  return null;
}

/** Two names parted by a blank, a dash or an arrow. */
function pairOf(text: string): readonly [string, string] | null {
  const [a, b, ...more] = text.split(/\s*(?:->|→|[–—>/;|])\s*|\s+/).filter((name) => name !== '');
  return a !== undefined && b !== undefined && more.length === 0 ? [a, b] : null;
}
