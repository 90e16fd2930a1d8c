import { checkJob, type CuttingJob, type CuttingPart, type CutRules } from '#core/cutting';
import type { Material } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { SawProfile, StockLine, Tools } from '#core/project';
import type { LengthSystem } from '#core/units';

import { findKerfStrips } from './find-kerf-strips.ts';
import type { Need } from './need.ts';
import { stockOfJob } from './stock-fit.ts';
import type { CuttingGroup } from './types.ts';

/** What a cutting group is made of. */
export interface GroupDraft {
  readonly id: string;
  readonly title: string;
  readonly material: Material;
  readonly form: 'sheet' | 'board' | 'batten';
  /** Unit of the sizes in its findings; mm when left out. */
  readonly units?: LengthSystem;
  readonly section: CuttingGroup['section'];
  readonly saw: SawProfile;
  readonly cuts: CutRules;
  readonly keepLeftover: Tools['keepLeftover'];
  readonly lines: readonly StockLine[];
  readonly needs: readonly Need[];
  readonly findings: readonly Problem[];
}

/** The group with its job as `joggle cut` would be given it. */
export function makeGroup(draft: GroupDraft): CuttingGroup {
  const isBatten = draft.form === 'batten';
  const { trim } = draft.saw;
  const job: CuttingJob = {
    kerf: draft.saw.kerf,
    trim: isBatten ? { left: trim.left ?? 0, right: trim.right ?? 0 } : trim,
    cuts: isBatten ? { style: 'length' } : draft.cuts,
    stock: stockOfJob(draft.lines, draft.form),
    parts: draft.needs.map((need): CuttingPart => ({
      id: need.id,
      length: need.length,
      ...(!isBatten && { width: need.width }),
      count: need.count,
      ...(!isBatten && { turn: need.turn }),
    })),
    keepLeftover: isBatten ? { minLength: draft.keepLeftover.minLength } : draft.keepLeftover,
  };
  return {
    id: draft.id,
    title: draft.title,
    material: draft.material.id,
    form: draft.form,
    section: draft.section,
    saw: draft.saw,
    job,
    blanks: draft.needs.map((need) => ({
      id: need.id,
      ...(need.set !== undefined && { set: need.set }),
      parts: need.parts,
    })),
    findings: [
      ...draft.findings,
      ...findKerfStrips(draft.needs, draft.lines, draft.saw, {
        form: draft.form,
        ...(draft.units && { units: draft.units }),
      }),
      // where nothing fits the stock, the findings of the parts say it: that the job is empty then says nothing
      ...(job.parts.length === 0 ? [] : checkJob(job).map((fault) => ({ ...fault, about: draft.id }))),
    ],
  };
}
