import { boardForTwoLeaves } from '#core/materials';
import { glueUp } from './rules.ts';
import type { JoinerySettings, Material } from './piece-types.ts';
import type { Board, BuildContext, Part, PartSize } from './types.ts';

/** A width this little over is not: sizes are worked out, not measured, mm. */
const slack = 1e-6;

/** A part that is to be glued up: what lies along and across the grain, and the widest board its staves can come from. */
export interface Panel {
  readonly part: Part;
  readonly state: 'sawn' | 'planed';
  readonly length: number;
  readonly width: number;
  /** Widest board for a stave, null when any width can be had. */
  readonly board: number | null;
  /** Widest stave that stays flat, null when it need not. */
  readonly flat: number | null;
  /** Staves that come out of one blank through its thickness: 2 where the figure is opened like a book. */
  readonly leaves: 1 | 2;
  /** Leaves were wanted, but no board is thick enough for two. */
  readonly lacksBook: boolean;
}

/** The part as a panel of staves when it is too wide for one board, or its figure is to be opened like a book; else null. */
export function findPanel(part: Part, context: BuildContext): Panel | null {
  const material = context.materials.find(({ id }) => id === part.material);
  if (part.kind !== 'solid' || material?.kind !== 'solid' || part.placements.length === 0) return null;
  const { length, width } = withGrain(part, part.cut);
  const boardFor = (thickness: number) =>
    widestFor({ length: length + glueUp.length, thickness }, part, context.boards);
  const rough = withGrain(part, part.rough);
  const whole = widestFor({ length: rough.length, thickness: part.rough.thickness }, part, context.boards);
  const bookBoard = part.bookMatched ? boardFor(boardForTwoLeaves(part.cut.thickness)) : 0;
  const isBook = part.bookMatched === true && isWideEnough(bookBoard);
  const most = mostFlat(context.settings);
  const flat = part.flat && width > most + slack ? most : null;
  const isTooWide = whole !== null && rough.width > whole;
  const lacksBook = part.bookMatched === true && !isBook;
  if (flat === null && !isTooWide && !part.bookMatched) return null;
  const board = isBook ? bookBoard : boardFor(staveThickness(part.cut, material));
  return { part, state: material.state, length, width, board, flat, leaves: isBook ? 2 : 1, lacksBook };
}

/** Whether staves can be ripped from boards this wide. */
export function isWideEnough(board: number | null): boolean {
  return board === null || board > glueUp.narrow / 2;
}

/** Widest flat-sawn board in a part that must lie flat unless the project says another, mm (joinery D3). */
export const widestFlat: number = glueUp.widestFlat;

/** The same as the project has it, mm. */
export function mostFlat({ widestFlat: wanted }: JoinerySettings): number {
  return wanted !== undefined && wanted > 0 ? wanted : widestFlat;
}

/** Width of the widest board at hand for a blank; 0 when none is long and thick enough, null when any can be had. */
function widestFor(
  blank: { readonly length: number; readonly thickness: number },
  { material }: Part,
  boards: readonly Board[] | undefined,
): number | null {
  const own = boards?.filter((board) => board.material === material) ?? [];
  if (own.length === 0) return null; // an empty rack is told of, and the part left as it is
  const able = own.filter((board) => board.length >= blank.length && board.thickness >= blank.thickness);
  return Math.floor(Math.max(0, ...able.map(({ width }) => width)));
}

function staveThickness(cut: PartSize, material: Extract<Material, { kind: 'solid' }>): number {
  return cut.thickness + (material.state === 'sawn' ? glueUp.thickness : 0);
}

/** A size with its length along the grain. */
export function withGrain(part: Part, size: PartSize): { readonly length: number; readonly width: number } {
  return part.grain === 'along-width'
    ? { length: size.width, width: size.length }
    : { length: size.length, width: size.width };
}
