import type { BuiltPiece } from '#core/joinery';
import type { PartChange } from '#core/pipeline';
import { formatLength, type LengthSystem } from '#core/units';
import { sizeWords } from '../rack/words.ts';

const sizes = ['length', 'width', 'thickness'] as const;

/** What became of a part, as `length 1731 → 1729.5 (−1.5)`. */
export function changeWords(change: PartChange, system: LengthSystem): string {
  const { kind, before, after } = change;
  if (kind === 'added') return after ? `new, ${sizeWords(after, system)}` : 'new';
  if (kind === 'removed') return 'no longer there';
  if (kind === 'joints') return 'same size, other outline or joints';
  if (kind === 'count') return 'another number of them';
  if (kind === 'material') return 'of another material';
  if (!before || !after) return '';
  return sizes
    .filter((size) => Math.abs(after[size] - before[size]) > 0.05)
    .map((size) => {
      const by = after[size] - before[size];
      const sign = by > 0 ? '+' : '−';
      const [from, to, step] = [before[size], after[size], Math.abs(by)].map((each) =>
        formatLength(each, { system }),
      );
      return `${size} ${from} → ${to} (${sign}${step})`;
    })
    .join(', ');
}

/** How many parts changed, as `3 parts here and 2 of other pieces`; empty when none did, or the piece is all new. */
export function countChanges(changes: readonly PartChange[], built: BuiltPiece): string {
  const parts = [...new Set(changes.map(({ part }) => part))];
  const added = changes.filter(({ kind, part }) => kind === 'added' && letterOf(part) === built.letter);
  if (added.length > 0 && added.length === built.parts.length) return '';
  const here = parts.filter((part) => letterOf(part) === built.letter).length;
  const elsewhere = parts.length - here;
  const words = (count: number) => `${count} ${count === 1 ? 'part' : 'parts'}`;
  if (here > 0 && elsewhere > 0) return `${words(here)} here and ${elsewhere} of other pieces`;
  if (elsewhere > 0) return `${words(elsewhere)} of other pieces`;
  return here > 0 ? `${words(here)} of this piece` : '';
}

/** The letter of the piece a part belongs to: `AC` of `AC12`. */
export function letterOf(part: string): string {
  return part.replace(/\d+$/, '');
}
