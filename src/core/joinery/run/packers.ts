import { markSize } from '#core/units';
import { describeBuilt } from '../built-piece.ts';
import { envelopeOf, findMaterial, makePart, nothing, placeAt } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Placement } from '#core/geometry';
import type { PartSize } from '../types.ts';
import type { Member } from './members.ts';
import { addPut, addWork, hasStrips, openingAt, type RunPlan } from './plan.ts';

/** Height of a packer behind a runner on the side of a drawer, mm (common practice, no source). */
const packerHeight = 50;

/** A packer thinner than this is left out: the runner lies on the end of the carcase, mm. */
const thinnest = 1;

/** A packer thicker than this is made of layers, so that no thick board has to be bought for it, mm. */
const thickest = 20;

const backwards = { x: 0, y: 0, z: -1 };
const down = { x: 0, y: -1, z: 0 };

/**
 * What brings the seats of side runners level with the edges of an opening (joinery B5: fit furring to make the seats
 * parallel): a packer on each carcase end, as thick as the stile hides of it; none for drawers on strips below.
 */
export function packersOf(plan: RunPlan, r: number, c: number): readonly Member[] {
  const { choices, context, piece } = plan;
  if (hasStrips(choices)) return [];
  const { at, width, height } = openingAt(plan, r, c);
  const name = `${r + 1}_${c + 1}`;
  const title = `Drawer ${r + 1}.${c + 1}`;
  sizeOnce(plan);
  const length = addWork(plan, `pack_L_${name}`, `deep_${name} - front_T - 10`, [
    `${title}, packer, length behind the frame`,
    'joinery B5',
  ]);
  const value = (key: string) => plan.steps.find((step) => step.name === key)?.value ?? 0;
  if (length < packerHeight) return [];
  const { material } = findMaterial(context, choices.materials.frame, { for: 'packers', kind: 'either' });
  const stub = { ...piece, id: `pack_${name}`, letter: `«pack${name}»` } as Piece;
  const sides = [
    { side: 'left', key: c === 0 ? 'pack_outer' : 'pack_inner', number: 1 },
    { side: 'right', key: c === choices.columns - 1 ? 'pack_outer' : 'pack_inner', number: 2 },
  ] as const;
  const parts = sides.flatMap(({ side, key, number }) => {
    const [layers, thickness] = [value(`${key}_n`), value(`${key}_T`)];
    if (layers * thickness < thinnest) return [];
    const finished = { length, width: packerHeight, thickness };
    const working = { length: `pack_L_${name}`, width: 'pack_H', thickness: `${key}_T` };
    const placements = Array.from({ length: layers }, (_, layer) =>
      placePacker(finished, side, { width, height, front: plan.of('T'), behind: layer * thickness }),
    );
    return [makePart(stub, { ...packerWords(side), number, material, finished, working, placements })];
  });
  if (parts.length === 0) return [];
  const built = describeBuilt(stub, '', [], {
    parts,
    envelope: envelopeOf(parts) ?? nothing,
    steps: [
      {
        id: 'pack',
        text: 'Saw and plane the packers of the side runners; they are screwed inside the ends of the carcases before the runners, level with the edges of the openings.',
        place: 'workshop',
        minutes: 5 * parts.length,
        parts: parts.map(({ id }) => id),
        after: [],
      },
    ],
  });
  return [{ piece: piece.id, group: 'drawer', title, at, built }];
}

const packerWords = (side: 'left' | 'right') => ({
  name: `Packer, ${side}`,
  faceSide: 'face side to the drawer',
  notes: [`Level with the edge of the opening, parallel to its like within ${markSize(0.3)}.`],
});

/** Beside the opening with its face to the drawer: z runs into the end of the carcase. */
function placePacker(
  { length }: PartSize,
  side: 'left' | 'right',
  opening: {
    readonly width: number;
    readonly height: number;
    readonly front: number;
    readonly behind: number;
  },
): Placement {
  const y = Math.min(opening.height, (opening.height + packerHeight) / 2);
  return side === 'left'
    ? placeAt({ x: -opening.behind, y, z: -opening.front }, backwards, down)
    : placeAt(
        { x: opening.width + opening.behind, y, z: -opening.front - length },
        { x: 0, y: 0, z: 1 },
        down,
      );
}

/** The thicknesses, which all packers share. */
function sizeOnce(plan: RunPlan): void {
  if (plan.steps.some(({ name }) => name === 'pack_H')) return;
  const panel = plan.context.materials.find(({ id }) => id === plan.choices.materials.panel);
  addPut(plan, 'pack_H', packerHeight, ['packers, height', 'common practice, no source']);
  addPut(plan, 'pack_end', panel?.kind === 'sheet' ? panel.thickness : 12, [
    'ends of the carcases, thickness',
    'measured',
  ]);
  for (const [key, rule, which] of [
    ['pack_outer', 'front_ws - pack_end', 'an outer stile'],
    ['pack_inner', 'front_ws/2 - pack_end', 'a stile between bays'],
  ] as const) {
    const words = (what: string) => [`packers beside ${which}, ${what}`, 'joinery B5'] as const;
    addWork(plan, key, rule, words('thickness'));
    addWork(plan, `${key}_n`, `max(1, up(${key}/${thickest}, 1))`, [...words('layers'), 'count']);
    addWork(plan, `${key}_T`, `${key}/${key}_n`, words('thickness of a layer'));
  }
}
