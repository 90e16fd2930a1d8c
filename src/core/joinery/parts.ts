import { boxOfPoints3, placePoint, rectangleOutline } from '#core/geometry';
import type { Box3, Outline, Placement, Point3 } from '#core/geometry';
import { evaluateFormula } from '#core/numerics';
import type { Problem } from '#core/problems';
import { roughAllowance } from './rules.ts';
import type { MaterialId } from './ids.ts';
import type { Material, Piece } from './piece-types.ts';
import type { BuildContext, Machining, Part, PartEdge, PartFace, PartId, PartSize } from './types.ts';

/** How a blank is asked for (joinery D4): a solid part with or without horns, a sheet part cut to size or trimmed later. */
export type RoughStyle = 'plain' | 'horns' | 'trimmed';

/** What a builder knows of a part; the rest of a `Part` has a usual value. */
export interface PartDraft {
  readonly number: number;
  readonly name: string;
  readonly material: Material;
  readonly finished: PartSize;
  /** Names of the working steps behind each size. */
  readonly working: Part['working'];
  readonly placements: readonly Placement[];
  readonly faceSide: string;
  /** Usual: one for each placement, cut as finished, no hand, plain rectangle, grain along the length. */
  readonly quantity?: number;
  readonly cut?: PartSize;
  readonly rough?: PartSize;
  readonly roughStyle?: RoughStyle;
  readonly hand?: Part['hand'];
  readonly outline?: Outline;
  readonly holes?: readonly Outline[];
  readonly grain?: Part['grain'];
  readonly turn?: boolean;
  readonly edges?: readonly PartEdge[];
  readonly machining?: readonly Machining[];
  readonly matched?: Part['matched'];
  /** Must lie flat, so that a wide solid one is glued up of narrow boards (joinery D3). */
  readonly flat?: true;
  /** Its figure is opened like a book where it is of solid timber (joinery D3). */
  readonly bookMatched?: boolean;
  /** Sawn flat, finished bent. */
  readonly bent?: true;
  /** When spares are cut the longest like it is made once more. */
  readonly oneMore?: true;
  /** Number of the part of this piece it is to come from one board with. */
  readonly besideOf?: number;
  readonly notes?: readonly string[];
}

/** Address of a part: `C` and 4 give `C4`. */
export function partAddress(piece: Piece, number: number): PartId {
  return `${piece.letter}${number}`;
}

/** A whole part from what its builder knows. */
export function makePart(piece: Piece, draft: PartDraft): Part {
  const cut = draft.cut ?? draft.finished;
  return {
    id: partAddress(piece, draft.number),
    piece: piece.id,
    name: draft.name,
    quantity: draft.quantity ?? draft.placements.length,
    hand: draft.hand ?? 'none',
    material: draft.material.id,
    kind: draft.material.kind,
    finished: draft.finished,
    cut,
    rough: draft.rough ?? roughSize(cut, draft.material, draft.roughStyle),
    outline: draft.outline ?? rectangleOutline(draft.finished.length, draft.finished.width),
    holes: draft.holes ?? [],
    grain: draft.grain ?? 'along-length',
    turn: draft.turn ?? false,
    faceSide: draft.faceSide,
    edges: draft.edges ?? [],
    machining: draft.machining ?? [],
    ...(draft.matched && { matched: draft.matched }),
    ...(draft.bookMatched && { bookMatched: true }),
    ...(draft.bent && { bent: true }),
    ...(draft.oneMore && { oneMore: true }),
    ...(draft.flat && draft.material.kind === 'solid' && { flat: true }),
    ...(draft.besideOf !== undefined && { besideOf: partAddress(piece, draft.besideOf) }),
    placements: draft.placements,
    working: draft.working,
    notes: draft.notes ?? [],
  };
}

