import type { Box, Outline, Point } from '#core/geometry';
import { innerBox } from './inner-box.ts';
import { boxesOverlap, boxOfMark, drawArea, drawRectangle, drawText, lettering } from './marks.ts';
import { scaled } from './layout-view.ts';
import type { LayoutPart, LayoutView } from './layout-view.ts';
import { drawGrainArrow } from './symbols.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

/** A line of the key: `number` stands in the part when not even its address fits there. */
export interface KeyEntry {
  readonly number: number | null;
  readonly text: string;
  readonly link: string;
}

export interface LaidParts {
  readonly areas: readonly Mark[];
  readonly texts: readonly Mark[];
  /** What could not be written in the parts themselves. */
  readonly key: readonly KeyEntry[];
}

type Line = { readonly text: string; readonly height: number; readonly weight: 'normal' | 'bold' };

/** The parts of a cutting diagram: areas, what is written in them, and a key for those too small to write in. */
export function drawLayoutParts(view: LayoutView, scale: number, labelled: readonly Box[]): LaidParts {
  const texts: Mark[] = [];
  const key: { number: number | null; text: string; link: string }[] = [];
  for (const part of view.parts) {
    const box = roomOf(part, scale);
    const places = placesToWrite(box, labelled);
    const write = (choices: readonly (readonly Line[])[]) => writeInside(part, places, choices, labelled);
    const whole = write(choicesOfLines(part));
    if (whole) {
      texts.push(...whole);
      continue;
    }
    if (view.isKeyBeside) {
      texts.push(...(write(addressOnly(part)) ?? [numberMark(part.address, places[0] ?? box, part.address)]));
      continue;
    }
    const said = [part.sizeText, part.name, part.place].filter((each) => each !== '');
    const text = `${part.address}  ${said.join(' · ')}`;
    const short = write(addressOnly(part));
    const known = key.find((entry) => entry.text === text);
    const number = short ? null : (known?.number ?? key.filter((entry) => entry.number !== null).length + 1);
    if (!known) key.push({ number, text, link: part.address });
    texts.push(...(short ?? [numberMark(String(number), places[0] ?? box, part.address)]));
  }
  const shared = (view.shared ?? []).map((blank) => drawRectangle(scaled(blank, scale), 'thin'));
  const notes = (view.shared ?? []).flatMap(({ note, link }) =>
    note === '' ? [] : [{ number: null, text: note, link }],
  );
  const once = notes.filter((entry, i) => notes.findIndex(({ text }) => text === entry.text) === i);
  return {
    areas: [...shared, ...view.parts.map((part) => drawPart(part, scale))],
    texts,
    key: view.isKeyBeside ? [] : [...key, ...once],
  };
}

function drawPart(part: LayoutPart, scale: number): Mark {
  if (!part.outline) return drawRectangle(scaled(part, scale), 'thin', 'paper', part.address);
  return drawArea(scaledOutline(part.outline, scale), 'thin', 'paper', part.address);
}

function roomOf(part: LayoutPart, scale: number): Box {
  return part.outline ? innerBox(scaledOutline(part.outline, scale)) : scaled(part, scale);
}

function scaledOutline(outline: Outline, scale: number): Outline {
  return outline.map((point) => ({ ...point, x: point.x * scale, y: point.y * scale }));
}

const deepLabels = 2.6; // a part more than this many labels high keeps its full width for writing

/** Where in a part's box to write, best first: all of it when it is high, beside the labels of cuts, below those at its head. */
function placesToWrite(box: Box, labelled: readonly Box[]): readonly Box[] {
  const near = labelled.filter((label) => boxesOverlap(label, box));
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const beside = near.reduce(
    (left, label) =>
      (label.minX + label.maxX) / 2 < middle.x
        ? { ...left, minX: Math.max(left.minX, Math.min(label.maxX, middle.x)) }
        : { ...left, maxX: Math.min(left.maxX, Math.max(label.minX, middle.x)) },
    box,
  );
  const below = near.reduce(
    (left, label) => ({ ...left, maxY: Math.min(left.maxY, Math.max(label.minY, middle.y)) }),
    box,
  );
  const high = near.every((label) => box.maxY - box.minY > deepLabels * (label.maxY - label.minY));
  return high ? [box, below, beside] : [beside, below];
}

const leastNumber = 1; // mm; smaller figures could not be read at all

function numberMark(text: string, box: Box, link: string): Mark {
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  const fitting = Math.min(lettering.small, h * 0.8, w / textWidth(text, 1, 'bold'));
  const height = Math.max(leastNumber, fitting);
  const at = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 - height / 2 };
  return drawText(at, text, { height, align: 'middle', weight: 'bold', link });
}

/** The first choice of lines that fits in one of the places, lying or standing, and covers no label; null when none does. */
function writeInside(
  part: LayoutPart,
  places: readonly Box[],
  choices: readonly (readonly Line[])[],
  labelled: readonly Box[],
): readonly Mark[] | null {
  for (const lines of choices) {
    for (const box of places) {
      const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
      const written = [
        ...(linesFit(lines, w, h) ? [placeLines(part, lines, box, false)] : []),
        ...(linesFit(lines, h, w) ? [placeLines(part, lines, box, true)] : []),
      ].find((marks) =>
        marks.every((mark) => !labelled.some((label) => boxesOverlap(label, boxOfMark(mark)))),
      );
      if (written) return written;
    }
  }
  return null;
}

