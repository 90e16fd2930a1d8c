import { unreachable } from '#core/problems';
import { buildCabinetFront, newCabinetFront } from './cabinet-front.ts';
import { buildDoorFrame, newDoorFrame } from './door-frame.ts';
import { buildDrawer, newDrawer } from './drawer.ts';
import type { NewPiece, Piece, PieceKind } from './piece-types.ts';
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
      return 'none';
    default:
      return unreachable(kind);
  }
}
