import type { AssemblyStep, Part } from './types.ts';

/** A step as its builder knows it; each follows the one before. */
export interface StepDraft {
  readonly id: string;
  readonly text: string;
  readonly place: AssemblyStep['place'];
  readonly minutes: number;
  readonly parts?: readonly Part[];
  readonly take?: readonly string[];
  readonly elsewhere?: AssemblyStep['elsewhere'];
}

/** Steps in the order given, each after the one before. */
export function chainSteps(drafts: readonly StepDraft[]): readonly AssemblyStep[] {
  return drafts.map((draft, i) => ({
    id: draft.id,
    text: draft.text,
    place: draft.place,
    minutes: draft.minutes,
    parts: (draft.parts ?? []).map((part) => part.id),
    after: i === 0 ? [] : [drafts[i - 1]?.id ?? ''],
    ...(draft.take && { take: draft.take }),
    ...(draft.elsewhere && { elsewhere: draft.elsewhere }),
  }));
}
