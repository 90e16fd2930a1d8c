import { sequenceCuts, type Layout, type SawStep } from '#core/cutting';
import type { LengthSystem } from '#core/units';

import type { SawnGroup } from './expand-layout.ts';
import { pairNotes } from './interlock/view-pairs.ts';
import { listPartingCuts } from './parting-cuts.ts';
import type { CuttingGroup, Understanding } from './types.ts';
import { showSizeIn } from './words.ts';

/** One pass of the saw in words: what it is called on the diagram, what is done, and where to set the fence. */
export interface SawLine {
  readonly label: string;
  readonly words: string;
  readonly fence: string;
}

const verbs: Readonly<Record<SawStep['cut'], string>> = { along: 'rip the', across: 'cut across the' };

/**
 * The passes of the saw for one layout, in order: those of the layout, then those that part its strips and mother blanks. None
 * for a layout that is not sawn piece by piece.
 */
export function listSawOrder(group: SawnGroup, layout: Layout, units: LengthSystem): readonly SawLine[] {
  const { job, form } = group;
  if (job.cuts?.style === 'free') return [];
  const own = sequenceCuts(layout, job.kerf ?? 0).steps.map(({ label, cut, piece, fence }) => ({
    label,
    // what is no sheet goes by the name of what is sawn
    words: `${verbs[cut]} ${form === 'sheet' ? piece : piece.replace(/sheet$/, form)}`,
    fence: showSizeIn(units, fence),
  }));
  const parting = listPartingCuts(group, layout).map(({ label, words, fence }) => ({
    label,
    words,
    fence: showSizeIn(units, fence),
  }));
  return [...own, ...parting];
}

/** What is done after the saw has done its passes, a sentence each: the shapes of a layout that share a blank are parted. */
export function listAfterSaw(
  understanding: Understanding,
  group: CuttingGroup,
  layout: Layout,
): readonly string[] {
  const notes = pairNotes(understanding, group);
  return [...new Set(layout.placed.flatMap(({ id }) => notes.get(id) ?? []))];
}
