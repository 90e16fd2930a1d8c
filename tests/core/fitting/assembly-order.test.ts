import { describe, expect, test } from 'vitest';
import { bodiesOf, findAssemblyOrder } from '#core/fitting';
import { rectangleOutline, type Placement } from '#core/geometry';
import {
  buildPiece,
  defaultSettings,
  newPiece,
  type BuiltPiece,
  type Machining,
  type Part,
  type Piece,
  type PieceKind,
} from '#core/joinery';
import { usualMaterials } from '../../support/flat-pieces.ts';
import { boxContext, cabinetFront, drawer } from '../../support/joinery-boxes.ts';
import { doorContext, flatDoor } from '../../support/flat-doors.ts';
import { contextFor, doorFrame, openingShape } from '../../support/joinery-samples.ts';

const x = { x: 1, y: 0, z: 0 };
const y = { x: 0, y: 1, z: 0 };
const z = { x: 0, y: 0, z: 1 };

function board(
  id: string,
  size: readonly [number, number, number],
  at: Placement,
  machining: Machining[] = [],
): Part {
  const [length, width, thickness] = size;
  const finished = { length, width, thickness };
  return {
    ...{ id, piece: 'p', name: id, quantity: 1, hand: 'none', material: 'm', kind: 'solid' },
    ...{ finished, cut: finished, rough: finished, outline: rectangleOutline(length, width), holes: [] },
    ...{ grain: 'along-length', turn: false, faceSide: '', edges: [], machining, placements: [at] },
    ...{ working: { length: '', width: '', thickness: '' }, notes: [] },
  } as Part;
}

/** A post 400 long, let 8 into a sill below and a head above; the housings run across, or stop before the face at z = 0. */
function postBetween(stopped: boolean): readonly Part[] {
  const housing: Machining = {
    kind: 'recess',
    name: 'housing',
    from: 'face',
    box: { min: { x: 90, y: stopped ? 15 : 0, z: 0 }, max: { x: 110, y: 60, z: 8 } },
  };
  const deep = stopped ? 45 : 60;
  return [
    // face side up: x along, y to the back, so z is down for the sill and up for the head
    board('sill', [200, 60, 20], { origin: { x: 0, y: 8, z: 0 }, xAxis: x, yAxis: { x: 0, y: 0, z: 1 } }, [
      { ...housing, box: { min: housing.box.min, max: housing.box.max } },
    ]),
    board('post', [400, deep, 20], { origin: { x: 90, y: 0, z: 60 - deep }, xAxis: y, yAxis: z }),
    board(
      'head',
      [200, 60, 20],
      { origin: { x: 0, y: 392, z: 60 }, xAxis: x, yAxis: { x: 0, y: 0, z: -1 } },
      [{ ...housing, box: { min: { ...housing.box.min, y: 0 }, max: { ...housing.box.max, y: deep } } }],
    ),
  ];
}

function made(kind: PieceKind, parameters: Record<string, unknown> = {}): BuiltPiece {
  const piece = newPiece(kind, { id: 'h', letter: 'H', name: 'Piece', materials: usualMaterials });
  const changed = { ...piece, parameters: { ...piece.parameters, ...parameters } } as Piece;
  return buildPiece(changed, { shape: null, materials: usualMaterials, settings: defaultSettings });
}
const carcase = (joint: string) => made('carcase', { joint, materials: { panel: 'ply18' } }).parts;
const step = (joint: string) =>
  made('step', { joint, boxRisers: 2, materials: { sides: 'ply18', treads: 'ply18' } }).parts;
const surround = made('hatch-surround');