/** The blank to ask from board or sheet, mm (joinery D4): up to whole millimetres, sheet thickness as it is. */
export function roughSize(cut: PartSize, material: Material, style: RoughStyle = 'plain'): PartSize {
  if (material.kind === 'sheet') {
    const more = style === 'trimmed' ? roughAllowance.sheetTrimmed : 0;
    return { length: upTo1(cut.length + more), width: upTo1(cut.width + more), thickness: cut.thickness };
  }
  const allowance = roughAllowance[material.state];
  const length = style === 'horns' ? roughAllowance.horns : allowance.length;
  return {
    length: Math.max(
      upTo1(cut.length + length),
      material.state === 'sawn' ? roughAllowance.shortestBlank : 0,
    ),
    width: upTo1(cut.width + allowance.width),
    thickness: cut.thickness + (material.state === 'sawn' ? thicknessAllowance(cut) : 0),
  };
}

/** What planing a sawn blank takes off its thickness, mm (joinery D4): more for long or wide pieces, less for short ones. */
export function thicknessAllowance(cut: PartSize): number {
  const { thickness } = roughAllowance;
  if (cut.length > thickness.longFrom || cut.width > thickness.wideFrom) return thickness.long;
  return cut.length < thickness.shortBelow ? thickness.short : thickness.usual;
}

/** The material chosen, or a stand-in with a `stop` when the project does not have it or it is of the wrong kind. */
export function findMaterial(
  context: BuildContext,
  id: MaterialId,
  wanted: { readonly for: string; readonly kind: 'solid' | 'sheet' | 'either' },
): { readonly material: Material; readonly findings: readonly Problem[] } {
  const found = context.materials.find((material) => material.id === id);
  if (!found) {
    return {
      material: { id, kind: 'solid', name: id, state: 'sawn' },
      findings: [
        {
          severity: 'stop',
          code: 'material-missing',
          about: id,
          message: `The material ${id} chosen for ${wanted.for} is not among the project's materials.`,
          remedy: 'Choose a material that is there, or add this one to the rack.',
        },
      ],
    };
  }
  if (wanted.kind === 'either' || found.kind === wanted.kind) return { material: found, findings: [] };
  return {
    material: found,
    findings: [
      {
        severity: 'warn',
        code: 'material-kind',
        about: id,
        message: `${found.name} is ${found.kind === 'sheet' ? 'a sheet' : 'solid timber'}; for ${wanted.for} the usual choice is ${wanted.kind === 'sheet' ? 'a sheet' : 'solid timber'}.`,
        remedy: 'Choose another material, or carry on if this is meant.',
        source: 'joinery B, part tables',
      },
    ],
  };
}

/** A box of wood taken away, between two corners in the part's own frame. */
export function makeRecess(
  name: Extract<Machining, { kind: 'recess' }>['name'],
  from: PartFace,
  range: { readonly x: Range; readonly y: Range; readonly z: Range },
  note?: string,
): Machining {
  const box: Box3 = {
    min: { x: range.x[0], y: range.y[0], z: range.z[0] },
    max: { x: range.x[1], y: range.y[1], z: range.z[1] },
  };
  return { kind: 'recess', name, from, box, ...(note && { note }) };
}

export type Range = readonly [number, number];

/** The eight corners of a part's bounding block where it is placed, in the frame of the piece. */
export function placedCorners(part: Part, placement: Placement): readonly Point3[] {
  const { length, width, thickness } = part.finished;
  return [0, length].flatMap((x) =>
    [0, width].flatMap((y) => [0, thickness].map((z) => placePoint(placement, { x, y, z }))),
  );
}

/** Smallest block round all parts as placed; null when nothing is placed. */
export function envelopeOf(parts: readonly Part[]): Box3 | null {
  const corners = parts.flatMap((part) => part.placements.flatMap((at) => placedCorners(part, at)));
  return corners.length ? boxOfPoints3(corners) : null;
}

/** Envelope of a piece that could not be built. */
export const nothing: Box3 = { min: { x: 0, y: 0, z: 0 }, max: { x: 0, y: 0, z: 0 } };

/** A placement from its origin and two axes. */
export function placeAt(origin: Point3, xAxis: Point3, yAxis: Point3): Placement {
  return { origin, xAxis, yAxis };
}

function upTo1(value: number): number {
  return evaluateFormula('up(x, 1)', { x: value });
}
