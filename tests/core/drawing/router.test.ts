import { writeFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawRouterFiles, makePocketContour, routerLayers } from '#core/drawing';
import type { RouterFile, RouterSetup } from '#core/drawing';
import { boxOfOutline, isInside, outlineArea } from '#core/geometry';
import type { Outline, Point } from '#core/geometry';
import { buildPiece, defaultSettings, newPiece } from '#core/joinery';
import type { Machining, Part, Piece } from '#core/joinery';
import { checkDxf } from '#formats/dxf';
import { usualMaterials } from '../../support/flat-pieces.ts';
import { haveTool, python, runTool } from '../../support/outside-tools.ts';
import { sampleDrawerSide, sampleInfill, sampleJamb, samplePart } from '../../support/samples.ts';

const setup: RouterSetup = { cutter: 6, passDepth: 4 };
const closed = { bottom: 0, right: 0, top: 0, left: 0 };
const box = (minX: number, minY: number, maxX: number, maxY: number) => ({ minX, minY, maxX, maxY });

describe('a pocket contour', () => {
  test('closed on all sides and plain is the rectangle itself', () => {
    expect(makePocketContour(box(0, 0, 40, 20), closed, 0)).toEqual([
      { x: 0, y: 0 },
      { x: 40, y: 0 },
      { x: 40, y: 20 },
      { x: 0, y: 20 },
    ]);
  });

  // Geometry of the relief: a circle of radius r through the corner, centred on the bisector, cuts r(1 - sin 45°) = 0.293 r
  // past each wall: 0.88 for r = 3, 1.17 for r = 4. Own derivation; common practice for square corners in routed pockets.
  test.each([
    [3, 0.88],
    [4, 1.17],
  ])('relieved for a cutter of radius %d runs %d past each wall', (radius, past) => {
    const wide = boxOfOutline(makePocketContour(box(0, 0, 60, 40), closed, radius));
    expect(-wide.minX).toBeCloseTo(past, 2);
    expect(-wide.minY).toBeCloseTo(past, 2);
    expect(wide.maxX - 60).toBeCloseTo(past, 2);
    expect(wide.maxY - 40).toBeCloseTo(past, 2);
  });

  test('open at an edge runs out past it and is not relieved there', () => {
    const contour = makePocketContour(box(0, 10, 20, 50), { ...closed, left: 3 }, 3);
    expect(boxOfOutline(contour).minX).toBe(-3);
    expect(contour.filter((p) => p.bulge)).toHaveLength(2);
  });

  test('as narrow as the cutter gets round ends past its end walls', () => {
    const contour = makePocketContour(box(0, 0, 50, 6), closed, 3);
    const wide = boxOfOutline(contour);
    [-3, 53, 0, 6].forEach((want, i) =>
      expect([wide.minX, wide.maxX, wide.minY, wide.maxY][i]).toBeCloseTo(want, 6),
    );
    expect(outlineArea(contour)).toBeCloseTo(50 * 6 + Math.PI * 9, 6);
  });

  const sizes = fc.record({
    w: fc.double({ min: 6, max: 200, noNaN: true }),
    h: fc.double({ min: 6, max: 200, noNaN: true }),
    left: fc.constantFrom(0, 3),
    right: fc.constantFrom(0, 3),
    top: fc.constantFrom(0, 3),
    bottom: fc.constantFrom(0, 3),
  });

  test('always: a square-cornered piece fits into the relieved pocket, and the round cutter reaches all of it', () => {
    fc.assert(
      fc.property(sizes, ({ w, h, ...open }) => {
        const contour = makePocketContour(box(0, 0, w, h), open, 3);
        expect(outlineArea(contour)).toBeGreaterThan(0);
        const hair = 0.06; // arcs are tested as chords, which cut them by up to 0.05
        for (const x of [hair, w / 2, w - hair]) {
          for (const y of [hair, h / 2, h - hair]) expect(isInside({ x, y }, contour)).toBe(true);
        }
        // no inside corner is sharper than the cutter: every corner that is not an arc end lies on an open side
        for (const corner of sharpInside(contour)) {
          const onOpen =
            (open.left > 0 && corner.x <= 0) ||
            (open.right > 0 && corner.x >= w) ||
            (open.bottom > 0 && corner.y <= 0) ||
            (open.top > 0 && corner.y >= h);
          expect(onOpen).toBe(true);
        }
      }),
    );
  });
});

/** Corners of the contour between two straight sides. */
function sharpInside(contour: Outline): readonly Point[] {
  return contour.filter((p, i) => {
    const before = contour[(i + contour.length - 1) % contour.length];
    return !p.bulge && !before?.bulge;
  });
}

