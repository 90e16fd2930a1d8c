import { sequenceCuts, type Layout, type SawStep } from '#core/cutting';
import type { LengthSystem } from '#core/units';

import type { CuttingGroup } from './types.ts';
import { showSizeIn } from './words.ts';

/** One pass of the saw in words: what it is called on the diagram, what is done, and where to set the fence. */
export interface SawLine {
  readonly label: string;
  readonly words: string;
  readonly fence: string;
}

const verbs: Readonly<Record<SawStep['cut'], string>> = { along: 'rip the', across: 'cut across the' };

/** The passes of the saw for one layout, in order; none for a layout that is not sawn piece by piece. */
export function listSawOrder(
  { job, form }: Pick<CuttingGroup, 'job' | 'form'>,
  layout: Layout,
  units: LengthSystem,
): readonly SawLine[] {
  return sequenceCuts(layout, job.kerf ?? 0).steps.map(({ label, cut, piece, fence }) => ({
    label,
    // what is no sheet goes by the name of what is sawn
    words: `${verbs[cut]} ${form === 'sheet' ? piece : piece.replace(/sheet$/, form)}`,
    fence: showSizeIn(units, fence),
  }));
}
