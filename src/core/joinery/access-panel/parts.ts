import { boxOfPoints, circleOutline, type Placement, type Point, type Point3 } from '#core/geometry';
import { placeOnSide } from './hole.ts';
import type { PanelLayout } from './sizes.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part } from '../types.ts';

/** Numbers of the parts of an access panel in their addresses. */
export const panelNumbers = { panel: 1, cleats: 2, cleatsSide: 3, buttons: 4, packers: 5 } as const;

const right = { x: 1, y: 0, z: 0 };
const up = { x: 0, y: 1, z: 0 };
const inSpace = ({ x, y }: Point): Point3 => ({ x, y, z: 0 });
/** Sides of the hole by their number counter-clockwise. */
const side = { sill: 0, right: 1, head: 2, left: 3 } as const;

const finger = { diameter: 25, fromEdge: 40 } as const; // mm (joinery B14; place common practice, no source)

/**
 * The parts of an access panel (joinery B14). Frame of the piece: origin at the lower left of the hole, x right, y up, z to
 * the viewer, z = 0 on the surround.
 */
export function accessPanelParts(piece: Piece, layout: PanelLayout): readonly Part[] {
  const lap = layout.choices.mount === 'lap';
  const drafts = [
    panelDraft(layout),
    ...(lap ? [] : cleatDrafts(layout)),
    buttonDraft(layout),
    ...(lap ? [packerDraft(layout)] : []),
  ];
  return drafts.map((draft) => makePart(piece, draft));
}

/** The face of the panel: proud of the surround where it laps, flush where it is inset. */
function faceOf({ book, choices }: PanelLayout): number {
  return choices.mount === 'lap' ? book.value('T') : 0;
}

function panelDraft(layout: PanelLayout): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const [width, height] = [v('panel_W'), v('panel_H')];
  const { minX, minY } = boxOfPoints(layout.outline);
  // seen from the face side, x from the lower edge up
  const outline = layout.outline.map(({ x, y }) => ({ x: y - minY, y: x - minX })).reverse();
  const hole = circleOutline({ x: height - finger.fromEdge, y: width / 2 }, finger.diameter / 2);
  return {
    number: panelNumbers.panel,
    flat: true,
    name: 'Panel',
    material: choices.stock.panel,
    finished: { length: height, width, thickness: v('T') },
    working: { length: 'panel_H', width: 'panel_W', thickness: 'T' },
    outline,
    holes: choices.notch === 'hole' && height > 2 * finger.fromEdge ? [hole] : [],
    placements: [placeAt({ x: minX, y: minY, z: faceOf(layout) }, up, right)],
    faceSide: 'face side out, grain as the surround',
    notes: ['On the back: THIS WAY UP, and what is behind it.'],
  };
}

function cleatDrafts({ book, choices }: PanelLayout): readonly PartDraft[] {
  const v = book.value;
  const cw = v('cw');
  const onSide = (number: number, long: number): Placement => {
    const { at, along, inwards } = placeOnSide(choices.corners, number, 0.5);
    const origin = { x: at.x + (along.x * long) / 2, y: at.y + (along.y * long) / 2, z: -v('T') };
    return placeAt(origin, { x: -along.x, y: -along.y, z: 0 }, inSpace(inwards));
  };
  const draft = (
    number: number,
    name: string,
    length: string,
    placements: readonly Placement[],
  ): PartDraft => ({
    number,
    name,
    material: choices.stock.solid,
    finished: { length: v(length), width: cw, thickness: v('ct') },
    working: { length, width: 'cw', thickness: 'ct' },
    machining: cleatScrews(v(length), v('ct')),
    placements,
    faceSide: 'face side to the panel, face edge to the side of the hole',
  });
  return [
    draft(panelNumbers.cleats, 'Cleat, above and below', 'cleat_L', [
      onSide(side.sill, v('cleat_L')),
      onSide(side.head, v('cleat_L')),
    ]),
    draft(panelNumbers.cleatsSide, 'Cleat, side', 'cleat_side_L', [
      onSide(side.left, v('cleat_side_L')),
      onSide(side.right, v('cleat_side_L')),
    ]),
  ];
}

/** Clearance holes through a cleat into the side of the hole (joinery C1). */
function cleatScrews(length: number, thickness: number): readonly Machining[] {
  const end = Math.min(40, length / 4);
  const gaps = Math.max(1, Math.ceil((length - 2 * end) / 250));
  return Array.from({ length: gaps + 1 }, (_, i) => ({
    kind: 'hole' as const,
    from: 'far-edge' as const,
    x: end + (i * (length - 2 * end)) / gaps,
    y: thickness / 2,
    diameter: 3.8,
    depth: 'through' as const,
    countersink: 7,
    note: 'into the side of the hole',
  }));
}

/** Pivots of the buttons on the surround, shared between the two long sides, and the way the closed arm points. */
export function layButtons({
  book,
  choices,
}: PanelLayout): readonly { readonly x: number; readonly y: number; readonly arm: Point3 }[] {
  const v = book.value;
  const off = v('out') + v('e');
  const shares = [Math.ceil(v('buttons') / 2), Math.floor(v('buttons') / 2)];
  const sides = v('hole_H') >= v('hole_W') ? [side.left, side.right] : [side.head, side.sill];
  return sides.flatMap((number, i) =>
    Array.from({ length: shares[i] ?? 0 }, (_, k) => {
      const { at, inwards } = placeOnSide(choices.corners, number, (k + 0.5) / (shares[i] ?? 1));
      return { x: at.x - inwards.x * off, y: at.y - inwards.y * off, arm: inSpace(inwards) };
    }),
  );
}

const across = ({ x, y }: Point3) => ({ x: y, y: -x, z: 0 }); // so that z goes into the wood

function buttonDraft(layout: PanelLayout): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const half = v('bw') / 2;
  return {
    number: panelNumbers.buttons,
    name: 'Turn button',
    material: choices.stock.solid,
    finished: { length: v('button_L'), width: v('bw'), thickness: v('bt') },
    working: { length: 'button_L', width: 'bw', thickness: 'bt' },
    machining: [
      {
        kind: 'hole',
        from: 'face',
        x: half,
        y: half,
        diameter: 4.5,
        depth: 'through',
        note: 'pivot, screw with washer',
      },
    ],
    placements: layButtons(layout).map(({ x, y, arm }) => {
      const side = across(arm);
      const origin = {
        x: x - arm.x * half - side.x * half,
        y: y - arm.y * half - side.y * half,
        z: faceOf(layout) + v('bt'),
      };
      return placeAt(origin, arm, side);
    }),
    faceSide: 'face side out; both ends rounded',
  };
}

function packerDraft(layout: PanelLayout): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const half = v('bw') / 2;
  return {
    number: panelNumbers.packers,
    name: 'Packer under a button',
    material: choices.stock.panel,
    finished: { length: v('bw'), width: v('bw'), thickness: v('T') },
    working: { length: 'bw', width: 'bw', thickness: 'T' },
    grain: 'any',
    turn: true,
    machining: [
      { kind: 'hole', from: 'face', x: half, y: half, diameter: 4.5, depth: 'through', note: 'pivot' },
    ],
    placements: layButtons(layout).map(({ x, y }) =>
      placeAt({ x: x - half, y: y - half, z: v('T') }, up, right),
    ),
    faceSide: 'either; brings the button level with the face of the panel',
  };
}
