import type { Trim } from '#core/cutting';
import type { Material } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { StockLine } from '#core/project';

import type { Need } from './need.ts';
import { showSize } from './words.ts';

/** Thicknesses boards are commonly sold at, mm (common practice, from memory): from the saw, and planed all round. */
const sold = {
  sawn: [16, 19, 22, 25, 32, 38, 50, 63, 75, 100],
  planed: [12, 15, 18, 20, 27, 33, 44, 58, 69, 94],
} as const;

/** One sentence for a blank that comes out of nothing in the rack: what it needs, what there is, what to buy. */
export function reportMissingStock(
  need: Need,
  material: Material,
  lines: readonly StockLine[],
  trim: Trim,
): readonly Problem[] {
  const asked = describeNeed(need, material);
  const there = describeRack(lines, material);
  const ids = [...new Set(need.parts.map((part) => part.part))];
  return ids.map((id): Problem => ({
    severity: 'stop',
    code: 'part-without-stock',
    about: id,
    message: `${need.title} needs a blank ${asked} of ${material.name}; ${there}.`,
    remedy: describePurchase(need, material, trim),
    source: 'joinery D4',
  }));
}

function describeNeed(need: Need, material: Material): string {
  return material.kind === 'sheet'
    ? showSize(need.length, need.width)
    : showSize(need.length, need.width, need.thickness);
}

function describeRack(lines: readonly StockLine[], material: Material): string {
  if (lines.length === 0) return `the rack has no ${material.name} at all`;
  const sizes = lines.map((line) =>
    material.kind === 'sheet'
      ? `${line.form} ${showSize(line.length, line.width)}`
      : `${line.form} ${showSize(line.length, line.width, line.thickness)}`,
  );
  return `nothing in the rack is large enough: ${[...new Set(sizes)].join(', ')}, edges trimmed before use`;
}

function describePurchase(need: Need, material: Material, trim: Trim): string {
  const length = Math.ceil(need.length + (trim.left ?? 0) + (trim.right ?? 0));
  const width = Math.ceil(need.width + (trim.bottom ?? 0) + (trim.top ?? 0));
  if (material.kind === 'sheet')
    return `Add a sheet of at least ${showSize(length, width)} with the grain along the first, or make the part of two.`;
  const thickness = sold[material.state].find((each) => each >= need.thickness);
  const commonly =
    thickness === undefined
      ? `${showSize(need.thickness)} mm thick, which is thicker than boards are commonly sold: glue it up of two`
      : `${thickness} mm thick (the nearest thickness commonly sold)`;
  return `Add a board of at least ${showSize(length, width)}, ${commonly}, or choose a thinner part.`;
}
