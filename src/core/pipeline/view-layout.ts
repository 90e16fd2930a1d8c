import { sequenceCuts, type Layout, type Rectangle } from '#core/cutting';
import { formatSize, type LayoutCut, type LayoutView } from '#core/drawing';
import type { LengthSystem } from '#core/units';

import { expandLayout } from './expand-layout.ts';
import { pairNotes } from './interlock/view-pairs.ts';
import { listPartingCuts } from './parting-cuts.ts';
import { usableOf } from './stock-fit.ts';
import type { CuttingGroup, PlannedGroup, Understanding } from './types.ts';
import { countWords, showSizeIn } from './words.ts';

/** The paper a diagram is for: its width in mm, and the unit of the sizes on it, mm when left out. */
export interface LayoutPaper {
  readonly width: number;
  readonly units?: LengthSystem;
}

/** All that the diagram of one layout shows. Throws when the plan has no such layout. */
export function viewLayout(
  understanding: Understanding,
  { group, plan }: PlannedGroup,
  index: number,
  { width, units }: LayoutPaper,
): LayoutView {
  const layout = plan.layouts[index];
  const stock = group.job.stock.find((each) => each.id === layout?.stock);
  if (!layout || !stock) throw new Error(`no layout ${index} in ${group.id}`);
  const size = { length: stock.length, width: stock.width ?? group.section.width ?? 0 };
  const name = showSizeIn(units ?? 'mm', size.length, size.width);
  const times = layout.times > 1 ? ` · cut ${countWords(layout.times, group.form)} like this` : '';
  return {
    title: `${group.title} · ${name}, diagram ${index + 1} of ${plan.layouts.length}${times}`,
    form: group.form,
    stock: size,
    usable: usableRectangle(group, size),
    kerf: group.job.kerf ?? 0,
    keepOut: stock.keepOut ?? [],
    parts: viewParts(understanding, group, { layout, units }),
    shared: sharedBlanks(understanding, group, layout),
    cuts: viewCuts(group, layout),
    leftovers: layout.leftovers.map((left) => ({
      x: left.x,
      y: left.y ?? 0,
      length: left.length,
      width: left.width ?? size.width,
    })),
    width,
    ...(units && { units }),
  };
}

function usableRectangle(
  group: CuttingGroup,
  size: { readonly length: number; readonly width: number },
): Rectangle {
  const trim = group.job.trim ?? {};
  return { x: trim.left ?? 0, y: trim.bottom ?? 0, ...usableOf(size, trim) };
}

function viewParts(
  understanding: Understanding,
  group: CuttingGroup,
  { layout, units }: { readonly layout: Layout; readonly units: LengthSystem | undefined },
): LayoutView['parts'] {
  const parts = understanding.pieces.flatMap((piece) => piece.parts);
  return expandLayout(group, layout).map((expanded) => {
    const part = parts.find((each) => each.id === expanded.part);
    return {
      address: expanded.part,
      name: `${part?.name ?? expanded.part}${part?.staves ? ', stave' : ''}`,
      sizeText: expanded.size.map((value) => formatSize(value, units)).join(' × '),
      place: expanded.place,
      x: expanded.x,
      y: expanded.y,
      length: expanded.length,
      width: expanded.width,
      ...(expanded.outline && { outline: expanded.outline }),
      grain: part?.grain === 'any' ? 'any' : 'along',
      turned: expanded.turned,
    };
  });
}

/** Where the blanks lie that two shapes share. */
function sharedBlanks(
  understanding: Understanding,
  group: CuttingGroup,
  layout: Layout,
): NonNullable<LayoutView['shared']> {
  const notes = pairNotes(understanding, group);
  return layout.placed.flatMap(({ id, x, y = 0, length, width = 0 }) => {
    const note = notes.get(id);
    const link = group.blanks.find((blank) => blank.id === id)?.parts[0]?.part ?? id;
    return note === undefined ? [] : [{ x, y, length, width, note, link }];
  });
}

/** The saw lines in order: the layout's own, then those that part its strips and mother blanks. */
function viewCuts(group: CuttingGroup, layout: Layout): readonly LayoutCut[] {
  const { steps } = sequenceCuts(layout, group.job.kerf ?? 0);
  const barWidth = group.section.width ?? 0;
  const own = steps.map((step): LayoutCut => {
    const { x1, y1, x2, y2 } = step.line;
    return { label: step.label, order: step.order, x1, y1, x2, y2: group.form === 'batten' ? barWidth : y2 };
  });
  const further = listPartingCuts(group, layout).map(({ label, x1, y1, x2, y2 }, index): LayoutCut => ({
    ...{ label, x1, y1, x2, y2 },
    order: own.length + index + 1,
  }));
  return [...own, ...further];
}
