import { describe, expect, test } from 'vitest';

import type { CutNode, CuttingPlan } from '#core/cutting';
import { findRemainders, groupParts, type CuttingGroup } from '#core/pipeline';

import { makePart, makePiece, makeProject, makeStock } from './made-up.ts';

const sheet = { length: 2430, width: 1210 };

function groupOf(...parts: readonly (readonly [number, number])[]): CuttingGroup {
  const made = parts.map(([length, width], index) => makePart(`A${index + 1}`, [length, width, 9]));
  const [group] = groupParts(makeProject([makeStock('full')]), [makePiece(made)]).groups;
  if (!group) throw new Error('no group');
  return group;
}

function planOf(cuts: CutNode): CuttingPlan {
  const layout = { stock: 'full', times: 1, placed: [], cuts, leftovers: [] };
  return {
    ...{ cost: 60, bound: 60, proven: true, seconds: 0, stockUsed: [], unplaced: [], findings: [] },
    layouts: [layout],
  };
}

/** Two strips as long as the sheet, the lower 600 wide; the upper is what the kerf of 2.2 leaves. */
function twoStrips(upper: CutNode): CutNode {
  const lower = { x: 10, y: 10, length: 2430, width: 600 };
  return {
    ...{ x: 10, y: 10, ...sheet, cut: 'along', at: 610 },
    children: [{ ...lower, leftover: true }, upper],
  };
}

const rest = { x: 10, y: 612.2, length: 2430, width: 607.8 };

// joinery E2: no precise part on the side that takes the accumulated error of the kerf, unless there is 2 to spare
describe('parts that are what the saw leaves', () => {
  test('a part as wide as what is left of the sheet is named, with the width to set from the far edge', () => {
    const part: CutNode = {
      ...{ ...rest, cut: 'across', at: 710 },
      children: [
        { ...rest, length: 700, part: 'A1' },
        { ...rest, x: 712.2, length: 1727.8, leftover: true },
      ],
    };
    const [finding] = findRemainders(groupOf([700, 607.8]), planOf(twoStrips(part)));
    expect(finding).toMatchObject({ severity: 'note', code: 'part-is-remainder', about: 'ply' });
    expect(finding?.message).toContain('A1 (607.8 mm)');
    expect(finding?.remedy).toContain('far edge');
  });

  test('a part with a cut of its own on each side is not', () => {
    const strip = { ...rest, width: 500 };
    const trimmed: CutNode = {
      ...{ ...rest, cut: 'along', at: 1112.2 },
      children: [
        {
          ...{ ...strip, cut: 'across', at: 710 },
          children: [
            { ...strip, length: 700, part: 'A1' },
            { ...strip, x: 712.2, length: 1727.8, leftover: true },
          ],
        },
        { x: 10, y: 1114.4, length: 2430, width: 105.6, waste: true },
      ],
    };
    expect(findRemainders(groupOf([700, 500]), planOf(twoStrips(trimmed)))).toEqual([]);
  });

  test('blanks of solid timber are planed to size: nothing is said of them', () => {
    const group: CuttingGroup = { ...groupOf([2430, 607.8]), form: 'board' };
    expect(findRemainders(group, planOf(twoStrips({ ...rest, part: 'A1' })))).toEqual([]);
  });
});
