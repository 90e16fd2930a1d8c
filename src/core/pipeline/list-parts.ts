import { formatSize } from '#core/drawing';
import type { Part, PartEdge, PartId, PartSize } from '#core/joinery';
import type { Project } from '#core/project';
import type { LengthSystem } from '#core/units';

import { findBlocked } from './find-blocked.ts';
import { blanksOf } from './need.ts';
import { nameStock } from './stock-names.ts';
import type { Table } from './table.ts';
import type { PlannedGroup, PlannedRouting, Understanding } from './types.ts';

const header = [
  'part',
  'piece',
  'name',
  'quantity',
  'hand',
  'material',
  'finished length mm',
  'finished width mm',
  'finished thickness mm',
  'cut length mm',
  'cut width mm',
  'cut thickness mm',
  'rough length mm',
  'rough width mm',
  'rough thickness mm',
  'blanks each',
  'grain',
  'matched set',
  'face side',
  'edges',
  'cut from',
  'do not cut',
  'notes',
] as const;

/** The parts list, one line a part, in the order of the pieces. Sizes are shown to a tenth of a millimetre. */
export function listParts(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
  routed: readonly PlannedRouting[] = [],
): Table {
  const blocked = findBlocked(project, understanding, planned);
  return {
    header,
    rows: understanding.pieces.flatMap((piece) =>
      piece.parts.map((part) => [
        part.id,
        `${piece.letter} ${piece.name}`,
        part.name,
        part.quantity,
        part.hand === 'none' ? '' : part.hand,
        project.materials.find((material) => material.id === part.material)?.name ?? part.material,
        ...sizeCells(part.finished),
        ...sizeCells(part.cut),
        ...sizeCells(roughOf(part, understanding.groups)),
        blanksOf(part),
        grainWords[part.grain],
        part.matched ? `${part.matched.set}, no. ${part.matched.index + 1}` : '',
        part.faceSide,
        part.edges
          .filter((edge) => edge.treatment !== 'bare')
          .map((edge) => describeEdge(edge))
          .join('; '),
        findStock(part.id, planned, routed)
          .map(({ id, by }) => `${nameStock(project, id)}${by}`)
          .filter((name, index, list) => list.indexOf(name) === index)
          .join('; '),
        blocked.get(part.id)?.message ?? '',
        part.notes.join('; '),
      ]),
    ),
  };
}

const grainWords: Readonly<Record<Part['grain'], string>> = {
  'along-length': 'along length',
  'along-width': 'along width',
  any: 'any',
};

function sizeCells(size: PartSize): readonly number[] {
  return [size.length, size.width, size.thickness].map((each) => Math.round(each * 10) / 10);
}

const edgeWords: Readonly<Record<PartEdge['edge'], string>> = {
  'face-edge': 'face edge',
  'far-edge': 'far edge',
  start: 'start',
  end: 'end',
};

/** An edge in words, as `far edge scribed 15`. */
export function describeEdge(edge: PartEdge, units: LengthSystem = 'mm'): string {
  const amount = edge.amount === undefined ? '' : ` ${formatSize(edge.amount, units)}`;
  return `${edgeWords[edge.edge]} ${edge.treatment}${amount}`;
}

/** The blank as it comes: one sawn off a batten keeps the batten's own section. */
export function roughOf(part: Part, groups: Understanding['groups']): PartSize {
  const group = groups.find(
    (each) =>
      each.form === 'batten' &&
      each.blanks.some((blank) => blank.parts.some((item) => item.part === part.id)),
  );
  const { width, thickness } = { ...part.rough, ...group?.section };
  return { length: part.rough.length, width, thickness };
}

/** The stock a part is cut from by its id, and by what when it is not the saw. */
function findStock(
  id: PartId,
  planned: readonly PlannedGroup[],
  routed: readonly PlannedRouting[],
): readonly { readonly id: string; readonly by: string }[] {
  const stock = planned.flatMap(({ group, plan }) => {
    const blanks = group.blanks.filter((blank) => blank.parts.some((part) => part.part === id));
    return plan.layouts
      .filter((layout) => layout.placed.some((placed) => blanks.some((blank) => blank.id === placed.id)))
      .map((layout) => ({ id: layout.stock, by: '' }));
  });
  const sheets = routed.flatMap(({ plan }) =>
    plan.placements
      .filter((placement) => placement.id === id)
      .map(({ sheet }) => ({ id: plan.sheets[sheet]?.stock ?? '', by: ' (router)' })),
  );
  return [...stock, ...sheets];
}
