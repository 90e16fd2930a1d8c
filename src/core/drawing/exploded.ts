import type { Box, Point, Point3 } from '#core/geometry';
import type { BuiltPiece, Part } from '#core/joinery';
import { facesSeen, isBlock, nearness } from './block-faces.ts';
import { drawNothing } from './elevation.ts';
import { drawLeaders, drawPlate, fitTags, mergeTags } from './leaders.ts';
import type { Tag } from './leaders.ts';
import { boxAround } from './find-room.ts';
import {
  boxesOverlap,
  boxOfMark,
  drawArea,
  drawLine,
  drawText,
  joinBoxes,
  lettering,
  makeDrawing,
} from './marks.ts';
import { prismFaces } from './prism-faces.ts';
import { pullApart } from './pull-apart.ts';
import { chooseScale, heightFor } from './scales.ts';
import type { PaperRoom } from './scales.ts';
import { textWidth } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

interface Block {
  readonly part: Part;
  /** What is written on it or beside it; nothing on parts of a member that another part names. */
  readonly name: string;
  readonly faces: readonly (readonly Point3[])[];
  readonly holes: readonly (readonly Point3[])[];
  readonly centre: Point3;
  readonly shift: Point3;
}

// Isometric: seen from the right, in front and above along (1, 1, 1)
const [cos30, sin30] = [Math.sqrt(3) / 2, 0.5];
const project = (p: Point3): Point => ({ x: (p.x - p.z) * cos30, y: p.y - (p.x + p.z) * sin30 });

/** The parts pulled apart, in isometric view, with addresses; a dotted line leads each one home. */
export function drawExploded(built: BuiltPiece, options: PaperRoom): Drawing {
  return drawPulled(
    built,
    options,
    makeBlocks(built.parts, () => undefined),
  );
}

/** The members of a piece made of several pulled apart, each whole and named; null for a piece that has none. */
export function drawMembers(built: BuiltPiece, options: PaperRoom): Drawing | null {
  const { members = [] } = built;
  if (members.length < 2) return null;
  const names = new Map(members.flatMap(({ name, parts }) => parts.map((id) => [id, name] as const)));
  const drawn = drawPulled(built, options, nameMembers(makeBlocks(built.parts, ({ id }) => names.get(id))));
  return { ...drawn, title: `${built.letter}  ${built.name}, members pulled apart` };
}

function makeBlocks(parts: readonly Part[], memberOf: (part: Part) => string | undefined): readonly Block[] {
  return pullApart(parts, memberOf).map(({ part, placement, centre, shift }) => ({
    ...{ part, centre, shift, name: memberOf(part) ?? part.id },
    ...(isBlock(part)
      ? { faces: facesSeen(part, placement), holes: [] }
      : prismFaces(part, placement, nearness)),
  }));
}

/** The name of a member on that of its parts which is nearest to whoever looks, and no dotted lines but its own. */
function nameMembers(blocks: readonly Block[]): readonly Block[] {
  const first = new Map<string, Block>();
  const near = (block: Block) => nearness(add(block.centre, block.shift));
  for (const block of blocks) {
    const known = first.get(block.name);
    if (!known || near(block) > near(known)) first.set(block.name, block);
  }
  return blocks.map((block) => (first.get(block.name) === block ? block : { ...block, name: '' }));
}

function drawPulled(built: BuiltPiece, options: PaperRoom, blocks: readonly Block[]): Drawing {
  if (blocks.length === 0) return drawNothing(built.name);
  const widest = Math.max(...blocks.map(({ name }) => textWidth(name, lettering.usual, 'bold')));
  const corners = blocks.flatMap((b) => b.faces.flat().map((p) => project(add(p, b.shift))));
  const xs = corners.map((p) => p.x);
  const ys = corners.map((p) => p.y);
  const wide = Math.max(...xs) - Math.min(...xs);
  const tall = Math.max(...ys) - Math.min(...ys);
  const scale = Math.min(
    chooseScale(wide, Math.max(options.width - 16 - Math.max(18, 2 * widest), 20)),
    chooseScale(tall, Math.max(heightFor(options) - 8, 20)),
  );
  const onPaper = (p: Point3): Point => ({ x: project(p).x * scale, y: project(p).y * scale });
  const sorted = [...blocks].sort(
    (a, b) => nearness(add(a.centre, a.shift)) - nearness(add(b.centre, b.shift)),
  );
  const homes = sorted.flatMap((b) => (b.name === '' ? [] : drawHome(b, onPaper)));
  const draw = (b: Block, points: readonly Point3[], weight: 'outline' | 'thin') =>
    drawArea(
      points.map((p) => onPaper(add(p, b.shift))),
      weight,
      'paper',
      b.part.id,
    );
  const bodies = sorted.flatMap((b) => [
    ...b.faces.map((face) => draw(b, face, 'outline')),
    ...b.holes.map((hole) => draw(b, hole, 'thin')),
  ]);
  const marks = [
    ...homes,
    ...bodies,
    ...writeAddresses(sorted, onPaper, { bodies, most: heightFor(options) }),
  ];
  return makeDrawing(`${built.letter}  ${built.name}, parts pulled apart`, scale, marks);
}

