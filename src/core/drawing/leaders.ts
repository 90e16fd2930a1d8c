import type { Box, Point } from '#core/geometry';
import { drawCircle, drawLine, drawRectangle, drawText, lettering } from './marks.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

export interface Tag {
  readonly text: string;
  /** What it names. */
  readonly at: Point;
  readonly link?: string;
}

/** Text on a patch of paper, so that hatching does not run through the letters; centred on a point. */
export function drawPlate(
  at: Point,
  text: string,
  style: { height: number; link?: string; turn?: number },
): readonly Mark[] {
  const { height, link } = style;
  const half = textWidth(text, height, 'bold') / 2 + 0.8;
  const tall = height / 2 + 0.7;
  const [w, h] = style.turn ? [tall, half] : [half, tall];
  const box: Box = { minX: at.x - w, minY: at.y - h, maxX: at.x + w, maxY: at.y + h };
  const base = style.turn ? { x: at.x + height / 2, y: at.y } : { x: at.x, y: at.y - height / 2 };
  return [
    drawRectangle(box, 'none', 'paper', link),
    drawText(base, text, {
      height,
      align: 'middle',
      weight: 'bold',
      ...(style.turn && { turn: Math.PI / 2 }),
      ...(link !== undefined && { link }),
    }),
  ];
}

/** More tags of one address than this say no more than one with their number. */
const mostAlike = 3;

/** One tag, `14 × V1` on the topmost, in place of more than three of the same text; none where it is written on some of them. */
export function mergeTags<T extends Tag>(tags: readonly T[], written: ReadonlySet<string>): readonly T[] {
  const byText = new Map<string, readonly T[]>();
  for (const tag of tags) byText.set(tag.text, [...(byText.get(tag.text) ?? []), tag]);
  return [...byText.values()].flatMap((alike) => {
    const [top] = [...alike].sort((a, b) => b.at.y - a.at.y);
    if (alike.length <= mostAlike || !top) return alike;
    return written.has(top.text) ? [] : [{ ...top, text: `${alike.length} × ${top.text}` }];
  });
}

/** As many tags as stand in columns `tall` left and right of a box; those named first stay. */
export function fitTags(
  tags: readonly Tag[],
  box: Box,
  tall: number,
  height: number = lettering.usual,
): readonly Tag[] {
  const most = Math.max(1, Math.floor(tall / (height * tagPitch)));
  const middle = (box.minX + box.maxX) / 2;
  const left = tags.filter((tag) => tag.at.x < middle);
  const right = tags.filter((tag) => tag.at.x >= middle);
  return [...left.slice(0, most), ...right.slice(0, most)];
}

/** Heights of lettering from tag to tag. */
const tagPitch = 1.6;

/** Tags in columns left and right of a box, each with a leader to what it names; columns are spread so that none touch. */
export function drawLeaders(
  tags: readonly Tag[],
  box: Box,
  height: number = lettering.usual,
): readonly Mark[] {
  const middle = (box.minX + box.maxX) / 2;
  const left = tags.filter((tag) => tag.at.x < middle);
  const right = tags.filter((tag) => tag.at.x >= middle);
  return [
    ...drawColumn(left, box.minX - 7, height, 'end'),
    ...drawColumn(right, box.maxX + 7, height, 'start'),
  ];
}

function drawColumn(
  tags: readonly Tag[],
  x: number,
  height: number,
  align: 'start' | 'end',
): readonly Mark[] {
  const sorted = [...tags].sort((a, b) => b.at.y - a.at.y);
  const places = spreadDown(
    sorted.map((tag) => tag.at.y),
    height * tagPitch,
  );
  const toThing = align === 'end' ? 1 : -1;
  return sorted.flatMap((tag, i) => {
    const y = places[i] ?? tag.at.y;
    return [
      drawLine([{ x: x + toThing, y }, { x: x + toThing * 3, y }, tag.at], 'thin', tag.link),
      drawCircle(tag.at, 0.5, 'none', 'ink'),
      drawRectangle(patchOf(tag.text, { x, y }, height, align), 'none', 'paper', tag.link),
      drawText({ x, y: y - height / 2 }, tag.text, {
        height,
        align,
        weight: 'bold',
        ...(tag.link !== undefined && { link: tag.link }),
      }),
    ];
  });
}

/** The paper under a tag, so that extension lines do not run through it. */
function patchOf(text: string, at: Point, height: number, align: 'start' | 'end'): Box {
  const width = textWidth(text, height, 'bold');
  const [minX, maxX] = align === 'end' ? [at.x - width, at.x] : [at.x, at.x + width];
  return { minX: minX - 0.4, maxX: maxX + 0.4, minY: at.y - height * 0.7, maxY: at.y + height * 0.7 };
}

/** Heights falling from first to last, at least `step` apart, as near to those wanted as keeps their middle in place. */
export function spreadDown(wanted: readonly number[], step: number): readonly number[] {
  const groups: { sum: number; count: number }[] = [];
  for (const y of wanted) {
    groups.push({ sum: y, count: 1 });
    while (groups.length > 1 && overlaps(groups, step)) mergeLast(groups);
  }
  return groups.flatMap((g) =>
    Array.from({ length: g.count }, (_, i) => g.sum / g.count + ((g.count - 1) / 2 - i) * step),
  );
}

type Group = { sum: number; count: number };

function overlaps(groups: readonly Group[], step: number): boolean {
  const [upper, lower] = groups.slice(-2) as [Group, Group];
  const bottom = upper.sum / upper.count - ((upper.count - 1) / 2) * step;
  const top = lower.sum / lower.count + ((lower.count - 1) / 2) * step;
  return bottom - top < step - 1e-9;
}

function mergeLast(groups: Group[]): void {
  const lower = groups.pop() as Group;
  const upper = groups.pop() as Group;
  groups.push({ sum: upper.sum + lower.sum, count: upper.count + lower.count });
}
