import type { Direction } from './direction.ts';
import { laySheet } from './free-sheet.ts';
import type { Placing } from './free-sheet.ts';
import type { FreeLoad } from './free-search.ts';
import { emptyLoad } from './load.ts';
import type { Load } from './load.ts';
import type { Bin, Model } from './model.ts';
import { makeFree } from './tree.ts';
import type { Node } from './tree.ts';
import { useColumn } from './use-column.ts';

/** A tree of cuts without ways back up, so that it can be copied from one thread to another. */
export interface PackedNode {
  readonly length: number;
  readonly width: number;
  readonly direction: Direction | 0;
  readonly kind: number;
  readonly turned: boolean;
  readonly outer: Direction | 0;
  readonly stage: number;
  readonly kids: readonly PackedNode[];
}

/** A load as plain data: for any search of the same job. */
export interface PackedLoad {
  readonly sheets: readonly {
    readonly bin: number;
    readonly way: number;
    readonly roots: readonly PackedNode[];
  }[];
}

/** The same for a load without trees of cuts. */
export interface PackedFreeLoad {
  readonly sheets: readonly { readonly bin: number; readonly placings: readonly Placing[] }[];
}

export function packLoad({ sheets }: Load): PackedLoad {
  return {
    sheets: sheets.map(({ bin, way, roots }) => ({ bin: bin.index, way, roots: roots.map(packNode) })),
  };
}

function packNode({ length, width, direction, kind, turned, outer, stage, kids }: Node): PackedNode {
  return { length, width, direction, kind, turned, outer, stage, kids: kids.map(packNode) };
}

/** The load again, its parts counted against the model. Throws when it is not one of this job. */
export function unpackLoad(model: Model, packed: PackedLoad): Load {
  const load = emptyLoad(model);
  for (const { bin, way, roots } of packed.sheets) {
    const column = {
      ...{ bin: binOf(model, bin), way, kinds: [], counts: [] },
      roots: roots.map((root) => unpackNode(root, null)),
    };
    if (useColumn(model, load, column) === 0) throw new Error('a load of another job was sent');
  }
  return load;
}

function unpackNode(packed: PackedNode, parent: Node | null): Node {
  const node = makeFree(packed.length, packed.width, packed.outer, packed.stage);
  node.direction = packed.direction;
  node.kind = packed.kind;
  node.turned = packed.turned;
  node.parent = parent;
  if (packed.kids.length > 0) node.kids = packed.kids.map((kid) => unpackNode(kid, node));
  return node;
}

export function packFreeLoad({ sheets }: FreeLoad): PackedFreeLoad {
  return { sheets: sheets.map(({ bin, placings }) => ({ bin: bin.index, placings })) };
}

/** The load again. All parts are on it, as on every best load of the free search. */
export function unpackFreeLoad(model: Model, packed: PackedFreeLoad): FreeLoad {
  const sheets = packed.sheets.map(({ bin, placings }) => laySheet(model, binOf(model, bin), placings));
  return {
    sheets,
    left: new Int32Array(model.kinds.length),
    leftArea: 0,
    cost: sheets.reduce((sum, { bin }) => sum + bin.cost, 0),
  };
}

function binOf(model: Model, index: number): Bin {
  const bin = model.bins[index];
  if (!bin) throw new Error('a load of another job was sent');
  return bin;
}
