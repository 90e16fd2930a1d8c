import { rectangleOutline } from '#core/geometry';
import type { CuttingPlan } from '#core/cutting';
import type { BuiltPiece, MatchedSet, Part, Piece } from '#core/joinery';
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

/** A front of two doors whose panels are cut from the sheet or the board, its frame from the board. */
export function makeFront(fronts: 'ply' | 'oak', sheet: Partial<StockLine>): Project {
  const parameters = {
    ...{ width: 500, height: 700, columns: 1, rows: 2, fronts: 'inset', cells: [['door'], ['door']] },
    materials: { frame: 'oak', fronts },
  };
  const ofPly = { material: 'ply', form: 'sheet', length: 2440, width: 1220, thickness: 18 } as const;
  const board = { material: 'oak', form: 'board', length: 2500, width: 600, thickness: 27 } as const;
  return {
    ...newProject('Fronts'),
    pieces: [{ id: 'front', letter: 'A', name: 'Front', kind: 'cabinet-front', parameters } as Piece],
    materials: [
      { id: 'ply', kind: 'sheet', name: 'Ply', thickness: 18, density: 680 },
      { id: 'oak', kind: 'solid', name: 'Oak', species: 'Oak, European', state: 'sawn' },
    ],
    stock: [
      { id: 'sheet', ...ofPly, count: null, ...sheet },
      { id: 'board', ...board, count: null, price: 30 },
    ],
  };
}

/** A plan that is not proven, with nothing drawn. */
export const openPlan: CuttingPlan = {
  cost: 100,
  bound: 80,
  proven: false,
  seconds: 1,
  stockUsed: [{ id: 'ply', count: 2 }],
  unplaced: [],
  findings: [],
  layouts: [],
};
