import type { AssemblyStep, BuiltPiece, PartId } from '#core/joinery';
import { flatteningLoss, mostFlatteningLoss } from '#core/materials';
import { markSize, sayLengths, type LengthSystem } from '#core/units';
import type { Task } from '#core/visits';

import { firstLooks } from './first-looks.ts';
import { stepId, stockThing } from './task-names.ts';
import type { CuttingGroup, PlannedGroup, RouterGroup } from './types.ts';
import { countWords, describeThings } from './words.ts';

/** Minutes reckoned for sawing and routing (common practice, no source). */
const reckoned = { setSaw: 15, layout: 10, part: 2, setRouter: 30, outline: 6 } as const;

/** Parts of a cutting group that are sawn in one go, and the tasks they wait for besides what all cutting waits for. */
export interface Cutting {
  readonly id: string;
  readonly group: CuttingGroup;
  readonly parts: readonly PartId[];
  readonly waits: readonly string[];
  /** Of a group sawn in two goes: the first leaves the others whole, the second takes them. */
  readonly go: 'only' | 'first' | 'second';
}

/**
 * How a group is sawn: in one go, or in two where some of its parts are fitted to what is measured when others are already
 * in place (joinery B6: fronts are cut to the measured openings).
 */
export function listCuttings(group: CuttingGroup, pieces: readonly BuiltPiece[]): readonly Cutting[] {
  const parts = [...new Set(group.blanks.flatMap((blank) => blank.parts.map((part) => part.part)))];
  const waits = new Map(parts.map((part) => [part, waitsOf(part, pieces)]));
  const late = parts.filter((part) => (waits.get(part) ?? []).length > 0);
  const early = parts.filter((part) => !late.includes(part));
  const lateWaits = [...new Set(late.flatMap((part) => waits.get(part) ?? []))];
  const id = `cut:${group.id}`;
  if (late.length === 0 || early.length === 0) return [{ id, group, parts, waits: lateWaits, go: 'only' }];
  return [
    { id, group, parts: early, waits: [], go: 'first' },
    { id: `${id}/fitted`, group, parts: late, waits: [...lateWaits, id], go: 'second' },
  ];
}

/** What must be done before a part may be sawn: the steps before the first that handles it, if one of them is work aboard. */
function waitsOf(part: PartId, pieces: readonly BuiltPiece[]): readonly string[] {
  const piece = pieces.find((each) => each.parts.some((own) => own.id === part));
  const first = piece?.steps.find((step) => step.parts.includes(part));
  if (!piece || !first) return [];
  const looks = firstLooks(piece).map((step) => step.id);
  const isAboard = (id: string): boolean => {
    const step = piece.steps.find((each) => each.id === id);
    if (!step) return false;
    return (step.place === 'boat' && !looks.includes(id)) || step.after.some(isAboard);
  };
  return first.after.some(isAboard) ? first.after.map((id) => stepId(piece, { id })) : [];
}

/** The task of one go at the saw. */
export function cutTask(
  cutting: Cutting,
  planned: readonly PlannedGroup[],
  before: readonly string[],
  units: LengthSystem,
): Task {
  const { id, group, parts, waits, go } = cutting;
  const plan = planned.find((each) => each.group.id === group.id)?.plan;
  const layouts = plan?.layouts.reduce((sum, layout) => sum + layout.times, 0) ?? 1;
  const amount = plan ? ` (${countWords(layouts, group.form)})` : '';
  const rest = go === 'first' ? ' Leave the rest whole: it is cut when its openings are measured.' : '';
  const what = go === 'second' ? `the rest of ${group.title}` : group.title;
  return {
    id,
    text: `Cut ${what} by the cutting diagrams${amount}: ${describeThings(parts)}.${rest}${adviseHollow(cutting, units)}`,
    place: 'workshop',
    minutes: reckoned.setSaw + layouts * reckoned.layout + parts.length * reckoned.part,
    after: [...before, 'buy:stock', 'buy:fixings', ...waits],
    needs: [stockThing(group.title), 'cutting diagrams', 'labels'],
    makes: parts,
  };
}

/** Hollow of a board taken as an example, mm. */
const exampleHollow = 4;

/** What to do with boards that are hollow across: flattened whole they lose their hollow, ripped first much less. */
function adviseHollow({ group, go }: Cutting, units: LengthSystem): string {
  if (group.form !== 'board' || go === 'second') return '';
  const board = Math.max(...group.job.stock.map((stock) => stock.width ?? 0));
  const strip = Math.max(...group.job.parts.map((part) => part.width ?? 0));
  const cupRadius = board ** 2 / (8 * exampleHollow);
  const show = (size: number): string => sayLengths(markSize(size), units);
  const left = show(flatteningLoss(strip, cupRadius));
  return ` Rip boards that are hollow across by more than ${show(mostFlatteningLoss)} before flattening them: ${show(board)} wide and hollow by ${show(exampleHollow)}, one loses ${show(exampleHollow)} whole, and ${left} ripped to ${show(strip)}.`;
}

/** What the router cuts by outlines, as far as steps wait for it. */
export function routerCutting(group: RouterGroup): Pick<Cutting, 'id' | 'parts'> {
  return { id: `cut:${group.id}`, parts: group.job.parts.map(({ id }) => id) };
}

/** The task of cutting parts by their outlines on the router. */
export function routerTask(group: RouterGroup, before: readonly string[]): Task {
  const { id, parts } = routerCutting(group);
  return {
    id,
    text: `Cut ${describeThings(parts)} from ${group.title.replace(/, router$/, '')} on the router, by the sheet files; check the 100 mm bar and cut in air first.`,
    place: 'workshop',
    minutes: reckoned.setRouter + parts.length * reckoned.outline,
    after: [...before, 'buy:stock', 'buy:fixings'],
    needs: [stockThing(group.title), 'router sheet files', 'labels', 'clamps'],
    makes: parts,
  };
}

/** Cutting that a step waits for: that of the parts it handles. */
export function cutsBefore(
  step: AssemblyStep,
  cuttings: readonly Pick<Cutting, 'id' | 'parts'>[],
): readonly string[] {
  return cuttings
    .filter((cutting) => step.parts.some((part) => cutting.parts.includes(part)))
    .map((cutting) => cutting.id);
}
