import type { DoorLeaf } from './types.ts';
import type { Piece } from '../piece-types.ts';
import type { BuiltPiece } from '../types.ts';

/** A piece as asked for and as built. */
export interface MadePiece {
  readonly piece: Piece;
  readonly built: BuiltPiece;
}

/** Numbers of the working by name; null where there is none. */
export function valueOf(built: BuiltPiece): (name: string) => number | null {
  return (name) => built.working.find((step) => step.name === name)?.value ?? null;
}

export const valuesOf = (built: BuiltPiece, ...names: readonly string[]): readonly (number | null)[] =>
  names.map(valueOf(built));

/** The side a door hangs on, as seen. */
export function hingeSide({ parameters }: Piece): 'left' | 'right' {
  return 'hinged' in parameters && parameters.hinged === 'right' ? 'right' : 'left';
}

/** Which of the doors of its opening it is. */
export function leafOf({ parameters }: Piece): DoorLeaf {
  return 'leaf' in parameters ? (parameters.leaf ?? 'whole') : 'whole';
}

export const isLeaf = (piece: Piece, leaf: DoorLeaf): boolean => leafOf(piece) === leaf;

/** How deep a frame is rebated for its door; nothing where it is not. */
export function rebateOf({ piece, built }: MadePiece): number {
  return stopOf(piece) === 'rebated' ? (valueOf(built)('r') ?? 0) : 0;
}

/** How far the face of a door lies behind the near face of its frame. */
export function nearOf({ piece }: MadePiece, door: MadePiece, through: number): number {
  return stopOf(piece) === 'cover' ? Math.max(0, through - (valueOf(door.built)('T') ?? 0)) : 0;
}

function stopOf({ parameters }: Piece): string {
  return 'stop' in parameters ? (parameters.stop ?? 'planted') : 'planted';
}