// ---- files, read back by a DXF reader that is not ours

const reader = haveTool('DXF read by ezdxf', python, ['-c', 'import ezdxf']);
const script = `
import sys, json, ezdxf
from ezdxf import bbox
doc = ezdxf.readfile(sys.argv[1])
out = {'units': doc.header.get('$INSUNITS'), 'errors': len(doc.audit().errors), 'layers': sorted(l.dxf.name for l in doc.layers), 'entities': []}
for e in doc.modelspace():
    d = {'type': e.dxftype(), 'layer': e.dxf.layer}
    if e.dxftype() == 'POLYLINE':
        b = bbox.extents([e])
        d.update(closed=e.is_closed, points=[[v.dxf.location.x, v.dxf.location.y, v.dxf.get('bulge', 0)] for v in e.vertices],
                 box=[b.extmin.x, b.extmin.y, b.extmax.x, b.extmax.y])
    if e.dxftype() == 'CIRCLE':
        d.update(centre=[e.dxf.center.x, e.dxf.center.y], radius=e.dxf.radius)
    if e.dxftype() == 'TEXT':
        d.update(text=e.dxf.text)
    out['entities'].append(d)
print(json.dumps(out))
`;

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly closed?: boolean;
  readonly points?: readonly (readonly [number, number, number])[];
  readonly box?: readonly number[];
  readonly centre?: readonly number[];
  readonly radius?: number;
  readonly text?: string;
}
interface Read {
  readonly units: number;
  readonly errors: number;
  readonly layers: readonly string[];
  readonly entities: readonly Entity[];
}

