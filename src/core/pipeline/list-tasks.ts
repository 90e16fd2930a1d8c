import type { AssemblyStep, BuiltPiece } from '#core/joinery';
import type { Project } from '#core/project';
import { formatNumber, type LengthSystem } from '#core/units';
import type { Task } from '#core/visits';

import { cutsBefore, cutTask, listCuttings, routerCutting, routerTask, type Cutting } from './cut-tasks.ts';
import { firstLooks } from './first-looks.ts';
import { listShopping } from './list-shopping.ts';
import { waitElsewhere } from './steps-elsewhere.ts';
import { readingsOf } from './shapes/shape-readings.ts';
import { wordOrdinates } from './shapes/shape-words.ts';
import { fixingsThing, stepId, stockThing } from './task-names.ts';
import type { PlannedGroup, ShapeOutcome, Understanding } from './types.ts';
import { countWords, listWords, showSizeIn } from './words.ts';

/** Minutes reckoned for what is no step of a piece (common practice, no source). */
const reckoned = { measure: 20, buy: 60 } as const;

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
  const measuring = understanding.shapes.flatMap((outcome) => measureTask(outcome, project.units));
  const looks = understanding.pieces.flatMap((piece) => firstLooks(piece).map((step) => stepId(piece, step)));
  const before = [...measuring.map((task) => task.id), ...looks];
  const cuts = groups.flatMap((group) => listCuttings(group, understanding.pieces));
  const tasks = [
    ...measuring,
    ...buyTasks(project, understanding, planned, before),
    ...cuts.map((cut) => cutTask(cut, planned, before, project.units)),
    ...understanding.routing.map((group) => routerTask(group, before)),
    ...understanding.pieces.flatMap((piece) =>
      stepTasks(project, piece, [...cuts, ...understanding.routing.map(routerCutting)], measuring),
    ),
  ];
  const ids = new Set(tasks.map((task) => task.id));
  const waits = waitElsewhere(understanding.pieces);
  return tasks.map((task) => ({
    ...task,
    after: [
      ...task.after.filter((id) => !id.startsWith('buy:') || ids.has(id)),
      ...(waits.get(task.id) ?? []),
    ],
    ...(project.done.includes(task.id) && { done: true }),
  }));
}

function measureTask(
  { shape, adjustment, ordinateSlips = [] }: ShapeOutcome,
  units: LengthSystem,
): readonly Task[] {
  const said = adjustment.suspects.map(({ id, slip }) => {
    const reading = readingsOf(shape).find((each) => each.id === id);
    const show = (amount: number): string =>
      reading?.kind === 'angle' ? formatNumber(amount, 1) : showSizeIn(units, amount);
    const value = reading ? `reads ${show(reading.value)}, ` : '';
    return `${id} (${value}about ${show(Math.abs(slip))} too ${slip > 0 ? 'large' : 'small'})`;
  });
  const wanted = [
    ...(said.length > 0 ? [`take ${listWords(said)} again, by a fresh look`] : []),
    ...ordinateSlips.map(({ item, at }) => `take ${wordOrdinates(shape, item, at)} again`),
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
  const isPlanned = planned.length === groups.length && understanding.routing.length === 0;
  const wanted = isPlanned
    ? stock.map((line) => `${line.count} × ${line.item} ${line.size}`)
    : [...groups, ...understanding.routing].map((group) => group.title);
  const stockTask: Task = {
    id: 'buy:stock',
    text: `Buy ${listWords(wanted)}${isPlanned ? '' : ', as the cutting plan says'}.`,
    place: 'shop',
    minutes: reckoned.buy,
    after: before,
    needs: ['shopping list', 'calliper for the thickness'],
    makes: [...groups, ...understanding.routing].map((group) => stockThing(group.title)),
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

function stepTasks(
  project: Project,
  piece: BuiltPiece,
  cuts: readonly Pick<Cutting, 'id' | 'parts'>[],
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
      ...(looks.includes(step) ? survey : cutsBefore(step, cuts)),
    ],
    needs: [
      ...partsNeeded(piece, step),
      ...(fixed.includes(step) && piece.fixings.length > 0 ? [fixingsThing(piece)] : []),
      ...(step.take ?? []),
    ],
    makes: [],
  }));
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
