import { collectSettings, type SawSetting } from '#core/cutting';
import { textWidth, type Drawing, type Mark } from '#core/drawing';
import type { LengthSystem } from '#core/units';
import { countWords, expandLayout, showSizeIn, type PlannedGroup } from '#core/pipeline';

/** Lettering and lines of the list, mm. */
const height = 3.5;
const lineHeight = 6.2;
const rowsPerPage = 38;

/** Where the columns begin, mm. */
const columns = { cut: 0, fence: 28, passes: 54, cuts: 82 } as const;

/** The saw settings of a plan in batches (joinery E2): each fence setting once, with the cuts of all diagrams made at it. */
export function drawSettings(
  { group, plan }: PlannedGroup,
  { room, units }: { readonly room: number; readonly units: LengthSystem },
): readonly Drawing[] {
  const show = (length: number): string => showSizeIn(units, length);
  const fences = collectSettings(plan.layouts, group.job.kerf ?? 0).flatMap((setting) =>
    makeRows(setting, { room, show }),
  );
  const rows = [...fences, ...blankRows({ group, plan }, show)];
  const pages = Math.ceil(rows.length / rowsPerPage);
  return Array.from({ length: pages }, (_, page) =>
    drawRows(
      `Settings of the saw: ${group.title} · kerf ${show(group.job.kerf ?? 0)}`,
      rows.slice(page * rowsPerPage, (page + 1) * rowsPerPage),
      room,
    ),
  );
}

type Row = Partial<Record<keyof typeof columns, string>>;

/** A setting as one row, and more where its cuts do not fit beside it. */
function makeRows(
  setting: SawSetting,
  { room, show }: { readonly room: number; readonly show: (length: number) => string },
): readonly Row[] {
  const labels = setting.cuts.map(
    (cut) => `${cut.layout + 1}:${cut.label}${cut.times > 1 ? ` (×${cut.times})` : ''}`,
  );
  const lines: string[] = [];
  for (const label of labels) {
    const longer = lines.length > 0 ? `${lines.at(-1)}  ${label}` : label;
    if (lines.length > 0 && textWidth(longer, height) <= room - columns.cuts)
      lines[lines.length - 1] = longer;
    else lines.push(label);
  }
  const [first = '', ...rest] = lines;
  const head: Row = {
    cut: setting.cut === 'along' ? 'rip' : 'crosscut',
    fence: show(setting.fence),
    passes: countWords(setting.passes, 'pass', 'passes'),
    cuts: first,
  };
  return [head, ...rest.map((cuts) => ({ cuts }))];
}

/** The cuts inside strips and pairs: the sizes that come off one after the other, from the lower or left edge. */
function blankRows({ group, plan }: PlannedGroup, show: (length: number) => string): readonly Row[] {
  return plan.layouts.flatMap((layout, index) =>
    chunkBlanks(group, expandLayout(group, layout)).map((parts): Row => {
      if (parts.some(({ outline }) => outline))
        return { cut: 'shape', cuts: `${index + 1}: ${parts[0]?.blank ?? ''} by the template of the pair` };
      const isAcross = parts.every((part) => Math.abs(part.x - (parts[0]?.x ?? 0)) < sameEdge);
      const sizes = [...parts]
        .sort((a, b) => (isAcross ? a.y - b.y : a.x - b.x))
        .map((part) => `${part.part} ${show(isAcross ? part.width : part.length)}`);
      return { cut: 'part off', cuts: `${index + 1}: ${sizes.join('  ')}` };
    }),
  );
}

/** Edges nearer than this are one edge, mm. */
const sameEdge = 0.05;

/** The parts of each blank that holds several, as often as it lies there. */
function chunkBlanks(
  group: PlannedGroup['group'],
  parts: ReturnType<typeof expandLayout>,
): readonly ReturnType<typeof expandLayout>[] {
  const chunks: ReturnType<typeof expandLayout>[] = [];
  for (let at = 0; at < parts.length;) {
    const blank = group.blanks.find((each) => each.id === parts[at]?.blank);
    const count = Math.max(1, blank?.parts.length ?? 1);
    if (count > 1) chunks.push(parts.slice(at, at + count));
    at += count;
  }
  return chunks;
}

function drawRows(title: string, rows: readonly Row[], room: number): Drawing {
  const head: Row = { cut: 'cut', fence: 'fence', passes: 'passes', cuts: 'diagram:cut' };
  const top = (rows.length + 2) * lineHeight;
  const texts = [head, ...rows].flatMap((row, index) =>
    Object.entries(row).map(([name, text]): Mark => ({
      kind: 'text',
      at: { x: columns[name as keyof typeof columns], y: top - (index + 2) * lineHeight },
      text,
      height,
      align: 'start',
      weight: index === 0 || name === 'fence' ? 'bold' : 'normal',
      tone: index === 0 ? 'soft' : 'ink',
    })),
  );
  const heading: Mark = {
    kind: 'text',
    at: { x: 0, y: top - 4 },
    text: title,
    height: 4,
    align: 'start',
    weight: 'bold',
  };
  return {
    ...{ title, scale: 1, isUnscaled: true },
    bounds: { minX: 0, minY: 0, maxX: room, maxY: top },
    marks: [heading, ...texts],
  };
}
