import type { Layout, Rectangle } from '#core/cutting';
import type { LayoutView } from '#core/drawing';

import { expandLayout } from './expand-layout.ts';
import { usableOf } from './stock-fit.ts';
import type { CuttingGroup, PlannedGroup, Understanding } from './types.ts';
import { countWords } from './words.ts';

/** All that the diagram of one layout shows, `width` mm of paper wide. Throws when the plan has no such layout. */
export function viewLayout(
  understanding: Understanding,
  { group, plan }: PlannedGroup,
  index: number,
  width: number,
): LayoutView {
  const layout = plan.layouts[index];
  const stock = group.job.stock.find((each) => each.id === layout?.stock);
  if (!layout || !stock) throw new Error(`no layout ${index} in ${group.id}`);
  const size = { length: stock.length, width: stock.width ?? group.section.width ?? 0 };
  const times = layout.times > 1 ? ` · cut ${countWords(layout.times, group.form)} like this` : '';
  return {
    title: `${group.title} · ${stock.id}, diagram ${index + 1} of ${plan.layouts.length}${times}`,
    form: group.form,
    stock: { id: stock.id, ...size },
    usable: usableRectangle(group, size),
    kerf: group.job.kerf ?? 0,
    keepOut: stock.keepOut ?? [],
    parts: viewParts(understanding, group, layout),
    cuts: [],
    leftovers: layout.leftovers.map((left) => ({
      x: left.x,
      y: left.y ?? 0,
      length: left.length,
      width: left.width ?? size.width,
    })),
    width,
  };
}

function usableRectangle(
  group: CuttingGroup,
  size: { readonly length: number; readonly width: number },
): Rectangle {
  const trim = group.job.trim ?? {};
  return { x: trim.left ?? 0, y: trim.bottom ?? 0, ...usableOf(size, trim) };
}

function viewParts(understanding: Understanding, group: CuttingGroup, layout: Layout): LayoutView['parts'] {
  const parts = understanding.pieces.flatMap((piece) => piece.parts);
  return expandLayout(group, layout).map((expanded) => {
    const part = parts.find((each) => each.id === expanded.part);
    return {
      address: expanded.part,
      name: part?.name ?? expanded.part,
      sizeText: expanded.size,
      place: expanded.place,
      x: expanded.x,
      y: expanded.y,
      length: expanded.length,
      width: expanded.width,
      grain: part?.grain === 'any' ? 'any' : 'along',
      turned: expanded.turned,
    };
  });
}
