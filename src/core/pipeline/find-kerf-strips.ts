import type { Trim } from '#core/cutting';
import type { Problem } from '#core/problems';
import type { StockLine } from '#core/project';
import type { LengthSystem } from '#core/units';

import type { Need } from './need.ts';
import { usableOf } from './stock-fit.ts';
import { showSizeIn } from './words.ts';

/** What a row of equal parts is cut from. */
interface Row {
  readonly line: StockLine;
  /** Width of the strips, or length of the pieces. */
  readonly size: number;
  /** How many seem to come out. */
  readonly count: number;
  /** What they need with the kerfs between them. */
  readonly need: number;
  readonly has: number;
}

/**
 * Equal strips (of a batten: lengths) that would come out of a piece of stock in whole numbers if the saw took nothing, but
 * just do not with the kerfs between them (joinery E3, G22): what one reckons in one's head. The nearest miss of a group.
 */
export function findKerfStrips(
  needs: readonly Need[],
  lines: readonly StockLine[],
  saw: { readonly kerf: number; readonly trim: Trim },
  { form, units = 'mm' }: { readonly form: 'sheet' | 'board' | 'batten'; readonly units?: LengthSystem },
): readonly Problem[] {
  const along = form === 'batten' ? 'length' : 'width';
  const sizes = new Map<number, Need[]>();
  for (const need of needs) sizes.set(need[along], [...(sizes.get(need[along]) ?? []), need]);
  const rows = [...sizes].flatMap(([size, same]) => {
    const wanted = same.reduce((sum, need) => sum + need.count, 0);
    const row = lines.flatMap((line) => rowOn(line, size, wanted, { ...saw, along }) ?? [])[0];
    return row ? [{ row, same }] : [];
  });
  const [nearest] = rows.sort((a, b) => missOf(a.row) - missOf(b.row));
  return nearest ? [sayRow(nearest.row, nearest.same, { form, units })] : [];
}

function missOf({ need, has }: Row): number {
  return need - has;
}

/** A row that misses by more than this share of a strip deceives nobody. */
const deceiving = 0.5;

function rowOn(
  line: StockLine,
  size: number,
  wanted: number,
  saw: { readonly kerf: number; readonly trim: Trim; readonly along: 'length' | 'width' },
): Row | null {
  const has = usableOf(line, saw.trim)[saw.along];
  const count = Math.floor((has + 1e-9) / size);
  const need = count * size + (count - 1) * saw.kerf;
  const isMissed = need > has + 1e-9 && need - has < deceiving * size;
  return count >= 2 && count <= wanted && isMissed ? { line, size, count, need, has } : null;
}

function sayRow(
  { line, size, count, need, has }: Row,
  same: readonly Need[],
  { form, units }: { readonly form: 'sheet' | 'board' | 'batten'; readonly units: LengthSystem },
): Problem {
  const showSize = (...sizes: readonly number[]): string => showSizeIn(units, ...sizes);
  const parts = [...new Set(same.flatMap((one) => one.parts.map(({ part }) => part)))];
  const named =
    parts.length > 4 ? `${parts.slice(0, 4).join(', ')} and ${parts.length - 4} more` : parts.join(', ');
  const [what, small] = form === 'batten' ? ['pieces', 'short'] : ['strips', 'narrow'];
  return {
    severity: 'note',
    code: 'kerf-takes-a-strip',
    about: parts[0],
    message: `${count} ${what} of ${showSize(size)} (${named}) need ${showSize(need)} with the kerfs between them; the ${line.form} ${showSize(line.length, line.width, line.thickness)} has ${showSize(has)} inside its trims: the last one would be ${showSize(need - has)} too ${small}.`,
    remedy: `The plan takes ${count - 1} from it; a thinner blade, or parts ${showSize(Math.ceil((10 * (need - has)) / count) / 10)} ${small === 'narrow' ? 'narrower' : 'shorter'}, would give all.`,
    source: 'joinery E3, G22',
  };
}
