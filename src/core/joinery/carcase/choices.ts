import type { GlueKind } from '#core/materials';
import type { Problem } from '#core/problems';
import { gluedWith } from '../glue.ts';
import { heightRange, readHull, type Hull } from '../hull/hull.ts';
import { fillDefaults } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';
import { carcaseParameters } from './parameters.ts';
import type { CarcaseParameters } from './types.ts';

type Filled = Required<Omit<CarcaseParameters, 'materials' | 'heights' | 'left' | 'right'>>;

/** Every choice of a carcase with its default filled in. */
export interface CarcaseChoices extends Filled {
  readonly stock: { readonly panel: Material; readonly shelf: Material; readonly cleats: Material };
  readonly given: ReadonlySet<string>;
  readonly glue: GlueKind | undefined;
  readonly hull: Hull;
}

const none: Hull = { stations: [], pitch: 1, u95: 0, source: '', obstacles: [] };

const leastWall = 5; // mm behind a housing (joinery C0.2)

/** Half the end at most, 6 as a rule, with a wall left behind it; in halves of a millimetre. */
function usualHousing(thickness: number): number {
  return Math.max(0, Math.floor(2 * Math.min(6, thickness / 2, thickness - leastWall)) / 2);
}

/** Fills in the defaults of a carcase and finds the hull behind it; `lacking` when there is none. */
export function chooseCarcase(
  parameters: CarcaseParameters,
  context: BuildContext,
): {
  readonly choices: CarcaseChoices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { materials } = parameters;
  const { values, given } = fillDefaults(parameters, carcaseParameters);
  const panel = findMaterial(context, materials.panel, { for: 'the ends', kind: 'sheet' });
  const shelf = findMaterial(context, materials.shelf ?? materials.panel, {
    for: 'the shelves',
    kind: 'either',
  });
  const solid = materials.cleats ?? context.materials.find(({ kind }) => kind === 'solid')?.id;
  const cleats = findMaterial(context, solid ?? materials.panel, { for: 'the cleats', kind: 'solid' });
  const read = readHull(context.shape, context.shapeName ?? 'the hull', parameters);
  const hull = read.ok ? withObstacles(read.value, parameters.obstacles ?? []) : none;
  const [low, high] = read.ok ? heightRange(hull) : [0, 0];
  const foot = parameters.foot ?? 0;
  const end = hull.stations[hull.stations.length - 1]?.at ?? 0;
  const thick = (material: Material) => (material.kind === 'sheet' ? material.thickness : 12);
  const thickness = parameters.thickness ?? thick(panel.material);
  const choices = {
    ...{ foot, shelves: [], obstacles: [] },
    width: end - (parameters.start ?? 0),
    height: high - Math.max(low, foot),
    ...values,
    thickness,
    housing: parameters.housing ?? usualHousing(thickness),
    shelfThickness: parameters.shelfThickness ?? thick(shelf.material),
    stock: { panel: panel.material, shelf: shelf.material, cleats: cleats.material },
    given,
    glue: gluedWith(context.settings),
    hull,
  } as unknown as CarcaseChoices;
  const wantsCleats = choices.cleats && choices.shelves.length > 0;
  const findings = [
    ...panel.findings,
    ...(materials.shelf ? shelf.findings : []),
    ...(wantsCleats ? cleats.findings : []),
  ];
  return { choices, findings, lacking: read.ok ? lackSize(choices) : read.problems };
}

function lackSize({ width, height, shelves, obstacles }: CarcaseChoices): readonly Problem[] {
  const usable = [width, height, ...shelves, ...obstacles].every((one) => Number.isFinite(one));
  if (usable && width > 0 && height > 0 && obstacles.length % 4 === 0 && shelves.length <= 40) return [];
  return [
    {
      severity: 'stop',
      code: 'carcase-size-missing',
      message:
        `No carcase comes of a width of ${Number(width)}, a height of ${Number(height)}, ${shelves.length} shelves and ${obstacles.length} numbers for things in the way.`.replaceAll(
          /NaN|-?Infinity/g,
          'none',
        ),
      remedy:
        'Enter width and height, or measure the hull at both ends; four numbers for each thing in the way.',
      source: 'joinery A10, B7',
    },
  ];
}

function withObstacles(hull: Hull, list: readonly number[]): Hull {
  const entered = Array.from({ length: Math.floor(list.length / 4) }, (_, i) => {
    const [minX = 0, maxX = 0, minY = 0, maxY = 0] = list.slice(4 * i, 4 * i + 4);
    return { name: `obstacle ${i + 1}`, from: -1e5, to: 1e5, box: { minX, maxX, minY, maxY } };
  });
  return { ...hull, obstacles: [...hull.obstacles, ...entered] };
}
