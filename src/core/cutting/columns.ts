import { across } from './direction.ts';
import { hasLimits, keepsLimits } from './limits.ts';
import type { Bin, Model } from './model.ts';
import type { Proposal } from './pricing.ts';
import { cloneNode, makeFree, tidyTree } from './tree.ts';
import type { Node } from './tree.ts';

/** A pattern of the master program: how often each kind is in it, and the trees to cut it. */
export interface Column {
  readonly bin: Bin;
  readonly way: number;
  readonly roots: readonly Node[];
  /** Kinds and how often, two lists of equal length. */
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** Patterns known so far, each once. */
export interface Pool {
  readonly columns: Column[];
  readonly known: Set<string>;
}

export function makePool(): Pool {
  return { columns: [], known: new Set() };
}

/** Adds a pattern; false when it is known, empty, or breaks a limit of the job. */
export function addColumn(model: Model, pool: Pool, filling: Omit<Proposal, 'value'>): boolean {
  const { bin, way } = filling;
  const found = countKinds(filling.roots);
  const kinds = [...found.keys()].sort((a, b) => a - b);
  const counts = kinds.map((kind) => found.get(kind) as number);
  const key = keyOf({ bin, kinds, counts });
  if (kinds.length === 0 || pool.known.has(key)) return false;
  const roots = filling.roots.map((root) => liftRoot(cloneNode(root, null)));
  if (!settleRoots(model, bin, way, roots)) return false;
  pool.known.add(key);
  pool.columns.push({ bin, way, roots, kinds, counts });
  return true;
}

function keyOf({ bin, kinds, counts }: Pick<Column, 'bin' | 'kinds' | 'counts'>): string {
  return `${bin.index}:${kinds.join()}:${counts.join()}`;
}

/** Leaves only some patterns in a pool; the others may be found anew. */
export function keepColumns({ columns, known }: Pool, isKept: (column: Column) => boolean): void {
  const kept = columns.filter(isKept);
  columns.length = 0;
  known.clear();
  for (const column of kept) {
    columns.push(column);
    known.add(keyOf(column));
  }
}

/** How often each kind lies in some trees. */
export function countKinds(roots: readonly Node[]): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  for (const root of roots) countParts(root, found);
  return found;
}

function countParts(node: Node, found: Map<number, number>): void {
  if (node.kind >= 0) found.set(node.kind, (found.get(node.kind) ?? 0) + 1);
  for (const kid of node.kids) countParts(kid, found);
}

/** A part that is a whole tree gets a node above it, so that it keeps its size when the tree is given room. */
function liftRoot(root: Node): Node {
  if (root.kind < 0) return root;
  const host = makeFree(root.length, root.width, 0, 0);
  host.direction = across;
  host.kids = [root];
  root.parent = host;
  return host;
}

/** Gives the trees the room of their pieces. False when a limit breaks. */
function settleRoots(model: Model, bin: Bin, way: number, roots: readonly Node[]): boolean {
  const pieces = bin.pieces[way]?.pieces ?? [];
  return roots.every((root, i) => {
    const piece = pieces[i];
    if (!piece) return false;
    root.length = piece.length;
    root.width = piece.width;
    root.outer = piece.direction;
    root.stage = piece.stage;
    tidyTree(
      root,
      root.stage === 0 && model.limits.firstCut !== null ? model.limits.firstCut : 0,
      !hasLimits(model),
    );
    return !hasLimits(model) || keepsLimits(model, root);
  });
}
