import { asSeen, cutOutline } from '#core/drawing';
import { flattenOutline } from '#core/geometry';
import type { BuiltPiece, Material, Part, PartId } from '#core/joinery';
import { checkNestJob, type Corner, type NestPart } from '#core/nesting';
import type { Problem } from '#core/problems';
import type { Project, StockLine } from '#core/project';

import { stockOfJob } from '../stock-fit.ts';
import type { RouterGroup } from '../types.ts';

/** Between two parts the cutter passes, and a web of this is left so that nothing breaks out, mm (joinery E7). */
const web = 2;

/** What stays free along the edges of a sheet for its clamps, mm (joinery E7, common practice). */
const clampMargin = 10;

/** Arcs against their chords, mm: far inside what the web between two parts leaves. */
const flatness = 0.1;

type SheetMaterial = Extract<Material, { kind: 'sheet' }>;

/** Whether a part is cut by its outline on the router, by the wish of the project: sheet parts only. */
export function isRouted(project: Project, part: Part): boolean {
  return part.kind === 'sheet' && (project.routed ?? []).includes(part.id);
}

/** The pieces without the parts the router cuts by their outlines: what is left for the saws. */
export function withoutRouted(project: Project, pieces: readonly BuiltPiece[]): readonly BuiltPiece[] {
  if ((project.routed ?? []).length === 0) return pieces;
  return pieces.map((piece) => ({
    ...piece,
    parts: piece.parts.filter((part) => !isRouted(project, part)),
    matchedSets: piece.matchedSets.filter((set) =>
      set.parts.every((id) => !piece.parts.some((part) => part.id === id && isRouted(project, part))),
    ),
  }));
}

/** The jobs of the router: for each sheet material the parts it cuts by their true outlines, good face up. */
export function groupRouter(project: Project, pieces: readonly BuiltPiece[]): readonly RouterGroup[] {
  return project.materials.flatMap((material) => {
    if (material.kind !== 'sheet') return [];
    const parts = pieces
      .flatMap((piece) => piece.parts)
      .filter((part) => part.material === material.id && part.quantity > 0 && isRouted(project, part));
    return parts.length === 0 ? [] : [makeRouterGroup(project, material, parts)];
  });
}

function makeRouterGroup(project: Project, material: SheetMaterial, parts: readonly Part[]): RouterGroup {
  const lines = project.stock.filter((line) => line.material === material.id && line.count !== 0);
  const id = `${material.id}-router`;
  const job = {
    gap: project.tools.router.cutter + web,
    margin: clampMargin,
    stock: stockOfJob(lines, 'sheet').map((stock) => ({ ...stock, width: stock.width ?? 0 })),
    parts: parts.map(nestPart),
  };
  const faults = lines.length === 0 ? [noSheet(id, material, parts)] : checkNestJob(job);
  return {
    id,
    title: `${material.name}, router`,
    material: material.id,
    thickness: material.thickness,
    lines: lines.map((line: StockLine) => line.id),
    job,
    findings: faults.map((fault) => ({ ...fault, about: id })),
  };
}

/** The part as it lies with its face side up, its grain along the sheet unless it may lie as it likes. */
function nestPart(part: Part): NestPart {
  const upright = part.grain === 'along-width' ? 90 : 0;
  const angles = part.turn || part.grain === 'any' ? [0, 90, 180, 270] : [upright, upright + 180];
  const corners = (outline: Part['outline']): readonly Corner[] =>
    flattenOutline(asSeen(outline, part), flatness).map(({ x, y }): Corner => [x, y]);
  return {
    id: part.id,
    outline: corners(cutOutline(part)),
    ...(part.holes.length > 0 && { holes: part.holes.map(corners) }),
    angles,
    count: part.quantity,
  };
}

function noSheet(id: string, material: Material, parts: readonly { readonly id: PartId }[]): Problem {
  return {
    severity: 'stop',
    code: 'part-without-stock',
    about: id,
    message: `There is no sheet of ${material.name} for ${parts.map((part) => part.id).join(', ')} to be cut from on the router.`,
    remedy: 'Put one on the rack, owned or to be bought.',
  };
}
