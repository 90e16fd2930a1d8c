import type { Material, Piece } from '#core/joinery';
import type { Reading } from '#core/measuring';
import { newProject, nextLetter, type MeasuredShape, type Project, type StockLine } from '#core/project';

import { rollDice, type Dice } from './random.ts';

interface Corner {
  readonly x: number;
  readonly y: number;
}

interface Corners {
  readonly BL: Corner;
  readonly BR: Corner;
  readonly TR: Corner;
  readonly TL: Corner;
}

export interface OpeningWishes {
  readonly width: number;
  readonly height: number;
  /** Largest shift of a corner from the rectangle, mm. */
  readonly crooked: number;
  /** Share of the spread of the readings that is really there: 0 gives exact ones. */
  readonly noise: number;
}

/** A random sensible project: openings out of square, pieces of every kind, a rack they can be cut from. The same seed gives the same one. */
export function generateProject(seed: number): Project {
  const dice = rollDice(seed);
  const shapes = Array.from({ length: dice.whole(1, 2) }, (_, index) =>
    generateShape(dice, `opening-${index + 1}`, {
      width: dice.between(480, 900),
      height: dice.between(600, 1950),
      crooked: dice.between(0, 12),
      noise: 1,
    }),
  );
  const empty: Project = {
    ...newProject(`Generated ${seed}`),
    units: dice.pick(['mm', 'inch']),
    paper: dice.pick(['A4', 'Letter']),
    shapes,
    materials: generateMaterials(dice),
    stock: generateStock(dice),
  };
  return Array.from({ length: dice.whole(1, 5) }).reduce<Project>(
    (project) => ({ ...project, pieces: [...project.pieces, generatePiece(dice, project)] }),
    empty,
  );
}

/** An opening with the twelve readings of the recommended set, and the corners they were taken from. */
export function generateOpening(
  dice: Dice,
  wishes: OpeningWishes,
): { corners: Corners; readings: Reading[] } {
  const shift = () => dice.between(-wishes.crooked, wishes.crooked);
  const corners: Corners = {
    BL: { x: 0, y: 0 },
    BR: { x: wishes.width, y: shift() / 2 },
    TR: { x: wishes.width + shift(), y: wishes.height + shift() / 2 },
    TL: { x: shift(), y: wishes.height },
  };
  return { corners, readings: takeReadings(dice, corners, wishes.noise) };
}

function generateShape(dice: Dice, id: string, wishes: OpeningWishes): MeasuredShape {
  return {
    id,
    name: `Opening ${id.slice(-1)}`,
    kind: 'opening',
    seenFrom: dice.pick(['from the saloon, looking forward', 'from the passage, looking to port']),
    readings: generateOpening(dice, wishes).readings,
  };
}

function takeReadings(dice: Dice, { BL, BR, TR, TL }: Corners, noise: number): Reading[] {
  const read = (value: number, sigma: number) =>
    noise === 0 ? value : Math.round(2 * (value + noise * sigma * clamp(dice.normal()))) / 2 + 0;
  const distance = (id: string, [from, a]: [string, Corner], [to, b]: [string, Corner]): Reading => ({
    id,
    kind: 'distance',
    from,
    to,
    value: read(Math.hypot(b.x - a.x, b.y - a.y), 0.5),
    sigma: 0.5,
  });
  const width = (id: string, at: number): Reading => ({
    id,
    kind: 'width',
    left: ['BL', 'TL'],
    right: ['BR', 'TR'],
    at,
    value: read(
      Math.hypot(
        BR.x + at * (TR.x - BR.x) - BL.x - at * (TL.x - BL.x),
        BR.y + at * (TR.y - BR.y) - BL.y - at * (TL.y - BL.y),
      ),
      0.5,
    ),
    sigma: 0.5,
  });
  const signed = (id: string, kind: 'plumb' | 'level', from: string, to: string, value: number): Reading => ({
    id,
    kind,
    from,
    to,
    value: read(value, 1),
    sigma: 1,
  });
  return [
    distance('wb', ['BL', BL], ['BR', BR]),
    distance('wt', ['TL', TL], ['TR', TR]),
    distance('hl', ['BL', BL], ['TL', TL]),
    distance('hr', ['BR', BR], ['TR', TR]),
    distance('d1', ['BL', BL], ['TR', TR]),
    distance('d2', ['BR', BR], ['TL', TL]),
    width('w13', 1 / 3),
    width('w23', 2 / 3),
    signed('pl', 'plumb', 'BL', 'TL', TL.x - BL.x),
    signed('pr', 'plumb', 'BR', 'TR', TR.x - BR.x),
    signed('ls', 'level', 'BL', 'BR', BR.y - BL.y),
    signed('lh', 'level', 'TL', 'TR', TR.y - TL.y),
  ];
}

function generateMaterials(dice: Dice): Material[] {
  return [
    {
      id: 'ply18',
      kind: 'sheet',
      name: 'Birch plywood 18',
      thickness: tenth(dice.between(17.2, 18.1)),
      density: 685,
    },
    {
      id: 'ply12',
      kind: 'sheet',
      name: 'Birch plywood 12',
      thickness: tenth(dice.between(11.6, 12.4)),
      density: 695,
    },
    {
      id: 'ply6',
      kind: 'sheet',
      name: 'Birch plywood 6.5',
      thickness: tenth(dice.between(6.1, 6.8)),
      density: 670,
    },
    {
      id: 'hardwood',
      kind: 'solid',
      name: 'Hardwood',
      species: dice.pick(['Oak, European', 'Sapele', 'Iroko']),
      state: 'sawn',
    },
    { id: 'planed', kind: 'solid', name: 'Hardwood, planed', species: 'Oak, European', state: 'planed' },
  ];
}

