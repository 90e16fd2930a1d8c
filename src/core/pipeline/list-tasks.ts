import type { AssemblyStep, BuiltPiece } from '#core/joinery';
import type { Project } from '#core/project';
import { formatNumber } from '#core/units';
import type { Task } from '#core/visits';

import { listShopping } from './list-shopping.ts';
import type { CuttingGroup, PlannedGroup, ShapeOutcome, Understanding } from './types.ts';
import { countWords, describeThings, listWords } from './words.ts';

/** Minutes reckoned for what is no step of a piece (common practice, no source). */
const reckoned = { measure: 20, buy: 60, setSaw: 15, layout: 10, part: 2 } as const;

/**
 * All there is to do, with place and order: readings in doubt are taken again, then stock and fixings bought, blanks cut, and
 * each piece made step by step. Ids are those of the project's `done`. What has been planned makes buying and sawing exact.
 */
export function listTasks(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[] = [],
): readonly Task[] {
  const { groups } = understanding;
  const measuring = understanding.shapes.flatMap((outcome) => measureTask(outcome));
  const looks = understanding.pieces.flatMap((piece) => firstLooks(piece).map((step) => stepId(piece, step)));
  const before = [...measuring.map((task) => task.id), ...looks];
  const tasks = [
    ...measuring,
    ...buyTasks(project, understanding, planned, before),
    ...groups.map((group) => cutTask(group, planned, before)),
    ...understanding.pieces.flatMap((piece) => stepTasks(project, piece, groups, measuring)),
  ];
  const ids = new Set(tasks.map((task) => task.id));
  return tasks.map((task) => ({
    ...task,
    after: task.after.filter((id) => !id.startsWith('buy:') || ids.has(id)),
    ...(project.done.includes(task.id) && { done: true }),
  }));
}

/** Steps aboard that wait for nothing made: looking and measuring once more, before anything is bought. */
function firstLooks(piece: BuiltPiece): readonly AssemblyStep[] {
  const looks = new Set<string>();
  for (const step of piece.steps)
    if (step.place === 'boat' && step.parts.length === 0 && step.after.every((id) => looks.has(id)))
      looks.add(step.id);
  return piece.steps.filter((step) => looks.has(step.id));
}

function measureTask({ shape, adjustment }: ShapeOutcome): readonly Task[] {
  const said = adjustment.suspects.map(({ id, slip }) => {
    const reading = shape.readings.find((each) => each.id === id);
    const value = reading ? `reads ${formatNumber(reading.value, 1)}, ` : '';
    return `${id} (${value}about ${formatNumber(Math.abs(slip), 1)} too ${slip > 0 ? 'large' : 'small'})`;
  });
  const wanted = [
    ...(said.length > 0 ? [`take ${listWords(said)} again, by a fresh look`] : []),
    ...adjustment.undetermined,
  ];
  if (wanted.length === 0) return [];
  return [
    {
      id: `measure:${shape.id}`,
      text: `${shape.name}: ${wanted.map((each) => each.replace(/\.$/, '')).join('; ')}.`,
      place: 'boat',
      minutes: reckoned.measure,
      after: [],
      needs: ['tape', 'the readings'],
      makes: [],
    },
  ];
}

function buyTasks(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
  before: readonly string[],
): readonly Task[] {
  const lines = listShopping(project, understanding, planned).filter((line) => line.from === 'to buy');
  const stock = lines.filter((line) => line.kind !== 'fixing');
  const fixings = lines.filter((line) => line.kind === 'fixing');
  const { groups } = understanding;
  const isPlanned = planned.length === groups.length;
  const wanted = isPlanned
    ? stock.map((line) => `${line.count} × ${line.item} ${line.size}`)
    : groups.map((group) => group.title);
  const stockTask: Task = {
    id: 'buy:stock',
    text: `Buy ${listWords(wanted)}${isPlanned ? '' : ', as the cutting plan says'}.`,
    place: 'shop',
    minutes: reckoned.buy,
    after: before,
    needs: ['shopping list', 'calliper for the thickness'],
    makes: groups.map((group) => stockThing(group.title)),
  };
  const fixingsTask: Task = {
    id: 'buy:fixings',
    text: `Buy ${countWords(fixings.length, 'kind')} of fixings and sundries, by the shopping list.`,
    place: 'shop',
    minutes: reckoned.buy / 2,
    after: before,
    needs: ['shopping list'],
    makes: understanding.pieces.filter((piece) => piece.fixings.length > 0).map(fixingsThing),
  };
  return [...(wanted.length > 0 ? [stockTask] : []), ...(fixings.length > 0 ? [fixingsTask] : [])];
}

