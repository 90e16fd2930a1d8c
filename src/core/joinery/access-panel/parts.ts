import { circleOutline, type Placement } from '#core/geometry';
import type { PanelLayout } from './sizes.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part } from '../types.ts';

/** Numbers of the parts of an access panel in their addresses. */
export const panelNumbers = { panel: 1, cleats: 2, cleatsSide: 3, buttons: 4, packers: 5 } as const;

const right = { x: 1, y: 0, z: 0 };
const left = { x: -1, y: 0, z: 0 };
const up = { x: 0, y: 1, z: 0 };
const down = { x: 0, y: -1, z: 0 };

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
  const hole = circleOutline({ x: height - finger.fromEdge, y: width / 2 }, finger.diameter / 2);
  return {
    number: panelNumbers.panel,
    flat: true,
    name: 'Panel',
    material: choices.stock.panel,
    finished: { length: height, width, thickness: v('T') },
    working: { length: 'panel_H', width: 'panel_W', thickness: 'T' },
    holes: choices.notch === 'hole' && height > 2 * finger.fromEdge ? [hole] : [],
    placements: [placeAt({ x: -v('out'), y: -v('out'), z: faceOf(layout) }, up, right)],
    faceSide: 'face side out, grain as the surround',
    notes: ['On the back: THIS WAY UP, and what is behind it.'],
  };
}

function cleatDrafts({ book, choices }: PanelLayout): readonly PartDraft[] {
  const v = book.value;
  const z = -v('T');
  const [width, height, cw] = [v('hole_W'), v('hole_H'), v('cw')];
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
      placeAt({ x: width, y: 0, z }, left, up),
      placeAt({ x: 0, y: height, z }, right, down),
    ]),
    draft(panelNumbers.cleatsSide, 'Cleat, side', 'cleat_side_L', [
      placeAt({ x: 0, y: cw, z }, up, right),
      placeAt({ x: width, y: height - cw, z }, down, left),
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
}: PanelLayout): readonly { readonly x: number; readonly y: number; readonly arm: typeof right }[] {
  const v = book.value;
  const [width, height, off] = [v('hole_W'), v('hole_H'), v('out') + v('e')];
  const [first, second] = [Math.ceil(v('buttons') / 2), Math.floor(v('buttons') / 2)];
  const spread = (count: number, length: number) =>
    Array.from({ length: count }, (_, i) => (length * (i + 0.5)) / count);
  if (height >= width) {
    return [
      ...spread(first, height).map((y) => ({ x: -off, y, arm: right })),
      ...spread(second, height).map((y) => ({ x: width + off, y, arm: left })),
    ];
  }
  return [
    ...spread(first, width).map((x) => ({ x, y: height + off, arm: down })),
    ...spread(second, width).map((x) => ({ x, y: -off, arm: up })),
  ];
}

const across = ({ x, y }: typeof right) => ({ x: y, y: -x, z: 0 }); // so that z goes into the wood

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
