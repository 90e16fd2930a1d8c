import type { CutNode, Layout, Rectangle } from './types.ts';

/** One pass of the saw, for the person at it. */
export interface SawStep {
  /** From 1, in the order of sawing: the sheet into strips first, then each strip. */
  readonly order: number;
  /** `B` frees strip B; `B2` is the second cut in it; a bare number in one dimension. */
  readonly label: string;
  /** `along` is a rip, `across` a crosscut. */
  readonly cut: 'along' | 'across';
  /** Where to set the fence: from the low edge of the piece in hand to the near side of the kerf. */
  readonly fence: number;
  /** What is in hand: `sheet`, `strip B`, or `rest of strip B`. */
  readonly piece: string;
  readonly pieceRectangle: Rectangle;
  /** Length of the saw line; 0 in one dimension. */
  readonly lineLength: number;
  /** The saw line, along the middle of its kerf, from where the saw enters. */
  readonly line: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number };
}

/** Where a part comes from: the third part freed from strip B. No strip in one dimension and for free layouts. */
export interface PartPlace {
  readonly strip: string | null;
  readonly position: number;
}

export interface SawSequence {
  readonly steps: readonly SawStep[];
  /** One for each of the layout's `placed`, in its order. */
  readonly places: readonly PartPlace[];
}

/** The steps of sawing a layout and the place of each part in them. `free` layouts have places only. */
export function sequenceCuts(layout: Layout, kerf: number): SawSequence {
  if (layout.cuts) return sequenceTree(layout, layout.cuts, kerf);
  const isRow = layout.placed.every((placed) => placed.width === undefined);
  return isRow ? sequenceRow(layout, kerf) : { steps: [], places: placesByPosition(layout) };
}

interface Sequencing {
  readonly kerf: number;
  readonly steps: SawStep[];
  readonly freed: { readonly id: string; readonly at: Rectangle; readonly place: PartPlace }[];
}

type Cut = Extract<CutNode, { cut: 'along' | 'across' }>;

function sequenceTree(layout: Layout, root: CutNode, kerf: number): SawSequence {
  const sequencing: Sequencing = { kerf, steps: [], freed: [] };
  const strips = cutStrips(sequencing, root);
  for (const { letter, node } of strips) cutStrip(sequencing, letter, node);
  const open = [...sequencing.freed];
  const places = layout.placed.map((placed) => {
    const at = open.findIndex(
      (each) => each.id === placed.id && each.at.x === placed.x && each.at.y === placed.y,
    );
    const [found] = at >= 0 ? open.splice(at, 1) : [];
    return found?.place ?? { strip: null, position: 0 };
  });
  return { steps: sequencing.steps, places };
}

interface LetteredStrip {
  readonly letter: string;
  readonly node: CutNode;
}

/** The cuts of the first stage, each with the letter of the strip it frees; the last strip is what remains. */
function cutStrips(sequencing: Sequencing, root: CutNode): readonly LetteredStrip[] {
  const strips: LetteredStrip[] = [];
  let node = root;
  while ('cut' in node && 'cut' in root && node.cut === root.cut) {
    const letter = letterOf(strips.length);
    addStep(sequencing, node, letter, strips.length === 0 ? 'sheet' : 'rest of the sheet');
    strips.push({ letter, node: node.children[0] });
    node = node.children[1];
  }
  if ('cut' in node || 'part' in node) strips.push({ letter: letterOf(strips.length), node });
  return strips;
}

/** All cuts inside one strip, numbered as they come; parts count in the order in which they are freed. */
function cutStrip(sequencing: Sequencing, strip: string, root: CutNode): void {
  let cuts = 0;
  let parts = 0;
  const walk = (node: CutNode, piece: string): void => {
    if ('part' in node) {
      sequencing.freed.push({ id: node.part, at: node, place: { strip, position: ++parts } });
    }
    if (!('cut' in node)) return;
    addStep(sequencing, node, `${strip}${++cuts}`, piece);
    walk(node.children[0], `piece ${strip}${cuts}`);
    walk(node.children[1], `rest of ${piece.replace(/^rest of /, '')}`);
  };
  walk(root, `strip ${strip}`);
}

function addStep(sequencing: Sequencing, node: Cut, label: string, piece: string): void {
  const { x, y, length, width, cut, at } = node;
  const middle = at + sequencing.kerf / 2;
  const rip = cut === 'along';
  sequencing.steps.push({
    order: sequencing.steps.length + 1,
    label,
    cut,
    fence: cleanLength(at - (rip ? y : x)),
    piece,
    pieceRectangle: { x, y, length, width },
    lineLength: rip ? length : width,
    line: rip
      ? { x1: x, y1: middle, x2: x + length, y2: middle }
      : { x1: middle, y1: y, x2: middle, y2: y + width },
  });
}

/** A length without the tail that subtracting decimals leaves; plans are made on 0.01 mm. */
function cleanLength(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** A, B ... Z, AA, AB ... */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
}

function sequenceRow(layout: Layout, kerf: number): SawSequence {
  const order = layout.placed
    .map((_, i) => i)
    .sort((a, b) => (layout.placed[a]?.x ?? 0) - (layout.placed[b]?.x ?? 0));
  const steps = order.map((index, i): SawStep => {
    const { x = 0, length = 0 } = layout.placed[index] ?? {};
    const middle = x + length + kerf / 2;
    return {
      order: i + 1,
      label: String(i + 1),
      cut: 'across',
      fence: length,
      piece: i === 0 ? 'board' : 'rest of the board',
      pieceRectangle: { x, y: 0, length, width: 0 },
      lineLength: 0,
      line: { x1: middle, y1: 0, x2: middle, y2: 0 },
    };
  });
  const places = layout.placed.map((_, index) => ({ strip: null, position: order.indexOf(index) + 1 }));
  return { steps, places };
}

function placesByPosition(layout: Layout): readonly PartPlace[] {
  return layout.placed.map((_, i) => ({ strip: null, position: i + 1 }));
}
