import { formatSize, type LabelText } from '#core/drawing';
import { jointWords, type BuiltPiece, type Part } from '#core/joinery';
import type { Project } from '#core/project';
import type { LengthSystem } from '#core/units';

import { expandLayout, type ExpandedPart } from './expand-layout.ts';
import { describeEdge } from './list-parts.ts';
import { nameStock } from './stock-names.ts';
import type { PlannedGroup, PlannedRouting, Understanding } from './types.ts';

/** One label for each copy of each part (joinery E8), and for each stave of one that is glued up, in the order of the pieces. */
export function labelTexts(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
  routed: readonly PlannedRouting[] = [],
): readonly LabelText[] {
  const places = findPlaces(project, planned, routed);
  return understanding.pieces.flatMap((piece) =>
    piece.parts.flatMap((part) =>
      Array.from({ length: part.quantity * (part.staves?.count ?? 1) }, (_, blank) =>
        makeLabel({
          job: project.name,
          units: project.units,
          piece,
          part,
          blank,
          stock: places.get(part.id)?.[Math.floor(blank / (part.staves?.leaves ?? 1))] ?? '',
        }),
      ),
    ),
  );
}

/** For each part the places its copies are cut from, as `Birch plywood 12, sheet 2440 × 1220 no. 2 · strip B, 3rd`. */
function findPlaces(
  project: Project,
  planned: readonly PlannedGroup[],
  routed: readonly PlannedRouting[],
): ReadonlyMap<string, readonly string[]> {
  const places = new Map<string, readonly string[]>();
  for (const { plan } of routed)
    for (const { id, sheet } of plan.placements)
      places.set(id, [
        ...(places.get(id) ?? []),
        `router sheet ${sheet + 1}, ${nameStock(project, plan.sheets[sheet]?.stock ?? '')}`,
      ]);
  for (const { sheet, parts } of planned.flatMap((each) => listSheets(project, each)))
    for (const { part, place } of parts)
      places.set(part, [...(places.get(part) ?? []), place === '' ? sheet : `${sheet} · ${place}`]);
  return places;
}

/** Every piece of stock that is cut, numbered within its line, with its parts. */
function listSheets(
  project: Project,
  { group, plan }: PlannedGroup,
): readonly { readonly sheet: string; readonly parts: readonly ExpandedPart[] }[] {
  const used = new Map<string, number>();
  return plan.layouts.flatMap((layout) =>
    Array.from({ length: layout.times }, () => {
      const number = (used.get(layout.stock) ?? 0) + 1;
      used.set(layout.stock, number);
      return {
        sheet: `${nameStock(project, layout.stock)} no. ${number}`,
        parts: expandLayout(group, layout),
      };
    }),
  );
}

interface LabelSource {
  readonly job: string;
  readonly units: LengthSystem;
  readonly piece: BuiltPiece;
  readonly part: Part;
  /** Which of its blanks, counted from 0: copy after copy, of one that is glued up stave after stave. */
  readonly blank: number;
  readonly stock: string;
}

function makeLabel({ job, units, piece, part, blank, stock }: LabelSource): LabelText {
  const { length, width, thickness } = part.finished;
  const unit = units === 'mm' ? '' : ' in';
  const next = piece.steps.find((step) => step.place === 'workshop' && step.parts.includes(part.id));
  const hand = part.hand === 'none' || part.name.toLowerCase().includes(part.hand) ? '' : `, ${part.hand}`;
  const staves = part.staves?.count ?? 1;
  const copy = Math.floor(blank / staves);
  const stave = staves > 1 ? `, stave ${(blank % staves) + 1} of ${staves}` : '';
  const number = part.quantity > 1 ? ` (${copy + 1} of ${part.quantity})` : '';
  return {
    job: `${job} · ${piece.letter} ${piece.name}`,
    address: part.id,
    name: `${part.name}${hand}${stave}${number}`,
    size: [length, width, thickness].map((value) => formatSize(value, units)).join(' × ') + unit,
    faceSide: part.faceSide,
    seenFrom: piece.seenFrom,
    up: findUp(part, copy),
    grain: part.grain === 'along-length' ? 'along' : part.grain === 'along-width' ? 'across' : 'any',
    scribes: part.edges
      .filter((edge) => edge.treatment === 'scribed')
      .map((edge) => describeEdge(edge, units)),
    joints: piece.joints
      .filter((joint) => joint.between.includes(part.id))
      .map((joint) => `${jointWords(joint)} to ${joint.between.find((id) => id !== part.id) ?? part.id}`)
      .filter((text, index, list) => list.indexOf(text) === index),
    stock,
    next: next?.text ?? '',
  };
}

/** Less than this share of upright counts as lying flat: steeper than 45 degrees is up. */
const steep = 0.7;

/** Where up in the boat points on the part lying face up, x to the right and so y towards the reader; null when it lies flat. */
function findUp(part: Part, copy: number): LabelText['up'] {
  const placement = part.placements[copy] ?? part.placements[0];
  if (!placement) return null;
  const [x, y] = [placement.xAxis.y, placement.yAxis.y];
  if (Math.abs(x) >= steep && Math.abs(x) >= Math.abs(y)) return x > 0 ? 'right' : 'left';
  if (Math.abs(y) >= steep) return y > 0 ? 'down' : 'up';
  return null;
}
