import { stepKind } from './step/kind.ts';
import { trimRunKind } from './trim-run/kind.ts';
import { dividersKind } from './dividers/kind.ts';
import { infillKind } from './infill/kind.ts';
import { hatchSurroundKind } from './hatch-surround/kind.ts';
import { freeFrameKind } from './free-frame/kind.ts';
import { freePanelKind } from './free-panel/kind.ts';
import { cabinetFrontKind } from './cabinet-front/kind.ts';
import { carcaseKind } from './carcase/kind.ts';
import { shelfKind } from './shelf/kind.ts';
import { countertopKind } from './countertop/kind.ts';
import { runKind } from './run/kind.ts';
import { doorFrameKind } from './door-frame/kind.ts';
import { drawerKind } from './drawer/kind.ts';
import { flatDoorKind } from './flat-door/kind.ts';
import { framedDoorKind } from './framed-door/kind.ts';
import { louvredDoorKind } from './louvred-door/kind.ts';
import { slatLiningKind } from './slat-lining/kind.ts';
import { lidsKind } from './lids/kind.ts';
import { accessPanelKind } from './access-panel/kind.ts';
import { curvedHeadKind } from './curved-head/kind.ts';
import { glueRows, settingsFor, withGlue } from './glue.ts';
import { withGlueUps } from './glue-up.ts';
import { withJointAdvice } from './joint-findings.ts';
import { sayBuilt } from './say-built.ts';
import { withSpares } from './spares.ts';
import type { ShapeNeeds, KindOfPiece, KindWords, SeenSizes } from './kind.ts';
import type { PieceId } from './ids.ts';
import type { NewPiece, ParameterInfo, Piece, PieceKind } from './piece-types.ts';
import type { BuildContext, BuiltPiece } from './types.ts';

/** Every kind of piece, in the order in which they are offered. */
const kinds: { readonly [Kind in PieceKind]: KindOfPiece<Kind> } = {
  'door-frame': doorFrameKind,
  'flat-door': flatDoorKind,
  drawer: drawerKind,
  'cabinet-front': cabinetFrontKind,
  carcase: carcaseKind,
  shelf: shelfKind,
  countertop: countertopKind,
  run: runKind,
  'free-panel': freePanelKind,
  'framed-door': framedDoorKind,
  'free-frame': freeFrameKind,
  'louvred-door': louvredDoorKind,
  'slat-lining': slatLiningKind,
  'hatch-surround': hatchSurroundKind,
  infill: infillKind,
  dividers: dividersKind,
  lids: lidsKind,
  'trim-run': trimRunKind,
  'access-panel': accessPanelKind,
  step: stepKind,
  'curved-head': curvedHeadKind,
};

export const pieceKinds = Object.keys(kinds) as readonly PieceKind[];

/** Everything a piece comes to: parts, joints, fixings, steps, working. What stands in the way is in `findings`. */
export function buildPiece(piece: Piece, context: BuildContext): BuiltPiece {
  const own = { ...context, settings: settingsFor(piece.parameters, context.settings) };
  const built = withJointAdvice(kindOf(piece).build(piece, own), own);
  const whole = withGlue(withSpares(withGlueUps(built, own), own), own.settings);
  return sayBuilt(whole, own.units ?? 'mm', namesIn(piece, own));
}

/** The names that a text of this piece may hold, a size in them being part of the name. */
function namesIn(piece: Piece, { shapeName, materials, built = [] }: BuildContext): readonly string[] {
  const others = [...materials, ...built].map(({ name }) => name);
  return [piece.name, ...(shapeName === undefined ? [] : [shapeName]), ...others];
}

/** A piece of this kind with the trade's defaults and the first materials that suit it. */
export function newPiece(kind: PieceKind, start: NewPiece): Piece {
  return kinds[kind].make(start);
}

/** Which measured shapes a kind can be fitted to, and whether it must be. */
export function shapeNeeds(kind: PieceKind): ShapeNeeds {
  return kinds[kind].shape;
}

/** The pieces that must be made before this one, as it takes sizes from them. */
export function requiredPieces(piece: Piece): readonly PieceId[] {
  return kindOf(piece).requires?.(piece) ?? [];
}

/** What can be chosen for a kind of piece, with label, default and limits, in the order to ask it. */
export function parametersOf(kind: PieceKind): readonly ParameterInfo[] {
  return offered[kind];
}

/** The tables of all kinds, with the rows of those that are glued. */
const offered = Object.fromEntries(
  pieceKinds.map((kind) => [
    kind,
    kinds[kind].unglued ? kinds[kind].parameters : [...kinds[kind].parameters, ...glueRows],
  ]),
) as unknown as Readonly<Record<PieceKind, readonly ParameterInfo[]>>;

/** Key of the parameter that is the gap between a kind and the edges of its shape; undefined where it does not follow them. */
export function gapToShapeOf(kind: PieceKind): string | undefined {
  return kinds[kind].gapToShape;
}

/** Whether the parts of a kind are carried one by one and meet in their place. */
export function isCarriedInParts(kind: PieceKind): boolean {
  return kinds[kind].inParts === true;
}

/** How a kind of piece is called and explained. */
export function kindWords(kind: PieceKind): KindWords {
  return kinds[kind].words;
}

/** The working steps of a piece that are sizes seen from the front, besides those of its single parts. */
export function seenSizes({ kind, working }: BuiltPiece): SeenSizes {
  const known = new Set(working.map((step) => step.name));
  const present = (names: readonly string[]) => names.filter((name) => known.has(name));
  return { across: present(kinds[kind].seen.across), up: present(kinds[kind].seen.up) };
}

/** The kind of this very piece: the record above pairs each with its own, which the compiler cannot follow through a union. */
function kindOf(piece: Piece): KindOfPiece<PieceKind> {
  return kinds[piece.kind] as unknown as KindOfPiece<PieceKind>;
}