function readBack(file: RouterFile): Read {
  const folder = mkdtempSync(join(tmpdir(), 'joggle-dxf-'));
  try {
    writeFileSync(join(folder, 'part.dxf'), file.dxf);
    return JSON.parse(runTool(python, ['-c', script, join(folder, 'part.dxf')])) as Read;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const on = (read: Read, layer: string) => read.entities.filter((entity) => entity.layer === layer);
const round = (values: readonly number[] | undefined) => values?.map((v) => Math.round(v * 1000) / 1000 + 0);

describe.skipIf(!reader)('a router file', () => {
  const [face, back] = drawRouterFiles(sampleDrawerSide, setup);

  test('is read without error, in millimetres, with every contour closed', () => {
    for (const part of [sampleJamb, sampleInfill, sampleDrawerSide]) {
      for (const file of drawRouterFiles(part, setup)) {
        const read = readBack(file);
        expect([read.errors, read.units]).toEqual([0, 4]); // $INSUNITS 4 is mm (published DXF reference)
        const polylines = read.entities.filter((e) => e.type === 'POLYLINE');
        expect(polylines.every((e) => e.closed)).toBe(true);
        expect(new Set(read.entities.map((e) => e.type))).toEqual(
          new Set(
            read.entities.some((e) => e.type === 'CIRCLE')
              ? ['POLYLINE', 'CIRCLE', 'TEXT']
              : ['POLYLINE', 'TEXT'],
          ),
        );
        expect(checkDxf(file.dxf)).toEqual([]);
      }
    }
  });

  test('has one layer for each operation and depth, listed in order of work, and no contour is lost', () => {
    expect(face?.layers).toEqual([
      'DRILL_D08_00',
      'POCKET_D06_00',
      'INNER_THROUGH',
      'OUTLINE_THROUGH',
      'SCALE_100MM',
      'NOTE_ADDRESS',
      'NOTE_TEXT',
    ]);
    const read = readBack(face!);
    expect(on(read, 'INNER_THROUGH')).toHaveLength(3);
    expect(on(read, 'POCKET_D06_00')).toHaveLength(1);
    expect(read.layers).toEqual(expect.arrayContaining([...face!.layers]));
  });

  test('has the part at true size and a bar of 100 mm', () => {
    const read = readBack(face!);
    expect(round(on(read, 'OUTLINE_THROUGH')[0]?.box)).toEqual([0, 0, 450, 92]);
    const [x1 = 0, , x2 = 0] = on(read, 'SCALE_100MM')[0]?.box ?? [];
    expect(x2 - x1).toBeCloseTo(100, 9);
    expect(on(read, 'NOTE_TEXT').map((e) => e.text)[0]).toContain('UNITS MM');
    expect(on(read, 'NOTE_ADDRESS')[0]?.text).toBe('D2');
  });

  test('shows the face side as it is seen: start end left, face edge above', () => {
    const read = readBack(face!);
    // housing at y 30 to 92 of a part 92 wide, open at the far edge: in the file from the bottom edge up to 62, plus its relief
    const [pocket] = on(read, 'POCKET_D06_00');
    expect(round(pocket?.box?.slice(1, 2))).toEqual([-3]);
    expect(pocket?.box?.[3]).toBeCloseTo(62 + 3 * (1 - Math.SQRT1_2), 2);
    expect(round(on(read, 'DRILL_D08_00')[0]?.centre)).toEqual([225, 46]);
    expect(on(read, 'DRILL_D08_00')[0]?.radius).toBe(17.5);
  });

  test('of the back is mirrored: turned over its long side, and says so', () => {
    const read = readBack(back!);
    // groove at y 10 to 16.4, running out at both ends by the radius of the cutter
    expect(round(on(read, 'POCKET_D06_00')[0]?.box)).toEqual([-3, 10, 453, 16.4]);
    expect(on(read, 'OUTLINE_THROUGH')).toEqual([]);
    expect(on(read, 'REFERENCE_OUTLINE')).toHaveLength(1);
    expect(on(read, 'NOTE_TEXT').some((e) => e.text?.includes('BACK UP, MIRRORED'))).toBe(true);
  });

  test('keeps arcs as arcs: the bulge of a quarter circle is 0.414214', () => {
    // published DXF reference: bulge = tan(angle / 4); 90 degrees 0.414214
    const quarter = Math.tan(Math.PI / 8);
    const rounded = samplePart('E1', [200, 100, 12], {
      outline: [
        { x: 0, y: 0 },
        { x: 170, y: 0, bulge: quarter },
        { x: 200, y: 30 },
        { x: 200, y: 100 },
        { x: 0, y: 100 },
      ],
    });
    const [file] = drawRouterFiles(rounded, setup);
    const [outline] = on(readBack(file!), 'OUTLINE_THROUGH');
    const bulges = outline?.points?.map(([, , b]) => Math.abs(b)).filter((b) => b > 0) ?? [];
    expect(bulges).toHaveLength(1);
    expect(bulges[0]).toBeCloseTo(0.414214, 6);
    expect(round(outline?.box)).toEqual([0, 0, 200, 100]);
  });

  test('leaves on what is to be scribed and shows the finished line beside it', () => {
    const [file] = drawRouterFiles(sampleInfill, setup);
    const read = readBack(file!);
    const reach = (layer: string) => on(read, layer)[0]?.box?.[2] ?? 0;
    expect(reach('OUTLINE_THROUGH') - reach('REFERENCE_OUTLINE')).toBeCloseTo(12, 6);
  });

  // joinery C11: cut L = finished L + 0.6; each finger as long as the mate is thick and 0.3 more
  test('leaves fingers 0.3 proud, their sockets no deeper than the mate is thick', () => {
    const piece = newPiece('drawer', { id: 'p', letter: 'P', name: 'Box', materials: usualMaterials });
    const boxed = { ...piece, parameters: { ...piece.parameters, corner: 'box' } } as Piece;
    const built = buildPiece(boxed, { shape: null, materials: usualMaterials, settings: defaultSettings });
    const [left, , front] = built.parts;
    const mate = front?.finished.thickness ?? NaN;
    const [file] = drawRouterFiles(left!, setup);
    const read = readBack(file!);
    const [outline] = on(read, 'OUTLINE_THROUGH');
    const [x0 = NaN, , x1 = NaN] = outline?.box ?? [];
    expect(x1 - x0).toBeCloseTo(left!.cut.length, 6);
    expect(x1 - x0).toBeCloseTo(left!.finished.length + 0.6, 6);
    const sockets = on(read, 'INNER_THROUGH').map(({ points = [] }) => points.map(([x]) => x));
    const endAt = (shoulder: number, past: (xs: readonly number[]) => boolean) =>
      sockets.filter((xs) => past(xs) && xs.some((x) => Math.abs(x - shoulder) < 1e-6)).length;
    const atStart = endAt(x0 + 0.3 + mate, (xs) => Math.min(...xs) < x0);
    const atEnd = endAt(x1 - 0.3 - mate, (xs) => Math.max(...xs) > x1);
    const fingers = left!.machining.filter((one) => one.kind === 'recess' && one.name === 'finger');
    expect(fingers.length).toBeGreaterThan(2);
    expect(atStart + atEnd).toBe(fingers.length);
  });

  test('touching pockets stay apart', () => {
    const pocket = (x1: number, x2: number): Machining => ({
      kind: 'recess',
      name: 'groove',
      from: 'face',
      box: { min: { x: x1, y: 20, z: 0 }, max: { x: x2, y: 40, z: 5 } },
    });
    const [file] = drawRouterFiles(
      samplePart('E2', [200, 100, 12], { machining: [pocket(20, 60), pocket(60, 100)] }),
      setup,
    );
    const pockets = on(readBack(file!), 'POCKET_D05_00');
    expect(pockets.map((e) => round(e.box))).toEqual([
      [20, 60, 60, 80],
      [60, 60, 100, 80],
    ]);
  });

  test('names from the user come out as plain ASCII', () => {
    const odd = samplePart('É1', [200, 100, 12], { name: 'Côté "gauche" × 2\n0\nEOF' });
    const [file] = drawRouterFiles(odd, setup);
    // eslint-disable-next-line no-control-regex
    expect(file!.dxf).toMatch(/^[\u0000-\u007f]*$/);
    expect(checkDxf(file!.dxf)).toEqual([]);
    expect(readBack(file!).errors).toBe(0);
  });
});

describe('what a router cannot do', () => {
  const recess = (machining: Omit<Extract<Machining, { kind: 'recess' }>, 'kind'>): Machining => ({
    kind: 'recess',
    ...machining,
  });
  const withWork = (...machining: readonly Machining[]): Part =>
    samplePart('E3', [300, 80, 20], { machining });

  test('a groove narrower than the cutter is reported and left out', () => {
    const part = withWork(
      recess({
        name: 'groove',
        from: 'face',
        box: { min: { x: 0, y: 10, z: 0 }, max: { x: 300, y: 14, z: 5 } },
      }),
    );
    const [file] = drawRouterFiles(part, setup);
    expect(file?.findings).toMatchObject([{ severity: 'warn', code: 'router-recess-narrow', about: 'E3' }]);
    expect(file?.findings[0]?.message).toContain('4 mm wide, narrower than the 6 mm cutter');
    expect(file?.layers).not.toContain('POCKET_D05_00');
  });

  // joinery C19: a cutter leaves inside corners round by its radius, a panel in the groove is square
  test('a groove that stops inside the part says that its end is to be squared, one that runs through does not', () => {
    const groove = (from: number): Part =>
      samplePart('C1', [450, 107, 12], {
        machining: [
          {
            kind: 'recess',
            name: 'groove',
            from: 'face',
            box: { min: { x: from, y: 80, z: 0 }, max: { x: 450, y: 86.6, z: 6 } },
          },
        ],
      });
    const said = 'Stopped grooves end round, radius 3 mm';
    expect(drawRouterFiles(groove(6), setup)[0]?.dxf).toContain(said);
    expect(drawRouterFiles(groove(0), setup)[0]?.dxf).not.toContain(said);
  });

  test('a mortise into the edge is noted, not drawn', () => {
    const part = withWork(
      recess({
        name: 'mortise',
        from: 'face-edge',
        box: { min: { x: 50, y: 0, z: 7 }, max: { x: 90, y: 30, z: 13 } },
      }),
      { kind: 'bevel', edge: 'end', degrees: 5 },
    );
    const files = drawRouterFiles(part, setup);
    expect(files).toHaveLength(1);
    expect(files[0]?.findings.map((f) => f.code)).toEqual(['router-other-side', 'router-other-side']);
    expect(files[0]?.findings[0]?.message).toContain('mortise from the face edge');
  });

  test('holes into one edge, all alike, are noted together', () => {
    const hole = (x: number) =>
      ({ kind: 'hole', from: 'far-edge', x, y: 10, diameter: 4.3, depth: 'through' }) as const;
    const [file] = drawRouterFiles(withWork(hole(40), hole(260), hole(480)), setup);
    expect(file?.findings.map(({ message }) => message)).toEqual([
      expect.stringMatching(/Ø4\.3 in the far edge at 40, 10; 260, 10; 480, 10, through/),
    ]);
  });

  test('a deep pocket is warned of', () => {
    const part = withWork(
      recess({
        name: 'pocket',
        from: 'face',
        box: { min: { x: 50, y: 20, z: 0 }, max: { x: 90, y: 60, z: 15 } },
      }),
    );
    expect(drawRouterFiles(part, { cutter: 3, passDepth: 2 })[0]?.findings).toMatchObject([
      { code: 'router-recess-deep' },
    ]);
  });
});

test('every layer a file uses is explained in the table', () => {
  const names = routerLayers.map(({ layer }) => new RegExp(`^${layer.replace(/nn/g, '\\d\\d')}$`));
  for (const part of [sampleJamb, sampleInfill, sampleDrawerSide]) {
    for (const file of drawRouterFiles(part, setup)) {
      for (const layer of file.layers)
        expect(
          names.some((name) => name.test(layer)),
          layer,
        ).toBe(true);
    }
  }
});