function stockThing(title: string): string {
  return `stock: ${title}`;
}

function fixingsThing(piece: BuiltPiece): string {
  return `fixings for ${piece.letter}`;
}

function cutTask(group: CuttingGroup, planned: readonly PlannedGroup[], before: readonly string[]): Task {
  const plan = planned.find((each) => each.group.id === group.id)?.plan;
  const layouts = plan?.layouts.reduce((sum, layout) => sum + layout.times, 0) ?? 1;
  const parts = [...new Set(group.blanks.flatMap((blank) => blank.parts.map((part) => part.part)))];
  const amount = plan ? ` (${countWords(layouts, group.form)})` : '';
  return {
    id: `cut:${group.id}`,
    text: `Cut ${group.title} by the cutting diagrams${amount}: ${describeThings(parts)}.`,
    place: 'workshop',
    minutes: reckoned.setSaw + layouts * reckoned.layout + parts.length * reckoned.part,
    after: [...before, 'buy:stock', 'buy:fixings'],
    needs: [stockThing(group.title), 'cutting diagrams', 'labels'],
    makes: parts,
  };
}

function stepId(piece: BuiltPiece, step: { readonly id: string }): string {
  return `step:${piece.letter}/${step.id}`;
}

function stepTasks(
  project: Project,
  piece: BuiltPiece,
  groups: readonly CuttingGroup[],
  measuring: readonly Task[],
): readonly Task[] {
  const looks = firstLooks(piece);
  const shape = project.pieces.find((each) => each.id === piece.piece)?.shape;
  const survey = measuring.filter((task) => task.id === `measure:${shape}`).map((task) => task.id);
  const firstWith = (place: AssemblyStep['place']): AssemblyStep | undefined =>
    piece.steps.find((step) => step.place === place && step.parts.length > 0);
  const fixed = [firstWith('workshop'), firstWith('boat')];
  return piece.steps.map((step) => ({
    id: stepId(piece, step),
    text: `${piece.letter} ${piece.name}: ${step.text}`,
    place: step.place,
    minutes: step.minutes,
    after: [
      ...step.after.map((id) => stepId(piece, { id })),
      ...(looks.includes(step) ? survey : cutsBefore(step, groups)),
    ],
    needs: [
      ...partsNeeded(piece, step),
      ...(fixed.includes(step) && piece.fixings.length > 0 ? [fixingsThing(piece)] : []),
      ...(step.take ?? []),
    ],
    makes: [],
  }));
}

/** Cutting that a step waits for: that of the parts it handles. */
function cutsBefore(step: AssemblyStep, groups: readonly CuttingGroup[]): readonly string[] {
  return groups
    .filter((group) =>
      group.blanks.some((blank) => blank.parts.some((part) => step.parts.includes(part.part))),
    )
    .map((group) => `cut:${group.id}`);
}

/** Parts that must be there: those it handles; aboard also those of all the work before it, which come as one. */
function partsNeeded(piece: BuiltPiece, step: AssemblyStep): readonly string[] {
  if (step.place !== 'boat') return step.parts;
  const before = new Set<string>();
  const follow = (ids: readonly string[]): void => {
    for (const id of ids.filter((each) => !before.has(each))) {
      before.add(id);
      follow(piece.steps.find((each) => each.id === id)?.after ?? []);
    }
  };
  follow(step.after);
  const worked = piece.steps.filter((each) => before.has(each.id)).flatMap((each) => each.parts);
  return [...new Set([...step.parts, ...worked])];
}
