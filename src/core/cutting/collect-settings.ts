import { sequenceCuts } from './sequence-cuts.ts';
import type { Layout } from './types.ts';

/** One setting of the fence and all cuts made at it, over all layouts. */
export interface SawSetting {
  readonly cut: 'along' | 'across';
  readonly fence: number;
  /** Passes of the saw, layouts cut several times counted as often. */
  readonly passes: number;
  readonly cuts: readonly { readonly layout: number; readonly label: string; readonly times: number }[];
}

/**
 * Cuts with equal fence settings together: rips before crosscuts, wide before narrow (joinery E2), so that the fence
 * moves as seldom as can be.
 */
export function collectSettings(layouts: readonly Layout[], kerf: number): readonly SawSetting[] {
  const settings = new Map<
    string,
    { cut: SawSetting['cut']; fence: number; cuts: SawSetting['cuts'][number][] }
  >();
  layouts.forEach((layout, index) => {
    for (const step of sequenceCuts(layout, kerf).steps) {
      const key = `${step.cut} ${step.fence}`;
      const setting = settings.get(key) ?? { cut: step.cut, fence: step.fence, cuts: [] };
      setting.cuts.push({ layout: index, label: step.label, times: layout.times });
      settings.set(key, setting);
    }
  });
  return [...settings.values()]
    .sort((a, b) => (a.cut === b.cut ? b.fence - a.fence : a.cut === 'along' ? -1 : 1))
    .map((setting) => ({ ...setting, passes: setting.cuts.reduce((sum, each) => sum + each.times, 0) }));
}
