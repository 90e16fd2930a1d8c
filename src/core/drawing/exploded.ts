import { cornersOfBox, crossProduct, joinBoxes3, placePoint } from '#core/geometry';
import type { Box, Box3, Placement, Point, Point3 } from '#core/geometry';
import type { BuiltPiece, Part } from '#core/joinery';
import { drawNothing } from './elevation.ts';
import { drawLeaders, drawPlate } from './leaders.ts';
import type { Tag } from './leaders.ts';
import { boxAround } from './find-room.ts';
import { boxesOverlap, boxOfMark, drawArea, drawLine, joinBoxes, lettering, makeDrawing } from './marks.ts';
import { chooseScale, heightFor } from './scales.ts';
import type { PaperRoom } from './scales.ts';
import { textWidth } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

interface Block {
  readonly part: Part;
  readonly faces: readonly (readonly Point3[])[];
  readonly centre: Point3;
  readonly shift: Point3;
}

const spread = 0.3; // how far an outermost part moves out, of its own half side and a share of the longest one
const shareOfLongest = 0.22;
const still = 0.08; // of half a side: parts nearer the middle than this stay in place

// Isometric: seen from the right, in front and above along (1, 1, 1)
const [cos30, sin30] = [Math.sqrt(3) / 2, 0.5];
const project = (p: Point3): Point => ({ x: (p.x - p.z) * cos30, y: p.y - (p.x + p.z) * sin30 });
const nearness = (p: Point3) => p.x + p.y + p.z;

/** The parts as blocks pulled apart, in isometric view, with addresses; a dotted line leads each one home. */
export function drawExploded(built: BuiltPiece, options: PaperRoom): Drawing {
  const blocks = pullApart(built.parts);
  if (blocks.length === 0) return drawNothing(built.name);
  const corners = blocks.flatMap((b) => b.faces.flat().map((p) => project(add(p, b.shift))));
  const xs = corners.map((p) => p.x);
  const ys = corners.map((p) => p.y);
  const wide = Math.max(...xs) - Math.min(...xs);
  const tall = Math.max(...ys) - Math.min(...ys);
  const scale = Math.min(
    chooseScale(wide, Math.max(options.width - 34, 20)),
    chooseScale(tall, Math.max(heightFor(options) - 8, 20)),
  );
  const onPaper = (p: Point3): Point => ({ x: project(p).x * scale, y: project(p).y * scale });
  const sorted = [...blocks].sort(
    (a, b) => nearness(add(a.centre, a.shift)) - nearness(add(b.centre, b.shift)),
  );
  const homes = sorted.flatMap((b) => drawHome(b, onPaper));
  const bodies = sorted.flatMap((b) =>
    b.faces.map((face) =>
      drawArea(
        face.map((p) => onPaper(add(p, b.shift))),
        'outline',
        'paper',
        b.part.id,
      ),
    ),
  );
  const taken: Box[] = [];
  const tags = sorted.map((b) => tagBlock(b, onPaper, taken));
  const box = joinBoxes(bodies.map(boxOfMark));
  const marks: Mark[] = [
    ...homes,
    ...bodies,
    ...tags.flatMap((t) => t.plate),
    ...drawLeaders(
      tags.flatMap((t) => t.leader),
      box,
    ),
  ];
  return makeDrawing(`${built.letter}  ${built.name}, parts pulled apart`, scale, marks);
}

const add = (a: Point3, b: Point3): Point3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
const middleOf = (box: Box3): Point3 => ({
  x: (box.min.x + box.max.x) / 2,
  y: (box.min.y + box.max.y) / 2,
  z: (box.min.z + box.max.z) / 2,
});

function pullApart(parts: readonly Part[]): readonly Block[] {
  const placed = parts.flatMap((part) => part.placements.map((placement) => placeBlock(part, placement)));
  if (placed.length === 0) return [];
  const whole = joinBoxes3(placed.map((p) => p.box));
  const middle = middleOf(whole);
  const half = { x: whole.max.x - middle.x, y: whole.max.y - middle.y, z: whole.max.z - middle.z };
  const longest = Math.max(half.x, half.y, half.z);
  return placed.map(({ part, faces, box }) => {
    const centre = middleOf(box);
    const along = (key: 'x' | 'y' | 'z') => {
      const share = half[key] > 0 ? (centre[key] - middle[key]) / half[key] : 0;
      return Math.abs(share) < still ? 0 : share * spread * (half[key] + shareOfLongest * longest);
    };
    return { part, faces, centre, shift: { x: along('x'), y: along('y'), z: along('z') } };
  });
}

/** The faces of the part's block that can be seen. */
function placeBlock(part: Part, placement: Placement) {
  const { length: l, width: w, thickness: t } = part.finished;
  const box = { min: { x: 0, y: 0, z: 0 }, max: { x: l, y: w, z: t } };
  const at = (x: number, y: number, z: number) => placePoint(placement, { x, y, z });
  const { xAxis, yAxis } = placement;
  const zAxis = crossProduct(xAxis, yAxis);
  const pairs: readonly [Point3, (far: boolean) => readonly Point3[]][] = [
    [
      xAxis,
      (far) =>
        [
          [0, 0],
          [w, 0],
          [w, t],
          [0, t],
        ].map(([y = 0, z = 0]) => at(far ? l : 0, y, z)),
    ],
    [
      yAxis,
      (far) =>
        [
          [0, 0],
          [l, 0],
          [l, t],
          [0, t],
        ].map(([x = 0, z = 0]) => at(x, far ? w : 0, z)),
    ],
    [
      zAxis,
      (far) =>
        [
          [0, 0],
          [l, 0],
          [l, w],
          [0, w],
        ].map(([x = 0, y = 0]) => at(x, y, far ? t : 0)),
    ],
  ];
  const faces = pairs
    .filter(([axis]) => Math.abs(nearness(axis)) > 1e-9)
    .map(([axis, face]) => face(nearness(axis) > 0));
  const corners = cornersOfBox(box).map((p) => placePoint(placement, p));
  return { part, faces, box: joinBoxes3(corners.map((p) => ({ min: p, max: p }))) };
}

function drawHome(block: Block, onPaper: (p: Point3) => Point): readonly Mark[] {
  const { x, y, z } = block.shift;
  if (x === 0 && y === 0 && z === 0) return [];
  return [drawLine([onPaper(block.centre), onPaper(add(block.centre, block.shift))], 'centre')];
}

/** The address on the largest face seen, or a tag when it is too small. */
function tagBlock(
  block: Block,
  onPaper: (p: Point3) => Point,
  taken: Box[],
): { plate: readonly Mark[]; leader: readonly Tag[] } {
  const { id } = block.part;
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
  if (!box) return { plate: [], leader: [{ text: id, at, link: id }] };
  const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const height = lettering.usual;
  const width = textWidth(id, height, 'bold') + 2;
  // a slanting face holds about half of what its upright box would
  const fits = (areas[best] ?? 0) > width * (height + 2) * 2.2 && box.maxX - box.minX > width * 1.3;
  const patch = boxAround(centre, width, height + 2);
  if (!fits || taken.some((other) => boxesOverlap(other, patch))) {
    return { plate: [], leader: [{ text: id, at: centre, link: id }] };
  }
  taken.push(patch);
  return { plate: drawPlate(centre, id, { height, link: id }), leader: [] };
}

function polygonArea(points: readonly Point[]): number {
  return Math.abs(
    points.reduce((sum, p, i) => {
      const q = points[(i + 1) % points.length] ?? p;
      return sum + (p.x * q.y - q.x * p.y) / 2;
    }, 0),
  );
}