describe('a part of curves as convex solids', () => {
  const segment = surround.parts.find(({ name }) => name.startsWith('Corner segment'));
  if (!segment) throw new Error('no segment');
  const solids = bodiesOf([{ ...segment, placements: segment.placements.slice(0, 1) }])[0]?.solids ?? [];
  test('comes in few', () => {
    expect(solids.length).toBeGreaterThan(3);
    expect(solids.length).toBeLessThan(30);
  });
  test('they hold the wood of the part and no more, and none of it twice', () => {
    // each is a prism: the corners of its one end, counter-clockwise or clockwise
    const volume = solids.reduce((sum, { corners }) => {
      const ring = corners.slice(0, corners.length / 2).map((corner) => [corner.x, corner.y] as const);
      const doubled = ring.reduce((area, [ax, ay], i) => {
        const [bx, by] = ring[(i + 1) % ring.length] ?? [0, 0];
        return area + ax * by - bx * ay;
      }, 0);
      const zs = corners.map((corner) => corner.z);
      return sum + (Math.abs(doubled) / 2) * (Math.max(...zs) - Math.min(...zs));
    }, 0);
    const pockets = 2 * 12 * 25 * 6; // two slots 12 deep, 25 long, 6 wide (joinery B16, C3)
    const ring = (Math.PI / 8) * (120 ** 2 - 75 ** 2) * 18; // an eighth of the ring, 18 thick
    // chords lie up to half a millimetre inside the outer arc and outside the inner one
    expect(volume).toBeGreaterThan(ring - pockets - 0.5 * 95 * 18);
    expect(volume).toBeLessThan(ring - pockets + 0.5 * 60 * 18);
  });
});

describe('an order of assembly', () => {
  const pieces: readonly [string, readonly Part[]][] = [
    ['a drawer with box joints', buildPiece(drawer(), boxContext()).parts],
    ['a cabinet front', buildPiece(cabinetFront(), boxContext()).parts],
    ['a flat door', buildPiece(flatDoor({ width: 500, height: 1700 }), doorContext()).parts],
    ['a hatch surround of curved segments, straights and loose tenons', surround.parts],
    [
      'a door frame',
      buildPiece(
        doorFrame({ stop: 'cover' }) as Piece,
        contextFor(openingShape({ BL: [0, 0], BR: [641, 0], TR: [649, 1752], TL: [14, 1746] })),
      ).parts,
    ],
  ];
  const jointed: readonly [string, readonly Part[]][] = [
    ...(['housing', 'butt', 'dowel', 'loose-tenon'] as const).flatMap(
      (joint): [string, readonly Part[]][] => [
        [`a carcase with ${joint} shelves`, carcase(joint)],
        [`a step with ${joint} treads`, step(joint)],
      ],
    ),
    ...(['box', 'rebate', 'butt'] as const).map((walls): [string, readonly Part[]] => [
      `a tray with ${walls} corners`,
      made('dividers', { form: 'cells', walls }).parts,
    ]),
    ...(['mitre-and-spline', 'half-lap'] as const).map((joint): [string, readonly Part[]] => [
      `a hatch surround with ${joint}`,
      made('hatch-surround', { joint }).parts,
    ]),
    ['a shelf with a rebated fiddle', made('shelf', { fiddle: 'rebate' }).parts],
  ];
  test.each([...pieces, ...jointed])('%s goes together, every part once', (_, parts) => {
    const order = findAssemblyOrder(parts);
    expect(order.found).toBe(true);
    if (!order.found) return;
    const named = order.moves.map(({ parts: moved }) => moved);
    expect(named.every((moved) => moved.length >= 1)).toBe(true);
    expect(order.moves).toHaveLength(bodiesOf(parts).length - 1);
  });

  // joinery F6: stopped housings top and bottom between a fixed head and sill have no order, through housings have one
  test('a post in through housings goes in last, from the open face', () => {
    const [sill, post, head] = postBetween(false) as [Part, Part, Part];
    const order = findAssemblyOrder([post], bodiesOf([sill, head]));
    expect(order.found && order.moves.at(-1)?.parts).toEqual(['post']);
    expect(order.found && Math.abs(order.moves.at(-1)?.from.z ?? 0)).toBe(1);
  });
  test('a post boxed in behind stopped housings between fixed members is locked', () => {
    const [sill, post, head] = postBetween(true) as [Part, Part, Part];
    const walls = [
      board('wall', [200, 400, 20], { origin: { x: 0, y: 0, z: 60 }, xAxis: x, yAxis: y }),
      board('door', [200, 400, 15], { origin: { x: 0, y: 8, z: 0 }, xAxis: x, yAxis: y }),
    ];
    expect(findAssemblyOrder([post], bodiesOf([sill, head, ...walls]))).toEqual({
      found: false,
      locked: ['post'],
    });
    expect(findAssemblyOrder([sill, post, head]).found).toBe(true);
  });
  test('one part needs no order', () => {
    expect(
      findAssemblyOrder([board('a', [10, 10, 10], { origin: { x: 0, y: 0, z: 0 }, xAxis: x, yAxis: y })]),
    ).toEqual({
      found: true,
      moves: [],
    });
  });
});
