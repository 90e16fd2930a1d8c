import type { ShapeKind } from '#core/geometry';
import type { PieceId } from './ids.ts';
import type { NewPiece, ParameterInfo, Piece, PieceKind } from './piece-types.ts';
import type { BuildContext, BuiltPiece } from './types.ts';

/** Names of working steps that are sizes seen from the front, the most telling first. */
export interface SeenSizes {
  readonly across: readonly string[];
  readonly up: readonly string[];
}

/** Which measured shapes a piece can be fitted to, and whether it must be. */
export interface ShapeNeeds {
  readonly kinds: readonly ShapeKind[];
  readonly required: boolean;
}

/** How a kind of piece is offered: its trade name, what it is for in a line, and a short page of help. */
export interface KindWords {
  readonly name: string;
  readonly purpose: string;
  /** Paragraphs: what it consists of, what to decide, how it goes together, what goes wrong. */
  readonly help: readonly string[];
}

/** All that Joggle knows of one kind of piece; each lies in a folder of its own. */
export interface KindOfPiece<Kind extends PieceKind> {
  readonly words: KindWords;
  readonly parameters: readonly ParameterInfo[];
  readonly shape: ShapeNeeds;
  readonly seen: SeenSizes;
  /** Everything the piece comes to: parts, joints, fixings, steps, working; what stands in the way is in `findings`. */
  readonly build: (piece: Extract<Piece, { kind: Kind }>, context: BuildContext) => BuiltPiece;
  /** One with the trade's defaults and the first materials that suit it. */
  readonly make: (start: NewPiece) => Piece;
  /** Key of the parameter that says how far it stays from the edges of its shape, where it follows them. */
  readonly gapToShape?: string;
  /** Its parts are carried one by one and meet in their place, as lids and trim. */
  readonly inParts?: true;
  /** Nothing of it is glued but panels too wide for a board, with the glue of the project: it has no choice of its own. */
  readonly unglued?: true;
  /** The pieces that must be made before this one, as it takes sizes from them. */
  readonly requires?: (piece: Extract<Piece, { kind: Kind }>) => readonly PieceId[];
}
