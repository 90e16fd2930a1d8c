import { unreachable } from '#core/problems';
import { buildCabinetFront, newCabinetFront } from './cabinet-front.ts';
import { buildDoorFrame, newDoorFrame } from './door-frame.ts';
import { buildDrawer, newDrawer } from './drawer.ts';
import { buildFlatDoor, newFlatDoor } from './flat-door.ts';
import type { NewPiece, Piece, PieceId, PieceKind } from './piece-types.ts';
import type { BuildContext, BuiltPiece } from './types.ts';

/** Everything a piece comes to: parts, joints, fixings, steps, working. What stands in the way is in `findings`. */
export function buildPiece(piece: Piece, context: BuildContext): BuiltPiece {
  switch (piece.kind) {
    case 'door-frame':
      return buildDoorFrame(piece, context);
    case 'drawer':
      return buildDrawer(piece, context);
    case 'cabinet-front':
      return buildCabinetFront(piece, context);
    case 'flat-door':
      return buildFlatDoor(piece, context);
    default:
      return unreachable(piece);
  }
}

/** A piece of this kind with the trade's defaults and the first materials that suit it. */
export function newPiece(kind: PieceKind, start: NewPiece): Piece {
  switch (kind) {
    case 'door-frame':
      return newDoorFrame(start);
    case 'drawer':
      return newDrawer(start);
    case 'cabinet-front':
      return newCabinetFront(start);
    case 'flat-door':
      return newFlatDoor(start);
    default:
      return unreachable(kind);
  }
}

/** Whether a kind needs a measured opening, can take one in place of sizes, or needs none. */
export function shapeNeeds(kind: PieceKind): 'opening' | 'opening-or-size' | 'none' {
  switch (kind) {
    case 'door-frame':
      return 'opening';
    case 'cabinet-front':
      return 'opening-or-size';
    case 'drawer':
    case 'flat-door':
      return 'none';
    default:
      return unreachable(kind);
  }
}

/** The pieces that must be made before this one, as it takes sizes from them. */
export function requiredPieces(piece: Piece): readonly PieceId[] {
  switch (piece.kind) {
    case 'flat-door':
      return piece.parameters.frame === undefined ? [] : [piece.parameters.frame];
    case 'door-frame':
    case 'drawer':
    case 'cabinet-front':
      return [];
    default:
      return unreachable(piece);
  }
}