function generateStock(dice: Dice): StockLine[] {
  const sheet = (material: string, thickness: number, price: number): StockLine => {
    const [length, width] = dice.pick<readonly [number, number]>([
      [2440, 1220],
      [2500, 1250],
      [1525, 1525],
    ]);
    return {
      id: `${material}-${length}`,
      material,
      form: 'sheet',
      length,
      width,
      thickness,
      count: null,
      price,
    };
  };
  const board = (material: string, length: number, width: number, thickness: number): StockLine => ({
    id: `${material}-${length}-${thickness}`,
    material,
    form: 'board',
    length,
    width,
    thickness,
    count: null,
    price: Math.round((length * width * thickness * 3000) / 1e9),
  });
  return [
    sheet('ply18', 18, dice.whole(70, 110)),
    sheet('ply12', 12, dice.whole(50, 80)),
    sheet('ply6', 6.5, dice.whole(25, 45)),
    board('hardwood', 2500, 160, 32),
    board('hardwood', 3000, 200, 32),
    board('planed', 2400, 95, 12),
    board('planed', 2400, 95, 20),
  ];
}

function generatePiece(dice: Dice, project: Project): Piece {
  const letter = nextLetter(project);
  const base = { id: `piece-${letter}`, letter };
  const kind = dice.pick(['door-frame', 'drawer', 'cabinet-front', 'flat-door']);
  switch (kind) {
    case 'door-frame':
      return {
        ...base,
        name: 'Door frame',
        kind: 'door-frame',
        shape: project.shapes[dice.whole(0, project.shapes.length - 1)]?.id ?? 'opening-1',
        parameters: {
          corner: dice.pick(['rebate', 'tongue', 'housing-between', 'butt']),
          sill: dice.chance(0.3),
          ...dice.pick([
            { bulkheadMax: 44.2, bulkheadMin: 43.5, stop: 'planted' },
            { bulkheadMax: 18.5, bulkheadMin: 18, stop: 'none' },
          ]),
          covers: dice.pick(['both', 'near', 'none']),
          materials: { frame: 'hardwood', covers: 'planed' },
        },
      };
    case 'drawer': {
      const runner = dice.pick(['metal', 'side-rail', 'bottom-notch', 'bottom']);
      return {
        ...base,
        name: 'Drawer',
        kind: 'drawer',
        parameters: {
          openingWidth: half(dice.between(250, 600)),
          openingHeight: half(dice.between(95, 260)),
          clearDepth: half(dice.between(300, 560)),
          runner,
          corner: dice.pick(['box', 'rebate', 'butt', 'housed-back']),
          // An inset front has no room to be lifted over a notch.
          front:
            runner === 'bottom-notch'
              ? dice.pick(['overlay', 'none'])
              : dice.pick(['overlay', 'inset', 'none']),
          count: dice.whole(1, 3),
          materials: { box: 'ply12', bottom: 'ply6', front: 'ply18', runners: 'hardwood' },
        },
      };
    }
    case 'cabinet-front':
      return generateFront(dice, base);
    case 'flat-door':
      return generateDoor(dice, base, project);
  }
}

/** A door for the first frame that stands there and has none yet, or of a size of its own. */
function generateDoor(
  dice: Dice,
  base: { readonly id: string; readonly letter: string },
  project: Project,
): Piece {
  const hung = new Set(
    project.pieces.map((piece) => (piece.kind === 'flat-door' ? piece.parameters.frame : undefined)),
  );
  const frame = project.pieces.find((piece) => piece.kind === 'door-frame' && !hung.has(piece.id));
  const isLong = project.stock.some((line) => line.material === 'ply18' && line.length > 2000);
  const size = {
    width: half(dice.between(400, 700)),
    height: half(dice.between(600, isLong ? 1800 : 1400)),
  };
  return {
    ...base,
    name: 'Flat door',
    kind: 'flat-door',
    parameters: {
      ...(frame && isLong && dice.chance(0.7) ? { frame: frame.id } : size),
      hinged: dice.pick(['left', 'right']),
      lipJoint: dice.pick(['butt', 'mitre', 'corner-block']),
      cornerRadius: dice.pick([0, 6, 40]),
      slots: dice.whole(0, 3),
      slotZone: 110,
      slotLength: 80,
      materials: { core: 'ply18', lipping: 'hardwood' },
    },
  };
}

function generateFront(dice: Dice, base: { readonly id: string; readonly letter: string }): Piece {
  const columns = dice.whole(1, 3);
  const rows = dice.whole(1, 4);
  const fronts = dice.pick(['inset', 'overlay']);
  return {
    ...base,
    name: 'Cabinet front',
    kind: 'cabinet-front',
    parameters: {
      width: half(columns * dice.between(300, 420) + 80),
      height: half(rows * dice.between(120, 200) + 120),
      columns,
      rows,
      grading: dice.pick(['equal', 'arithmetic']),
      step: 5,
      fronts,
      // Inset fronts have no room to be lifted.
      notch: fronts === 'inset' ? 0 : 10,
      continuous: dice.pick(['none', 'tight', 'true']),
      grain: dice.pick(['vertical', 'horizontal']),
      cells: Array.from({ length: rows }, () =>
        Array.from({ length: columns }, () => dice.pick(['drawer', 'door', 'open'])),
      ),
      materials: { frame: 'hardwood', fronts: 'ply18' },
    },
  };
}

/** A careful reader looks again when a reading is further off. */
function clamp(deviation: number): number {
  return Math.max(-1.5, Math.min(1.5, deviation));
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}

function half(value: number): number {
  return Math.round(value * 2) / 2;
}
