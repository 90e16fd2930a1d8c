import { textWidth, type Drawing, type Mark } from '#core/drawing';
import { listSawOrder, type PlannedGroup, type SawLine } from '#core/pipeline';
import type { LengthSystem } from '#core/units';

/** Lettering, lines and columns of the list, mm. */
const height = 3;
const lineHeight = 5.2;
const heading = 11;
const gap = 5;

/**
 * The passes of the saw of one diagram, numbered as they follow each other, in columns down the room given; null where
 * nothing is sawn piece by piece. The figure is where the fence stands.
 */
export function drawSawOrder(
  { group, plan }: PlannedGroup,
  index: number,
  { room, units }: { readonly room: number; readonly units: LengthSystem },
): Drawing | null {
  const layout = plan.layouts[index];
  const lines = layout ? listSawOrder(group, layout, units) : [];
  if (lines.length === 0) return null;
  const widths = widthsOf(lines);
  const column = widths.number + widths.label + widths.words + widths.fence + gap;
  const columns = Math.max(1, Math.floor((room + gap) / column));
  const rows = Math.ceil(lines.length / columns);
  const marks = lines.flatMap((line, at) => {
    const x = Math.floor(at / rows) * column;
    const y = -heading - ((at % rows) + 1) * lineHeight;
    return drawLine(line, at + 1, { x, y, widths });
  });
  const title = `Saw in this order: ${group.title}, diagram ${index + 1}`;
  const head: readonly Mark[] = [
    { ...text({ x: 0, y: -5 }, title), weight: 'bold' },
    {
      ...text({ x: 0, y: -9 }, 'the fence: from the low edge in hand to the near side of the kerf'),
      tone: 'soft',
    },
  ];
  const bounds = { minX: 0, minY: -heading - rows * lineHeight - 2, maxX: room, maxY: 0 };
  return { title, scale: 1, bounds, marks: [...head, ...marks] };
}

interface Widths {
  readonly number: number;
  readonly label: number;
  readonly words: number;
  readonly fence: number;
}

function widthsOf(lines: readonly SawLine[]): Widths {
  const widest = (of: (line: SawLine) => string, weight: 'bold' | 'normal'): number =>
    Math.max(...lines.map((line) => textWidth(of(line), height, weight))) + 2;
  return {
    number: textWidth(`${lines.length}.`, height) + 2,
    label: widest(({ label }) => label, 'bold'),
    words: widest(({ words }) => words, 'normal'),
    fence: widest(({ fence }) => fence, 'bold'),
  };
}

function drawLine(
  { label, words, fence }: SawLine,
  number: number,
  { x, y, widths }: { readonly x: number; readonly y: number; readonly widths: Widths },
): readonly Mark[] {
  const from = x + widths.number;
  const end = from + widths.label + widths.words + widths.fence;
  return [
    { ...text({ x, y }, `${number}.`), tone: 'soft' },
    { ...text({ x: from, y }, label), weight: 'bold' },
    text({ x: from + widths.label, y }, words),
    { ...text({ x: end, y }, fence), weight: 'bold', align: 'end' },
  ];
}

function text(
  at: { readonly x: number; readonly y: number },
  words: string,
): Extract<Mark, { kind: 'text' }> {
  return { kind: 'text', at, text: words, height, align: 'start' };
}
