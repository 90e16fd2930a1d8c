import { describe, expect, test } from 'vitest';
import { bodiesOf, findAssemblyOrder } from '#core/fitting';
import { rectangleOutline, type Placement } from '#core/geometry';
import { buildPiece, type Machining, type Part, type Piece } from '#core/joinery';
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

describe('an order of assembly', () => {
  const pieces: readonly [string, readonly Part[]][] = [
    ['a drawer with box joints', buildPiece(drawer(), boxContext()).parts],
    ['a cabinet front', buildPiece(cabinetFront(), boxContext()).parts],
    ['a flat door', buildPiece(flatDoor({ width: 500, height: 1700 }), doorContext()).parts],
    [
      'a door frame',
      buildPiece(
        doorFrame({ stop: 'cover' }) as Piece,
        contextFor(openingShape({ BL: [0, 0], BR: [641, 0], TR: [649, 1752], TL: [14, 1746] })),
      ).parts,
    ],
  ];
  test.each(pieces)('%s goes together, every part once', (_, parts) => {
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
