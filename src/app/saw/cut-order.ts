import type { CutNode } from '#core/cutting';
import type { LayoutView } from '#core/drawing';

export interface CutSetting {
  readonly order: number;
  readonly label: string;
  /** What is sawn, in words. */
  readonly words: string;
  /** From the lower or left edge of the piece in hand to the kerf, mm: the setting of the fence or stop. */
  readonly setting: number;
}

/** The cuts of a layout in sawing order, each with the setting it needs; empty where nothing is sawn by a tree of cuts. */
export function cutSettings(view: LayoutView, tree: CutNode | null): readonly CutSetting[] {
  const labels = new Map(view.cuts.map((cut) => [cut.order, cut.label]));
  return cutsOf(tree).map((node, index) => {
    const isRip = node.cut === 'along';
    return {
      order: index + 1,
      label: labels.get(index + 1) ?? String(index + 1),
      words: isRip ? 'Rip along the length' : 'Cut across',
      setting: node.at - (isRip ? node.y : node.x),
    };
  });
}

type Cut = Extract<CutNode, { cut: 'along' | 'across' }>;

/** The cuts of a tree, a node before its children: the order of sawing. */
function cutsOf(node: CutNode | null): readonly Cut[] {
  if (!node || !('cut' in node)) return [];
  const [low, high] = node.children;
  return [node, ...cutsOf(low), ...cutsOf(high)];
}
