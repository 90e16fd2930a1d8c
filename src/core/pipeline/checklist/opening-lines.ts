import { openingChecklist, type Reading } from '#core/measuring';

import { ask } from './asked.ts';
import type { OpeningReadingKey } from './topic.ts';
import type { AskedLine, ReadingToTake } from './types.ts';

const left = ['BL', 'TL'] as const;
const right = ['BR', 'TR'] as const;
const sill = ['BL', 'BR'] as const;
const head = ['TL', 'TR'] as const;

const sides = [
  { key: 'bow-sill', name: 'sill', from: 'BL', to: 'BR' },
  { key: 'bow-right', name: 'right jamb', from: 'BR', to: 'TR' },
  { key: 'bow-head', name: 'head', from: 'TR', to: 'TL' },
  { key: 'bow-left', name: 'left jamb', from: 'TL', to: 'BL' },
] as const;

/** Places where a bulkhead's thickness is taken. Source: joinery A10, row 1. */
const places = ['left low', 'left middle', 'left high', 'right low', 'right middle', 'right high'];

/** The lines of an opening for the readings that its pieces ask for, in the order of one visit. */
export function openingLines(wanted: readonly OpeningReadingKey[]): readonly AskedLine[] {
  const order: readonly OpeningReadingKey[] = [
    ...(['wb', 'w13', 'wm', 'w23', 'wt', 'hl', 'hm', 'hr', 'd1', 'd2'] as const),
    ...(['pl', 'pr', 'ls', 'lh', 'bows', 'twist', 'thickness'] as const),
  ];
  return order.filter((key) => wanted.includes(key)).flatMap(linesOf);
}

function linesOf(key: OpeningReadingKey): readonly AskedLine[] {
  switch (key) {
    case 'wm':
      return [across('wm', 'Width at mid height', 'From jamb to jamb, half way up.', { left, right })];
    case 'hm':
      return [
        across('hm', 'Height in the middle', 'From sill to head, half way across.', {
          left: sill,
          right: head,
        }),
      ];
    case 'bows':
      return sides.map(({ name, ...side }) =>
        ask(
          side.key,
          `Bow of the ${name}`,
          'Straightedge from corner to corner: the gap in the middle; minus where it bulges inwards.',
          {
            stage: 'strings',
            method: 'M7',
            reading: { id: side.key, kind: 'bow', method: 'M7', from: side.from, to: side.to },
          },
        ),
      );
    case 'twist':
      return [
        ask('twist', 'Twist by two strings', 'Strings from corner to corner: their gap where they cross.', {
          stage: 'strings',
          method: 'M8',
          reading: { id: 'twist', kind: 'twist', method: 'M8', first: ['BL', 'TR'], second: ['BR', 'TL'] },
        }),
      ];
    case 'thickness':
      return places.map((place, at) =>
        ask(
          `t${at + 1}`,
          `Thickness, ${place}`,
          'Caliper over the bare edge of the bulkhead, lining and all that stays.',
          {
            stage: 'strings',
            method: 'M5',
            reading: { id: `t${at + 1}`, kind: 'thickness', method: 'M5', place },
          },
        ),
      );
    default:
      return standard(key);
  }
}

function across(
  id: string,
  text: string,
  where: string,
  edges: Pick<Extract<Reading, { kind: 'width' }>, 'left' | 'right'>,
): AskedLine {
  return ask(id, text, where, {
    method: 'M1',
    reading: { id, kind: 'width', method: 'M1', ...edges, at: 0.5 },
  });
}

/** One of the twelve. */
function standard(key: OpeningReadingKey): readonly AskedLine[] {
  const entry = openingChecklist.find((line) => line.key === key);
  if (!entry) return [];
  const { words, where, method, kind, from, to, at = 0.5 } = entry;
  const common = { id: key, method };
  const reading: ReadingToTake =
    kind === 'width' ? { ...common, kind, left, right, at } : { ...common, kind, from, to };
  return [ask(key, words.charAt(0).toUpperCase() + words.slice(1), where, { method, reading })];
}
