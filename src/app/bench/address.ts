import type { BuiltPiece, Part } from '#core/joinery';

/** What the address after # points to: a piece, and perhaps one of its parts. */
export interface Aim {
  readonly built: BuiltPiece;
  readonly part: Part | null;
}

const sizeStart = 'size:';

/** The name of the working step that a link of a drawing leads to; null when it leads elsewhere. */
export function sizeOfLink(link: string): string | null {
  return link.startsWith(sizeStart) ? link.slice(sizeStart.length) : null;
}

/** The link of a drawing that leads to a working step. */
export function linkOfSize(name: string): string {
  return sizeStart + name;
}

/** The piece (and part) at an address such as `C` or `C4`; the first piece when it leads nowhere, null when there is none. */
export function aimAt(address: string, pieces: readonly BuiltPiece[]): Aim | null {
  for (const built of pieces) {
    const part = built.parts.find((each) => each.id === address);
    if (part) return { built, part };
  }
  const built = pieces.find((each) => each.letter === address || each.piece === address) ?? pieces[0];
  return built ? { built, part: null } : null;
}
