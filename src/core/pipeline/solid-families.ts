import type { Material } from '#core/joinery';
import type { StockLine } from '#core/project';

export type SolidMaterial = Extract<Material, { kind: 'solid' }>;

/** Boards of one thickness, or battens of one section (`width` is 0 for boards: theirs vary). */
export interface SolidFamily {
  readonly form: 'board' | 'batten';
  readonly width: number;
  readonly thickness: number;
  readonly lines: readonly StockLine[];
}

/** Solid stock that can be cut as one job: boards (and offcuts) of one thickness, battens of one section; the leanest first. */
export function collectFamilies(lines: readonly StockLine[]): readonly SolidFamily[] {
  const families = new Map<string, SolidFamily>();
  for (const line of lines) {
    const form = line.form === 'batten' ? 'batten' : 'board';
    const [width, thickness] =
      form === 'batten'
        ? [Math.max(line.width, line.thickness), Math.min(line.width, line.thickness)]
        : [0, line.thickness];
    const key = `${form} ${width} ${thickness}`;
    const found = families.get(key);
    families.set(key, {
      form,
      width,
      thickness,
      lines: [...(found?.lines ?? []), line],
    });
  }
  return [...families.values()].sort(
    (a, b) => a.form.localeCompare(b.form) || a.thickness - b.thickness || a.width - b.width,
  );
}