/** From the fullest to the shortest; a text that is empty leaves its line out. */
function choicesOfLines(part: LayoutPart): readonly (readonly Line[])[] {
  const address = (height: number): Line => ({ text: part.address, height, weight: 'bold' });
  const line = (text: string, height: number): Line => ({ text, height, weight: 'normal' });
  const { huge, large, usual, small, fine } = lettering;
  const oneRow = (height: number): Line => ({
    text: `${part.address}  ${part.sizeText}`,
    height,
    weight: 'bold',
  });
  const inOneRow = `${part.address}  ${[part.sizeText, part.place].filter((text) => text !== '').join(' · ')}`;
  const choices: readonly (readonly Line[])[] = [
    [address(huge), line(part.sizeText, usual), line(part.name, small), line(part.place, small)],
    [address(large), line(part.sizeText, usual), line(part.place, small)],
    [address(large), line(part.sizeText, small), line(part.place, fine)],
    [address(usual), line(part.sizeText, small), line(part.place, fine)],
    [oneRow(usual), line(part.place, small)],
    [oneRow(small), line(part.place, fine)],
    [{ text: inOneRow, height: small, weight: 'bold' }],
    // larger at the price of the place: it is read at arm's length
    part.outline ? [] : [oneRow(small)],
    [{ text: inOneRow, height: fine, weight: 'bold' }],
  ];
  return choices.map((lines) => lines.filter(({ text }) => text !== '')).filter((lines) => lines.length > 0);
}

function addressOnly(part: LayoutPart): readonly (readonly Line[])[] {
  const { large, usual, small, fine } = lettering;
  return [large, usual, small, fine].map((height) => [{ text: part.address, height, weight: 'bold' }]);
}

/** Of lines under each other; one by itself may have less, to be as large as can be. */
const leadingOf = (lines: readonly Line[]) => (lines.length === 1 ? 1.05 : 1.5);
const arrowRoom = 3; // mm, for the grain arrow beside or under the lines

const heightOf = (lines: readonly Line[]) =>
  lines.reduce((sum, line) => sum + line.height * leadingOf(lines), 0);
const widthOf = (lines: readonly Line[]) =>
  Math.max(...lines.map((l) => textWidth(l.text, l.height, l.weight)));

function linesFit(lines: readonly Line[], along: number, across: number): boolean {
  return widthOf(lines) + 2 <= along && heightOf(lines) + 0.6 <= across;
}

function placeLines(part: LayoutPart, lines: readonly Line[], box: Box, standing: boolean): readonly Mark[] {
  const centre: Point = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  const across = standing ? w : h;
  const leading = leadingOf(lines);
  const arrow = across >= heightOf(lines) + arrowRoom + 1.5 ? arrowRoom : 0;
  // `down` runs from the first line to the last: towards the bottom when lying, to the right when standing
  let down = -(heightOf(lines) + arrow) / 2;
  const place = (distance: number, along = 0): Point =>
    standing
      ? { x: centre.x + distance, y: centre.y + along }
      : { x: centre.x + along, y: centre.y - distance };
  const turn = standing ? { turn: Math.PI / 2 } : {};
  const marks: Mark[] = lines.map((line) => {
    down += line.height * leading;
    const { text, height, weight } = line;
    const at = place(down - (line.height * (leading - 1)) / 2);
    return drawText(at, text, { height, weight, align: 'middle', link: part.address, ...turn });
  });
  if (part.grain === 'any') return marks;
  const angle = part.grain === 'along' ? 0 : Math.PI / 2;
  if (arrow > 0 && (standing ? part.grain === 'across' : part.grain === 'along')) {
    return [
      ...marks,
      ...drawGrainArrow(place(down + arrow / 2), Math.min(14, (standing ? h : w) * 0.5), angle),
    ];
  }
  return [...marks, ...cornerArrow(box, angle, lines, standing)];
}

/** The grain arrow in a free end of the part, where there is one; left out when the lines leave no room. */
function cornerArrow(box: Box, angle: number, lines: readonly Line[], standing: boolean): readonly Mark[] {
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  const free = ((standing ? h : w) - widthOf(lines)) / 2 - 1;
  const across = (standing ? w : h) - 1.5;
  const lengthwise = (angle === 0) !== standing;
  const length = lengthwise ? Math.min(10, free - 1) : Math.min(8, across);
  const thick = lengthwise ? across : free;
  if (length < 3.5 || thick < 2) return [];
  const from = lengthwise ? length / 2 + 1 : 2.5;
  const at = standing
    ? { x: (box.minX + box.maxX) / 2, y: box.minY + from }
    : { x: box.minX + from, y: (box.minY + box.maxY) / 2 };
  return drawGrainArrow(at, length, angle);
}
