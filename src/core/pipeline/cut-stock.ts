import type { CuttingPlan } from '#core/cutting';
import type { Part } from '#core/joinery';
import type { MadePart, Project, RackCommand, StockLine } from '#core/project';

import { expandLayout } from './expand-layout.ts';
import { asMade } from './made-parts.ts';
import type { CuttingGroup, Understanding } from './types.ts';

/** What is known of a layout whose stock has just been sawn. */
export interface SawnLayout {
  readonly group: CuttingGroup;
  readonly plan: CuttingPlan;
  readonly index: number;
}

/**
 * The act of having sawn one piece of stock as a layout says: its parts are made, the line has one fewer, and the leftovers
 * worth keeping become offcuts of the rack. Null when there is no such layout.
 */
export function cutStockCommand(
  project: Project,
  understanding: Understanding,
  { group, plan, index }: SawnLayout,
): Extract<RackCommand, { kind: 'cut-stock' }> | null {
  const layout = plan.layouts[index];
  const line = project.stock.find(({ id }) => id === layout?.stock);
  if (!layout || !line) return null;
  const counts = new Map<string, number>();
  for (const { part } of expandLayout(group, layout)) counts.set(part, (counts.get(part) ?? 0) + 1);
  const parts = understanding.pieces.flatMap((piece) => piece.parts);
  return {
    kind: 'cut-stock',
    stock: line.id,
    made: parts.flatMap((part) => {
      const count = counts.get(part.id);
      return count === undefined ? [] : [madeOf(project, part, count)];
    }),
    leftovers: layout.leftovers.map((left, i) => offcutOf(project, line, { ...left, number: i + 1 })),
  };
}

/** What is made of a part by so many blanks; staves count as a part when there are enough to glue it up. */
function madeOf(project: Project, part: Part, blanks: number): MadePart {
  if (!part.staves) return asMade(part, blanks);
  const cut =
    blanks * (part.staves.leaves ?? 1) + (project.made?.find((each) => each.part === part.id)?.staves ?? 0);
  const staves = cut % part.staves.count;
  return { ...asMade(part, Math.floor(cut / part.staves.count)), ...(staves > 0 && { staves }) };
}

function offcutOf(
  project: Project,
  line: StockLine,
  left: { readonly length: number; readonly width?: number; readonly number: number },
): StockLine {
  return {
    id: freeId(project, `${line.id}-left`, left.number),
    material: line.material,
    form: 'offcut',
    length: left.length,
    width: left.width ?? line.width,
    thickness: line.thickness,
    count: 1,
    price: 0,
    owned: true,
  };
}

/** An id no stock line has: those of one sheet are counted on from those of the sheets before. */
function freeId(project: Project, stem: string, number: number): string {
  const taken = new Set(project.stock.map(({ id }) => id));
  const before = project.stock.filter(({ id }) => id.startsWith(stem)).length;
  let next = before + number;
  while (taken.has(`${stem}-${next}`)) next += 100;
  return `${stem}-${next}`;
}
