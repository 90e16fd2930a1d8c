import type { Outline, Point } from '#core/geometry';
import type { FrameLayout } from './layout.ts';
import type { FrameNumbers } from './members.ts';
import { endBevels, partNumbers } from './parts.ts';
import { crossOf, figureBetween, footLine, layPart, lineThrough, moveIn } from './plane.ts';
import type { Line } from './plane.ts';
import { coverLength, coverNames, coveredFaces, standsOnNosing } from './trim-sizes.ts';
import type { Face } from './trim-sizes.ts';
import { makePart, placeAt } from '../parts.ts';
import type { Material, Piece } from '../piece-types.ts';
import type { Part } from '../types.ts';

type Side = 'left' | 'right' | 'head';
const inWords: Readonly<Record<Side, string>> = { left: 'left', right: 'right', head: 'head' };

/** Stops planted on the lining, behind the door closed flush less 1; none when there is no room for them. */
export function makeStops(
  piece: Piece,
  layout: FrameLayout,
  numbers: FrameNumbers,
  material: Material,
): readonly Part[] {
  if (layout.choices.stop !== 'planted' || layout.book.value('stop_W') <= 0) return [];
  return (['left', 'right', 'head'] as const).map((side) =>
    makeStop(piece, layout, numbers, { side, material }),
  );
}

function makeStop(
  piece: Piece,
  layout: FrameLayout,
  numbers: FrameNumbers,
  { side, material }: { readonly side: Side; readonly material: Material },
): Part {
  const { book, choices } = layout;
  const { lines } = numbers;
  const thickness = choices.stopThickness;
  const outer = side === 'head' ? numbers.headInside : numbers.jamb;
  const innerLine = moveIn(lines[side], outer + thickness);
  const under = moveIn(lines.head, numbers.headInside);
  const foot = (jamb: 'left' | 'right') =>
    footLine(layout, lines, jamb, { outer, thickness, above: numbers.sill });
  const ends: Readonly<Record<Side, readonly [Line, Line]>> = {
    left: [under, foot('left')],
    right: [foot('right'), under],
    head: [moveIn(lines.right, numbers.jamb + thickness), moveIn(lines.left, numbers.jamb + thickness)],
  };
  const figure = figureBetween(moveIn(lines[side], outer), innerLine, ...ends[side]);
  const laid = layPart(figure, innerLine, 'lining', numbers.proud - choices.doorThickness - 1);
  const long = side === 'head' ? 'stop_head_long' : `stop_side_long_${side}`;
  const numbered = { left: partNumbers.stopLeft, right: partNumbers.stopRight, head: partNumbers.stopHead };
  return makePart(piece, {
    number: numbered[side],
    name: `Stop, ${inWords[side]}`,
    material,
    finished: { length: laid.length, width: book.value('stop_W'), thickness },
    hand: side === 'head' ? 'none' : side,
    working: {
      length: book.has(long) ? long : side === 'head' ? 'stop_head_L' : `stop_side_L_${side}`,
      width: 'stop_W',
      thickness: 'ts_st',
    },
    placements: [laid.placement],
    faceSide: 'face side to the door opening',
    edges: [],
    machining: endBevels(laid.figure, thickness),
    notes: ['Fixed last, to the closed door.'],
  });
}

/** Mitred covers of the faces that have them. */
export function makeCovers(
  piece: Piece,
  layout: FrameLayout,
  numbers: FrameNumbers,
  material: Material,
): readonly Part[] {
  return coveredFaces(layout).flatMap((face) =>
    (['left', 'right', 'head'] as const).map((side) =>
      makeCover(piece, layout, numbers, { face, side, material }),
    ),
  );
}

interface CoverAt {
  readonly face: Face;
  readonly side: Side;
  readonly material: Material;
}

