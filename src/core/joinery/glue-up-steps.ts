import type { Glue } from '#core/materials';
import { markSize } from '#core/units';
import { glueUp } from './rules.ts';
import type { AssemblyStep, Part } from './types.ts';

/** Minutes reckoned for jointing and gluing (common practice): for each panel, and for each of its joints. */
const reckoned = { panel: 25, joint: 15 } as const;

/** The steps of a piece with the gluing of its panels, each before the first step that handles it and after what that waits for. */
export function glueUpSteps(
  steps: readonly AssemblyStep[],
  panels: readonly Part[],
  glue: Glue,
): readonly AssemblyStep[] {
  const left = new Set(panels.map(({ id }) => id));
  const laid: AssemblyStep[] = [];
  // a piece may have a step of that name already, as the door frame does
  const taken = new Set(steps.map(({ id }) => id));
  for (const step of steps) {
    const own = panels.filter(({ id }) => left.has(id) && step.parts.includes(id));
    if (own.length === 0) {
      laid.push(step);
      continue;
    }
    own.forEach(({ id }) => left.delete(id));
    const id = nameStep(taken);
    taken.add(id);
    laid.push(glueStep({ id, after: step.after }, own, glue), { ...step, after: [...step.after, id] });
  }
  const rest = panels.filter(({ id }) => left.has(id));
  return rest.length === 0 ? laid : [glueStep({ id: 'glue-up-first', after: [] }, rest, glue), ...laid];
}

function nameStep(taken: ReadonlySet<string>, count = 1): string {
  const id = count === 1 ? 'glue-up' : `glue-up-${count}`;
  return taken.has(id) ? nameStep(taken, count + 1) : id;
}

function glueStep(
  at: Pick<AssemblyStep, 'id' | 'after'>,
  panels: readonly Part[],
  { name, openMinutes }: Glue,
): AssemblyStep {
  const joints = panels.reduce((sum, { quantity, staves }) => sum + quantity * ((staves?.count ?? 1) - 1), 0);
  const copies = panels.reduce((sum, { quantity }) => sum + quantity, 0);
  return {
    ...at,
    text: [
      'Joint and glue up.',
      ...panels.map(sayPanel),
      ...layingWords(panels),
      `Plane the edges in pairs, so that what is out of square cancels, straight and ${markSize(0.1)} hollow in ${markSize(300)}; rub or clamp dry first.`,
      `Glue: ${name}, closed within ${openMinutes[0]} minutes.`,
      'Clamps below and above in turn, cauls across the ends; wipe, let it stand a day, then plane flat and saw to size.',
    ].join(' '),
    place: 'workshop',
    minutes: copies * reckoned.panel + joints * reckoned.joint,
    parts: panels.map((panel) => panel.id),
  };
}

function layingWords(panels: readonly Part[]): readonly string[] {
  const isBook = ({ staves }: Part) => staves?.leaves === 2;
  return [
    ...(panels.some(isBook)
      ? [
          'Of a book match plane one face and one edge of each blank, number its leaves, saw it through its thickness and let the leaves rest in sticks; open them about that edge, so that one is the mirror image of the other.',
        ]
      : []),
    ...(panels.every(isBook)
      ? ['Draw a triangle across the joints.']
      : [
          'Lay the staves with best faces up and rings up and down in turn, grain running one way, and draw a triangle across the joints.',
        ]),
  ];
}

function sayPanel({ id, name, quantity, rough, staves, grain, cut }: Part): string {
  const [length, width] = grain === 'along-width' ? [rough.width, rough.length] : [rough.length, rough.width];
  const size = [length, width, rough.thickness].map((value) => markSize(value)).join(' × ');
  const each = quantity > 1 ? `${quantity}, each ` : '';
  const count = staves?.count ?? 1;
  const made = staves?.leaves === 2 ? `${count} leaves out of ${count / 2} blanks` : `${count} staves`;
  const clamps = clampsFor(length, staves?.width ?? width);
  return `${id} ${name} (${each}of ${made} ${size}, ${clamps} clamps; planed to ${markSize(cut.thickness)}).`;
}

/** Clamps on a joint as long as this: pressure spreads at 45 degrees from the caul through the stave (joinery F7). */
export function clampsFor(length: number, staveWidth: number): number {
  return Math.max(2, Math.ceil(length / (2 * (staveWidth + glueUp.caul))));
}
