import { rectangleOutline } from '#core/geometry';
import type { BuiltPiece, MatchedSet, Part } from '#core/joinery';
import { newProject, type Project, type StockLine } from '#core/project';

/** A part of the given rough size, finished to the same; everything else plain. */
export function makePart(
  id: string,
  size: readonly [number, number, number],
  more: Partial<Part> = {},
): Part {
  const [length, width, thickness] = size;
  return {
    id,
    piece: 'p',
    name: `part ${id}`,
    quantity: 1,
    hand: 'none',
    material: 'ply',
    kind: 'sheet',
    finished: { length, width, thickness },
    cut: { length, width, thickness },
    rough: { length, width, thickness },
    outline: rectangleOutline(length, width),
    holes: [],
    grain: 'along-length',
    turn: false,
    faceSide: 'face side out',
    edges: [],
    machining: [],
    placements: [],
    working: { length: 'L', width: 'W', thickness: 'T' },
    notes: [],
    ...more,
  };
}

/** A piece of these parts. */
export function makePiece(parts: readonly Part[], sets: readonly MatchedSet[] = []): BuiltPiece {
  return {
    piece: 'p',
    letter: 'A',
    name: 'made up',
    kind: 'drawer',
    seenFrom: 'from the front',
    parts,
    joints: [],
    matchedSets: sets,
    fixings: [],
    steps: [],
    working: [],
    envelope: { min: { x: 0, y: 0, z: 0 }, max: { x: 0, y: 0, z: 0 } },
    findings: [],
  };
}

export function makeStock(id: string, more: Partial<StockLine> = {}): StockLine {
  return {
    id,
    material: 'ply',
    form: 'sheet',
    length: 2440,
    width: 1220,
    thickness: 9,
    count: null,
    price: 60,
    ...more,
  };
}

/** A project with a sheet of 9 and solid oak from the saw, and this rack. */
export function makeProject(stock: readonly StockLine[]): Project {
  return {
    ...newProject('Made up'),
    materials: [
      { id: 'ply', kind: 'sheet', name: 'Birch plywood 9', thickness: 9 },
      { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn' },
      { id: 'deal', kind: 'solid', name: 'Planed deal', state: 'planed' },
    ],
    stock,
  };
}