function makeCover(
  piece: Piece,
  layout: FrameLayout,
  numbers: FrameNumbers,
  { face, side, material }: CoverAt,
): Part {
  const { book, choices } = layout;
  const name = coverNames(layout, face);
  const [width, reveal] = [book.value(name.width), book.value(name.reveal)];
  const inner = (of: Side) => (of === 'head' ? numbers.headInside : numbers.jamb) - reveal;
  const line = (of: Side, distance: number) => moveIn(numbers.lines[of], inner(of) - distance);
  const above = face === 'near' && standsOnNosing(choices) ? numbers.sill : -choices.packingSill;
  const mitre = (jamb: 'left' | 'right') =>
    lineThrough(crossOf(line(jamb, width), line('head', width)), crossOf(line(jamb, 0), line('head', 0)));
  const foot = (jamb: 'left' | 'right') =>
    footLine(layout, numbers.lines, jamb, { outer: inner(jamb) - width, thickness: width, above });
  const ends: Readonly<Record<Side, readonly [Line, Line]>> = {
    left: [mitre('left'), foot('left')],
    right: [foot('right'), mitre('right')],
    head: [mitre('right'), mitre('left')],
  };
  const figure = figureBetween(line(side, width), line(side, 0), ...ends[side]);
  const near = face === 'near';
  const z = near
    ? numbers.proud + choices.coverThickness
    : numbers.proud - numbers.depth - choices.coverThickness;
  const laid = layPart(figure, line(side, 0), near ? 'flat-near' : 'flat-far', z);
  const first = near ? partNumbers.coverNear : partNumbers.coverFar;
  return makePart(piece, {
    number: first + ['left', 'right', 'head'].indexOf(side),
    name: `Cover, ${face} face, ${inWords[side]}`,
    material,
    finished: { length: laid.length, width, thickness: choices.coverThickness },
    outline: laid.figure,
    hand: side === 'head' ? 'none' : side,
    working: {
      length: lengthOfCover(layout, face, side),
      width: name.width,
      thickness: 'ct',
    },
    placements: [laid.placement],
    faceSide: near ? 'face side to the viewer' : 'face side to the far side',
    edges: [{ edge: 'face-edge', treatment: 'rounded', amount: 3 }],
    notes: ['Left and right as seen from the viewing side.', 'Mitres cut to the frame as it stands.'],
  });
}

function lengthOfCover(layout: FrameLayout, face: Face, side: Side): string {
  if (side === 'head') return 'cover_head_long';
  const all = `cover_${face}_${side}_all`;
  return layout.book.has(all) ? all : coverLength(layout, face, side);
}

/** The panel above the head, its top edge left on for scribing to the deckhead. */
export function makeInfill(
  piece: Piece,
  layout: FrameLayout,
  numbers: FrameNumbers,
  material: Material,
): readonly Part[] {
  const { book, choices } = layout;
  if (!choices.infill) return [];
  const { lines } = numbers;
  const thickness = infillThickness(material);
  const [width, height] = [book.value('infill_W'), book.value('infill_H')];
  const corner = crossOf(moveIn(lines.right, numbers.jamb), lines.head);
  const direction = lines.head.direction;
  const start = (book.value('Wc') - width) / 2;
  const bedded = book.value('gd_head') - 1;
  const z = numbers.proud - numbers.depth / 2 + thickness / 2;
  const origin = {
    x: corner.x + direction.x * (start + width) + direction.y * -bedded,
    y: corner.y + direction.y * (start + width) + direction.x * bedded,
    z,
  };
  const up = { x: direction.y, y: -direction.x, z: 0 };
  return [
    makePart(piece, {
      number: partNumbers.infill,
      name: 'Panel above the head',
      material,
      finished: { length: height, width, thickness },
      cut: { length: book.value('infill_cut_H'), width, thickness },
      outline: panelOutline(choices.infillOrdinates, width, bedded),
      working: { length: 'infill_H', width: 'infill_W', thickness: 'infill_T' },
      placements: [placeAt(origin, up, { x: -direction.x, y: -direction.y, z: 0 })],
      faceSide: 'face side to the viewer',
      edges: [{ edge: 'end', treatment: 'scribed', amount: book.value('S_infill') }],
      notes: [
        'Grain upright.',
        'In before the second jamb: once the frame is together it cannot leave its grooves.',
      ],
    }),
  ];
}

/** Measured thickness of a sheet; 12 for a panel planed from solid (joinery B1). */
export function infillThickness(material: Material): number {
  return material.kind === 'sheet' ? material.thickness : 12;
}

/** X up, Y to the right: foot straight, top through the heights at equal steps from left to right. */
function panelOutline(ordinates: readonly number[], width: number, bedded: number): Outline {
  const step = width / (ordinates.length - 1);
  const top: readonly Point[] = ordinates.map((height, i) => ({ x: height + bedded, y: i * step }));
  return [{ x: 0, y: 0 }, ...top, { x: 0, y: width }];
}
