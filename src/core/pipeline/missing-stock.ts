import type { Trim } from '#core/cutting';
import type { Material } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { StockLine } from '#core/project';
import type { LengthSystem } from '#core/units';

import type { Need } from './need.ts';
import { showSizeIn, unitOf } from './words.ts';

/** Thicknesses boards are commonly sold at, mm (common practice, from memory): from the saw, and planed all round. */
const sold = {
  sawn: [16, 19, 22, 25, 32, 38, 50, 63, 75, 100],
  planed: [12, 15, 18, 20, 27, 33, 44, 58, 69, 94],
} as const;

type Show = (...sizes: readonly number[]) => string;

/** What there is to cut it from. */
interface Rack {
  readonly lines: readonly StockLine[];
  readonly trim: Trim;
  readonly units: LengthSystem;
}

/** One sentence for a blank that comes out of nothing in the rack: what it needs, what there is, what to buy. */
export function reportMissingStock(
  need: Need,
  material: Material,
  { lines, trim, units }: Rack,
): readonly Problem[] {
  const show: Show = (...sizes) => showSizeIn(units, ...sizes);
  const asked = describeNeed(need, material, show);
  const there = describeRack(lines, material, show);
  const ids = [...new Set(need.parts.map((part) => part.part))];
  return ids.map((id): Problem => ({
    severity: 'stop',
    code: 'part-without-stock',
    about: id,
    message: `${need.title} needs a blank ${asked} of ${material.name}; ${there}.`,
    remedy: describePurchase(need, material, { trim, units }),
    source: 'joinery D4',
  }));
}

function describeNeed(need: Need, material: Material, show: Show): string {
  return material.kind === 'sheet'
    ? show(need.length, need.width)
    : show(need.length, need.width, need.thickness);
}

function describeRack(lines: readonly StockLine[], material: Material, show: Show): string {
  if (lines.length === 0) return `the rack has no ${material.name} at all`;
  const sizes = lines.map((line) =>
    material.kind === 'sheet'
      ? `${line.form} ${show(line.length, line.width)}`
      : `${line.form} ${show(line.length, line.width, line.thickness)}`,
  );
  return `nothing in the rack is large enough: ${[...new Set(sizes)].join(', ')}, edges trimmed before use`;
}

function describePurchase(
  need: Need,
  material: Material,
  { trim, units }: Pick<Rack, 'trim' | 'units'>,
): string {
  const show: Show = (...sizes) => showSizeIn(units, ...sizes);
  const length = Math.ceil(need.length + (trim.left ?? 0) + (trim.right ?? 0));
  const width = Math.ceil(need.width + (trim.bottom ?? 0) + (trim.top ?? 0));
  if (material.kind === 'sheet')
    return `Add a sheet of at least ${show(length, width)} with the grain along the first, or make the part of two.`;
  const thickness = sold[material.state].find((each) => each >= need.thickness);
  const commonly =
    thickness === undefined
      ? `${show(need.thickness)} ${unitOf(units)} thick, which is thicker than boards are commonly sold: glue it up of two`
      : `${show(thickness)} ${unitOf(units)} thick (the nearest thickness commonly sold)`;
  return `Add a board of at least ${show(length, width)}, ${commonly}, or choose a thinner part.`;
}
