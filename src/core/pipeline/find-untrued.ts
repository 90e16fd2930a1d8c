import { worstOutOfSquare } from '#core/materials';
import type { Problem } from '#core/problems';
import type { SawProfile, StockLine } from '#core/project';
import type { LengthSystem } from '#core/units';

import { showSizeIn } from './words.ts';

/** Sheets whose trim is too narrow to true what the mill's tolerance may have left out of square (joinery E1). */
export function findUntrued(
  lines: readonly StockLine[],
  saw: SawProfile,
  units: LengthSystem = 'mm',
): readonly Problem[] {
  const showSize = (...sizes: readonly number[]): string => showSizeIn(units, ...sizes);
  const { left = 0, right = 0, bottom = 0, top = 0 } = saw.trim;
  return lines.flatMap((line): Problem[] => {
    if (line.form !== 'sheet') return [];
    const worst = worstOutOfSquare(line.length, line.width);
    const atEnd = worst.acrossWidth - (left + right);
    const alongEdge = worst.overLength - (bottom + top);
    if (atEnd <= 0 && alongEdge <= 0) return [];
    const [where, need, trim] =
      atEnd > alongEdge
        ? ['ends', worst.acrossWidth, left + right]
        : ['edges', worst.overLength, bottom + top];
    return [
      {
        severity: 'warn',
        code: 'trim-does-not-true',
        about: line.id,
        message: `The sheet ${showSize(line.length, line.width)} may come ${showSize(need)} out of square: its diagonals may differ by ${showSize(worst.diagonalDifference)}. The trim at its ${where} takes off ${showSize(trim)} in all.`,
        remedy: 'Measure both diagonals of the sheet, or allow more trim on the sheet saw.',
        source: 'joinery E1',
      },
    ];
  });
}