/** Addresses on the faces that hold them, the rest as tags in columns beside; what finds no room is counted. */
function writeAddresses(
  blocks: readonly Block[],
  onPaper: (p: Point3) => Point,
  { bodies, most }: { readonly bodies: readonly Mark[]; readonly most: number },
): readonly Mark[] {
  const taken: Box[] = [];
  const tags = blocks.map((b) => (b.name === '' ? { plate: [], leader: [] } : tagBlock(b, onPaper, taken)));
  const box = joinBoxes(bodies.map(boxOfMark));
  const written = new Set(blocks.flatMap((b, i) => (tags[i]?.plate.length ? [b.name] : [])));
  const wanted = mergeTags(
    tags.flatMap((t) => t.leader).sort((one, other) => other.area - one.area),
    written,
  );
  const leaders = fitTags(wanted, box, columnHeight(box, most));
  const lead = drawLeaders(leaders, box);
  const foot = Math.min(box.minY, ...lead.map((mark) => boxOfMark(mark).minY));
  return [
    ...tags.flatMap((t) => t.plate),
    ...lead,
    ...drawMissing(wanted.length - leaders.length, { x: box.minX, y: foot - 6 }),
  ];
}

/** Little more than what is drawn, so that it stays the larger; a dozen tags find room in any case. mm. */
function columnHeight(box: Box, most: number): number {
  return Math.min(most, Math.max(1.25 * (box.maxY - box.minY), 70));
}

/** Says how many addresses there was no room for. */
function drawMissing(count: number, at: Point): readonly Mark[] {
  if (count === 0) return [];
  const text = `${count} of the smaller addresses find no room here: see the drawings of the parts.`;
  return [drawText(at, text, { height: lettering.small, tone: 'soft' })];
}

const add = (a: Point3, b: Point3): Point3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
function drawHome(block: Block, onPaper: (p: Point3) => Point): readonly Mark[] {
  const { x, y, z } = block.shift;
  if (x === 0 && y === 0 && z === 0) return [];
  return [drawLine([onPaper(block.centre), onPaper(add(block.centre, block.shift))], 'centre')];
}

/** A tag with the area of the largest face of what it names, mm² on paper. */
type AreaTag = Tag & { readonly area: number };

/** The address on the largest face seen, or a tag when it is too small. */
function tagBlock(
  block: Block,
  onPaper: (p: Point3) => Point,
  taken: Box[],
): { plate: readonly Mark[]; leader: readonly AreaTag[] } {
  const { name, part } = block;
  const boxes = block.faces.map((face) =>
    boxOfMark(
      drawArea(
        face.map((p) => onPaper(add(p, block.shift))),
        'none',
      ),
    ),
  );
  const areas = block.faces.map((face) => polygonArea(face.map((p) => onPaper(add(p, block.shift)))));
  const best = areas.indexOf(Math.max(...areas));
  const box = boxes[best];
  const at = onPaper(add(block.centre, block.shift));
  if (!box) return { plate: [], leader: [{ text: name, at, link: part.id, area: 0 }] };
  const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const height = lettering.usual;
  const width = textWidth(name, height, 'bold') + 2;
  // a slanting face holds about half of what its upright box would
  const fits = (areas[best] ?? 0) > width * (height + 2) * 2.2 && box.maxX - box.minX > width * 1.3;
  const patch = boxAround(centre, width, height + 2);
  if (!fits || taken.some((other) => boxesOverlap(other, patch))) {
    return { plate: [], leader: [{ text: name, at: centre, link: part.id, area: areas[best] ?? 0 }] };
  }
  taken.push(patch);
  return { plate: drawPlate(centre, name, { height, link: part.id }), leader: [] };
}

function polygonArea(points: readonly Point[]): number {
  return Math.abs(
    points.reduce((sum, p, i) => {
      const q = points[(i + 1) % points.length] ?? p;
      return sum + (p.x * q.y - q.x * p.y) / 2;
    }, 0),
  );
}
