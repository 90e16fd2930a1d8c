import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { machineLeast } from './rules.ts';
import type { Part } from './types.ts';

/** One note on the solid parts too small to be worked alone on a machine (joinery D5, G24); none when all are large enough. */
export function checkSmallParts(parts: readonly Part[]): readonly Problem[] {
  const small = parts.filter(isSmall);
  if (small.length === 0) return [];
  return [
    {
      severity: 'note',
      code: 'part-small-for-machines',
      message: `Too small to be planed or ripped alone: ${nameBySize(small).join('; ')}. The planer wants ${sayBulk(machineLeast)}.`,
      remedy:
        'Work them in one larger blank and part them last, or plane them on a carrier; push stick and guard on.',
      source: 'joinery D5, common practice',
    },
  ];
}

/** The parts of one size together, in the order in which the sizes first come. */
function nameBySize(parts: readonly Part[]): readonly string[] {
  const idsOf = new Map<string, string[]>();
  for (const { id, finished } of parts) {
    const size = sayBulk(finished);
    idsOf.set(size, [...(idsOf.get(size) ?? []), id]);
  }
  return [...idsOf].map(([size, ids]) => `${ids.join(', ')} (${size})`);
}

function sayBulk({ length, width, thickness }: Part['finished']): string {
  return [length, width, thickness].map((value) => markSize(value)).join(' × ');
}

function isSmall({ kind, finished }: Part): boolean {
  if (kind === 'sheet') return false;
  return (
    finished.length < machineLeast.length ||
    finished.width < machineLeast.width ||
    finished.thickness < machineLeast.thickness
  );
}
