import type { CutNode, CuttingPlan } from '#core/cutting';
import type { Problem } from '#core/problems';

import type { CuttingGroup } from './types.ts';
import { listWords, showSize } from './words.ts';

/** Which sides of a piece in hand are not made by a cut of their own, but are what the cuts before have left. */
interface Left {
  readonly length: boolean;
  readonly width: boolean;
}

/**
 * A note on sheet parts that get no last cut of their own: one side of theirs is whatever the cuts before leave of the sheet,
 * so that every error of its size and of the kerf goes into them (joinery E2).
 */
export function findRemainders(group: CuttingGroup, plan: CuttingPlan): readonly Problem[] {
  if (group.form !== 'sheet') return [];
  const found = new Map<string, string>();
  const walk = (node: CutNode, left: Left): void => {
    if ('part' in node && (left.length || left.width))
      for (const { part } of group.blanks.find((blank) => blank.id === node.part)?.parts ?? [])
        if (!found.has(part)) found.set(part, showSize(left.width ? node.width : node.length));
    if (!('cut' in node)) return;
    const side = node.cut === 'along' ? 'width' : 'length';
    walk(node.children[0], { ...left, [side]: false });
    walk(node.children[1], { ...left, [side]: true });
  };
  for (const layout of plan.layouts) if (layout.cuts) walk(layout.cuts, { length: true, width: true });
  if (found.size === 0) return [];
  const parts = [...found].map(([part, size]) => `${part} (${size} mm)`);
  return [
    {
      severity: 'note',
      code: 'part-is-remainder',
      about: group.id,
      message: `${listWords(parts)} of ${group.title}: the size in brackets is what the cuts before leave, with no cut of its own, so that it takes up every error of the kerf and of the sheet.`,
      remedy:
        'Measure the sheet and the kerf first; before the last cut, set the fence to that size from the far edge instead.',
      source: 'joinery E2',
    },
  ];
}
