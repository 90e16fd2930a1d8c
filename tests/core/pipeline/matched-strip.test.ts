import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { Piece } from '#core/joinery';
import { understandProject } from '#core/pipeline';
import { newProject, type Project } from '#core/project';

function makeProject(parameters: Record<string, unknown>): Project {
  const piece = {
    id: 'front',
    letter: 'A',
    name: 'Front',
    kind: 'cabinet-front',
    parameters: {
      width: 900,
      height: 900,
      fronts: 'inset',
      continuous: 'true',
      materials: { frame: 'oak', fronts: 'ply' },
      ...parameters,
    },
  } as Piece;
  const sheet = { material: 'ply', form: 'sheet', length: 2440, width: 1220, thickness: 18 } as const;
  const board = { material: 'oak', form: 'board', length: 2500, width: 180, thickness: 27 } as const;
  return {
    ...newProject('Fronts'),
    pieces: [piece],
    materials: [
      { id: 'ply', kind: 'sheet', name: 'Ply', thickness: 18, density: 680 },
      { id: 'oak', kind: 'solid', name: 'Oak', species: 'Oak, European', state: 'sawn' },
    ],
    stock: [
      { id: 'sheet', ...sheet, count: null, price: 60 },
      { id: 'board', ...board, count: null, price: 30 },
    ],
  };
}

describe('fronts whose figure runs through', () => {
  test('always: a strip lying face side up, turned as a whole and hung, has every front in its place', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('vertical', 'horizontal'),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 4 }),
        fc.constantFrom('door', 'drawer'),
        (grain, columns, rows, cell) => {
          fc.pre(columns * rows > 1);
          const cells = Array.from({ length: rows }, () => Array.from({ length: columns }, () => cell));
          const { pieces, groups } = understandProject(makeProject({ columns, rows, grain, cells }));
          const strips = groups.flatMap((group) => group.blanks).filter((blank) => blank.set !== undefined);
          expect(strips.length).toBeGreaterThan(0);
          for (const strip of strips) {
            const hung = strip.parts.map((blank) => {
              const part = pieces.flatMap((piece) => piece.parts).find((each) => each.id === blank.part);
              const at = part?.placements[0];
              if (!at) throw new Error(`${blank.part} is placed nowhere`);
              // face side up and x to the right, the part's own y runs down (joinery 0.2: z into the wood): its origin is the upper left corner
              return { at, x: blank.x, y: blank.y + blank.width };
            });
            const [first] = hung;
            if (!first) throw new Error('an empty strip');
            for (const { at, x, y } of hung) {
              const [right, down] = [x - first.x, first.y - y];
              for (const axis of ['x', 'y'] as const) {
                const turned = right * at.xAxis[axis] + down * at.yAxis[axis];
                expect(at.origin[axis] - first.at.origin[axis]).toBeCloseTo(turned, 6);
              }
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
