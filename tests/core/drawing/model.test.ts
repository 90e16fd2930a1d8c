import { describe, expect, test } from 'vitest';
import { modelOf } from '#core/drawing';
import { outlineArea } from '#core/geometry';
import { buildPiece, slicePart, type Part } from '#core/joinery';
import { boxContext, cabinetFront, drawer } from '../../support/joinery-boxes.ts';
import { doorContext, flatDoor } from '../../support/flat-doors.ts';

/** Volume inside a closed surface, by the divergence theorem: a sixth of the sum of triple products. */
function volumeInside(faces: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < faces.length; i += 9) {
    const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = faces.slice(i, i + 9);
    sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sum / 6;
}

const woodOf = (part: Part): number =>
  slicePart(part).reduce(
    (sum, { outlines, from, to }) =>
      sum + (to - from) * outlines.reduce((area, outline) => area + outlineArea(outline), 0),
    0,
  );

describe('a piece as solids', () => {
  const pieces = [
    buildPiece(drawer(), boxContext()),
    buildPiece(drawer({ corner: 'through-dovetail' }), boxContext()),
    buildPiece(cabinetFront(), boxContext()),
    buildPiece(flatDoor({ width: 500, height: 1700, cornerRadius: 60 }), doorContext()),
  ];
  test.each(pieces)('$name: every surface is closed and faces outwards', (built) => {
    const bodies = modelOf(built);
    expect(bodies).toHaveLength(built.parts.reduce((sum, part) => sum + part.placements.length, 0));
    for (const body of bodies) {
      const part = built.parts.find(({ id }) => id === body.part) as Part;
      const wood = woodOf(part);
      expect(wood).toBeGreaterThan(0);
      // arcs are chords of 0.3 mm
      expect(Math.abs(volumeInside(body.faces) - wood) / wood, body.part).toBeLessThan(0.01);
    }
  });
  test('joints take wood away', () => {
    const side = buildPiece(drawer(), boxContext()).parts[0] as Part;
    const { length, width, thickness } = side.finished;
    expect(woodOf(side)).toBeLessThan(length * width * thickness);
    expect(woodOf(side)).toBeGreaterThan(0.7 * length * width * thickness);
  });
});
