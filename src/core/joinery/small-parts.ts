import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { machineLeast } from './rules.ts';
import type { Part } from './types.ts';

/** One note on the solid parts too small to be worked alone on a machine (joinery D5, G24); none when all are large enough. */
export function checkSmallParts(parts: readonly Part[]): readonly Problem[] {
  const small = parts.filter(isSmall);
  if (small.length === 0) return [];
  const named = small.map(({ id, finished }) => {
    const size = [finished.length, finished.width, finished.thickness].map((value) => markSize(value));
    return `${id} (${size.join(' × ')})`;
  });
  return [
    {
      severity: 'note',
      code: 'part-small-for-machines',
      message: `Too small to be planed or ripped alone: ${named.join(', ')}; the planer wants ${markSize(machineLeast.length)} × ${markSize(machineLeast.width)} × ${markSize(machineLeast.thickness)}.`,
      remedy:
        'Work them in one larger blank and part them last, or plane them on a carrier; push stick and guard on.',
      source: 'joinery D5, common practice',
    },
  ];
}

function isSmall({ kind, finished }: Part): boolean {
  if (kind === 'sheet') return false;
  return (
    finished.length < machineLeast.length ||
    finished.width < machineLeast.width ||
    finished.thickness < machineLeast.thickness
  );
}
