import type { BuiltPiece } from '#core/joinery';
import { drawSizes } from './elevation-sizes.ts';
import { drawLeaders, drawPlate, mergeTags } from './leaders.ts';
import type { Tag } from './leaders.ts';
import { drawArea, drawText, joinBoxes, lettering, makeDrawing } from './marks.ts';
import { chooseScale, heightFor, unitNote } from './scales.ts';
import type { SizedRoom } from './scales.ts';
import { paintersOrder } from './silhouettes.ts';
import type { Silhouette } from './silhouettes.ts';
import { textWidth } from './text-width.ts';
import type { Box } from '#core/geometry';
import type { Drawing, Mark } from './types.ts';

const besideWork = 62; // mm of paper left and right of the work together: tags, dimensions
const leaderRoom = 7; // mm from a tag to the work and to the next dimension
const belowWork = 48; // mm of paper for dimensions and a line of text

/**
 * The piece seen from the front, far parts first, with addresses and dimensions; those that are steps of the working are
 * linked to them as `size:Wc`. An empty piece says so.
 */
export function drawElevation(built: BuiltPiece, options: SizedRoom): Drawing {
  const shapes = paintersOrder(built.parts);
  if (shapes.length === 0) return drawNothing(built.name);
  const extent = joinBoxes(shapes.map((shape) => shape.box));
  const scale = Math.min(
    chooseScale(extent.maxX - extent.minX, Math.max(options.width - besideWork, 20)),
    chooseScale(extent.maxY - extent.minY, Math.max(heightFor(options) - belowWork, 20)),
  );
  const onPaper = shapes.map((shape) => scaleSilhouette(shape, scale));
  const box = joinBoxes(onPaper.map((shape) => shape.box));
  const tags = tagParts(onPaper);
  const left = roomOnLeft(tags.leaders, box);
  const { units } = options;
  const sizes = drawSizes({ built, shapes, extent, scale, left, ...(units && { units }) });
  const marks: Mark[] = [
    ...onPaper.flatMap((shape) => [
      drawArea(shape.outline, 'outline', shape.part.kind, shape.part.id),
      ...shape.holes.map((hole) => drawArea(hole, 'thin', 'paper', shape.part.id)),
    ]),
    ...sizes.marks,
    ...drawLeaders(tags.leaders, box),
    ...tags.plates,
    drawText({ x: box.minX, y: box.minY - sizes.depth - 9 }, `Seen ${built.seenFrom}${unitNote(units)}`, {
      height: lettering.small,
      tone: 'soft',
    }),
  ];
  return makeDrawing(`${built.letter}  ${built.name}`, scale, marks);
}

/** Paper between the work and its dimensions for the tags on its left, mm. */
function roomOnLeft(tags: readonly Tag[], box: Box): number {
  const middle = (box.minX + box.maxX) / 2;
  const widths = tags
    .filter((tag) => tag.at.x < middle)
    .map((tag) => textWidth(tag.text, lettering.usual, 'bold'));
  return widths.length > 0 ? Math.max(14, Math.max(...widths) + leaderRoom) : 0;
}

/** A sheet that says there is nothing to show. */
export function drawNothing(name: string): Drawing {
  return makeDrawing(name, 1, [drawText({ x: 0, y: 0 }, `${name}: nothing to draw yet.`, { tone: 'soft' })]);
}

function scaleSilhouette(shape: Silhouette, scale: number): Silhouette {
  const resize = (points: Silhouette['outline']) =>
    points.map((p) => ({ ...p, x: p.x * scale, y: p.y * scale }));
  const { minX, minY, maxX, maxY } = shape.box;
  return {
    ...shape,
    outline: resize(shape.outline),
    holes: shape.holes.map(resize),
    box: { minX: minX * scale, minY: minY * scale, maxX: maxX * scale, maxY: maxY * scale },
  };
}

/** Addresses written in the parts where they fit and are not covered, else as tags beside the work. */
function tagParts(shapes: readonly Silhouette[]): {
  readonly plates: readonly Mark[];
  readonly leaders: readonly Tag[];
} {
  const plates: Mark[] = [];
  const leaders: Tag[] = [];
  const written = new Set<string>();
  shapes.forEach((shape, i) => {
    const seen = uncovered(shape, shapes.slice(i + 1));
    if (!seen) return;
    const [w, h] = [seen.maxX - seen.minX, seen.maxY - seen.minY];
    const { id } = shape.part;
    const height = Math.min(w, h) > 22 ? lettering.large : lettering.usual;
    const [along, across] = [textWidth(id, height, 'bold') + 2.4, height + 2];
    const at = { x: (seen.minX + seen.maxX) / 2, y: (seen.minY + seen.maxY) / 2 };
    const lies = along <= w && across <= h;
    if (lies || (along <= h && across <= w)) {
      plates.push(...drawPlate(at, id, { height, link: id, ...(!lies && { turn: 1 }) }));
      written.add(id);
    }
    // a long part is named near the end next to its tag
    else leaders.push({ text: id, at: w > 20 ? { ...at, x: seen.maxX - 4 } : at, link: id });
  });
  return { plates, leaders: mergeTags(leaders, written) };
}

/** The largest upright strip of the part's box that no later part covers; null when nothing worth naming is seen. */
function uncovered(shape: Silhouette, over: readonly Silhouette[]): Box | null {
  const pieces = over.reduce<readonly Box[]>(
    (left, cover) => left.flatMap((box) => withoutBox(box, cover.box)),
    [shape.box],
  );
  const area = (b: Box) => (b.maxX - b.minX) * (b.maxY - b.minY);
  const best = pieces.reduce<Box | null>((top, b) => (top === null || area(b) > area(top) ? b : top), null);
  return best && Math.min(best.maxX - best.minX, best.maxY - best.minY) > 0.3 ? best : null;
}

function withoutBox(box: Box, cover: Box): readonly Box[] {
  if (cover.minX >= box.maxX || cover.maxX <= box.minX || cover.minY >= box.maxY || cover.maxY <= box.minY)
    return [box];
  const strips: Box[] = [];
  if (cover.minX > box.minX) strips.push({ ...box, maxX: cover.minX });
  if (cover.maxX < box.maxX) strips.push({ ...box, minX: cover.maxX });
  if (cover.minY > box.minY) strips.push({ ...box, maxY: cover.minY });
  if (cover.maxY < box.maxY) strips.push({ ...box, minY: cover.maxY });
  return strips;
}
