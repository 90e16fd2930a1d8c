import type { Material, Piece, PieceKind } from '#core/joinery';
import { planGroups, understandProject, withCarrying } from '#core/pipeline';
import type { Problem } from '#core/problems';
import { newProject, type MeasuredOpening, type MeasuredSections, type Project } from '#core/project';
import type { SolveLp } from '#core/numerics';

const materials: readonly Material[] = [
  { id: 'oak', kind: 'solid', name: 'Oak, planed', species: 'Oak, European', state: 'planed' },
  { id: 'ply18', kind: 'sheet', name: 'Birch plywood 18', thickness: 17.7 },
  { id: 'ply12', kind: 'sheet', name: 'Birch plywood 12', thickness: 11.8 },
  { id: 'ply6', kind: 'sheet', name: 'Birch plywood 6', thickness: 6.1 },
];

const rack: Project['stock'] = [
  ...(['ply18', 'ply12', 'ply6'] as const).map((material) => ({
    id: `${material}-sheet`,
    material,
    form: 'sheet' as const,
    length: 2440,
    width: 1220,
    thickness: { ply18: 17.7, ply12: 11.8, ply6: 6.1 }[material],
    count: null,
    price: 60,
  })),
  {
    ...{ id: 'oak-27', material: 'oak', form: 'board', length: 2400, width: 250, thickness: 27 },
    ...{ count: null, price: 55 },
  },
];

/** A project of a first-timer: plain materials, a rack that has all, and what the case is about. */
export function beginnersProject(more: Partial<Project>): Project {
  return { ...newProject('First attempt'), materials, stock: rack, ...more };
}

/** A piece A of this kind. */
export function pieceA<Kind extends PieceKind>(
  kind: Kind,
  parameters: Extract<Piece, { kind: Kind }>['parameters'],
  shape?: string,
): Piece {
  return { kind, id: 'a', letter: 'A', name: 'First piece', ...(shape && { shape }), parameters } as Piece;
}

type Corner = readonly [number, number];
const corners = { BL: [0, 0], BR: [640, 0], TR: [646, 1752], TL: [8, 1748] } as const satisfies Record<
  string,
  Corner
>;
type Name = keyof typeof corners;

const between = (a: Corner, b: Corner) => Math.hypot(a[0] - b[0], a[1] - b[1]);
const at = (a: Corner, b: Corner, share: number): Corner => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];
const read = (value: number) => Math.round(value * 2) / 2;

/** A door opening read without a mistake to half a millimetre: twelve readings, or those named. */
export function doorOpening(
  change: (readings: MeasuredOpening['readings']) => MeasuredOpening['readings'] = (readings) => readings,
  more: Partial<MeasuredOpening> = {},
): MeasuredOpening {
  const distance = (id: string, from: Name, to: Name) =>
    ({
      id,
      kind: 'distance',
      from,
      to,
      value: read(between(corners[from], corners[to])),
      sigma: 0.5,
    }) as const;
  const width = (id: string, share: number) =>
    ({
      ...{
        id,
        kind: 'width' as const,
        left: ['BL', 'TL'] as const,
        right: ['BR', 'TR'] as const,
        at: share,
        sigma: 0.5,
      },
      value: read(between(at(corners.BL, corners.TL, share), at(corners.BR, corners.TR, share))),
    }) as const;
  const plumb = (id: string, from: Name, to: Name) =>
    ({ id, kind: 'plumb', from, to, value: read(corners[to][0] - corners[from][0]), sigma: 1 }) as const;
  const level = (id: string, from: Name, to: Name) =>
    ({ id, kind: 'level', from, to, value: read(corners[to][1] - corners[from][1]), sigma: 1 }) as const;
  return {
    kind: 'opening',
    id: 'door',
    name: 'Cabin door',
    seenFrom: 'standing in the cabin, looking aft',
    readings: change([
      distance('wb', 'BL', 'BR'),
      width('w13', 1 / 3),
      width('w23', 2 / 3),
      distance('wt', 'TL', 'TR'),
      distance('hl', 'BL', 'TL'),
      distance('hr', 'BR', 'TR'),
      distance('d1', 'BL', 'TR'),
      distance('d2', 'BR', 'TL'),
      plumb('pl', 'BL', 'TL'),
      plumb('pr', 'BR', 'TR'),
      level('ls', 'BL', 'BR'),
      level('lh', 'TL', 'TR'),
    ]),
    ...more,
  };
}

/** The hull behind a bank of drawers, invented: deeper by height. */
export const hullBehind: MeasuredSections = {
  id: 'hull',
  name: 'Hull behind the drawers',
  kind: 'sections',
  seenFrom: 'standing in the cabin, looking to starboard',
  readings: [],
  sections: [0, 500].map((at, i) => ({
    id: `s${i}`,
    name: i === 0 ? 'Left end' : 'Right end',
    at,
    ordinates: [300, 360, 410, 450, 480].map((depth, place) => ({
      height: 150 * place,
      depth: depth + 10 * i,
    })),
  })),
};

/** All that is found in a project: built, put together and carried; planned for the saws where a solver is given. */
export function findingsOf(project: Project, solveLp?: SolveLp): readonly Problem[] {
  const understanding = withCarrying(project, understandProject(project));
  const planned = solveLp
    ? planGroups(understanding.groups, { solveLp, clock: () => 0, work: 200, seed: 1 })
    : [];
  return [...understanding.findings, ...planned.flatMap(({ plan }) => plan.findings)];
}
