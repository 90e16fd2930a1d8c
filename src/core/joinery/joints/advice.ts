import type { Problem, Severity } from '#core/problems';
import type { Material } from '../piece-types.ts';

/** The joints of the rulebook's section C. */
export type JointKind = keyof typeof suitability;

interface Suits {
  /** 0 does not hold, 1 poor, 2 good, 3 best; null: the question does not arise. */
  readonly solid: number;
  readonly sheet: number;
  readonly light: number | null;
  readonly heavy: number | null;
  readonly wet: number;
  /** 1 easy to 5 hard. */
  readonly hard: number;
}

type Row = readonly [
  solid: number,
  sheet: number,
  light: number | null,
  heavy: number | null,
  wet: number,
  hard: number,
];

const suits = (...[solid, sheet, light, heavy, wet, hard]: Row): Suits => ({
  ...{ solid, sheet, light, heavy, wet, hard },
});

/** How joints suit materials, loads and wet (joinery C0): wet means with epoxy and sealed end grain. */
export const suitability = {
  butt: suits(2, 2, 3, 1, 3, 1),
  dowel: suits(2, 1, 2, 1, 2, 3),
  'loose-tenon': suits(3, 2, 3, 2, 3, 2),
  'stub-tenon': suits(3, 0, 3, 3, 3, 4),
  'through-tenon': suits(3, 0, 3, 3, 3, 5),
  'haunched-tenon': suits(3, 0, 3, 3, 3, 5),
  bridle: suits(3, 1, 3, 2, 3, 3),
  'half-lap': suits(3, 2, 3, 2, 3, 2),
  housing: suits(3, 3, 3, 2, 3, 2),
  rebate: suits(2, 3, 2, 1, 3, 1),
  groove: suits(3, 2, 3, 2, 3, 2),
  'tongue-and-groove': suits(3, 1, 3, 1, 2, 2),
  box: suits(3, 2, 3, 2, 3, 3),
  'through-dovetail': suits(3, 0, 3, 3, 2, 5),
  'lapped-dovetail': suits(3, 0, 3, 3, 2, 5),
  'mitre-and-spline': suits(3, 2, 2, 1, 2, 4),
  scarf: suits(3, 3, null, 3, 3, 3),
  'edge-joint': suits(3, 1, 3, null, 3, 2),
  lipping: suits(3, 3, 2, null, 3, 2),
  'cope-and-stick': suits(3, 0, 2, 1, 2, 3),
} as const satisfies Readonly<Record<string, Suits>>;

/** Kinds that do the same work, so that one can stand for the other. */
const families: readonly (readonly JointKind[])[] = [
  [
    'butt',
    'dowel',
    'loose-tenon',
    'stub-tenon',
    'through-tenon',
    'haunched-tenon',
    'bridle',
    'half-lap',
    'mitre-and-spline',
    'cope-and-stick',
  ],
  ['rebate', 'box', 'through-dovetail', 'lapped-dovetail', 'housing'],
  ['groove', 'tongue-and-groove', 'edge-joint'],
];

/** What a joint has to take. */
export interface JointDuty {
  readonly materials: readonly Material[];
  readonly wet?: boolean;
  readonly load?: 'light' | 'heavy';
}

/** What is to be said of a joint for its materials and duty (joinery C0, G21), with what does better; empty when it suits. */
export function jointAdvice(kind: JointKind, duty: JointDuty): readonly Problem[] {
  const score = scoreOf(kind, duty);
  if (score >= 2) return [];
  const { load = 'light', wet = false } = duty;
  const asked = [
    ...reasons(kind, duty),
    ...((suitability[kind][load] ?? 3) < 2
      ? [load === 'heavy' ? 'where it is racked' : 'for this load']
      : []),
    ...(wet && suitability[kind].wet < 2 ? ['in the wet'] : []),
  ];
  const better = betterKinds(kind, duty);
  const severity: Severity = score === 0 ? 'stop' : 'warn';
  return [
    {
      severity,
      code: score === 0 ? 'joint-unfit' : 'joint-weak',
      message: `Weak joint: a ${jointName(kind)} ${score === 0 ? 'does not hold' : 'holds poorly'} ${asked.join(' and ')}.`,
      remedy:
        better.length > 0
          ? `Take a ${better.map(jointName).join(' or a ')}.`
          : 'Glue it with epoxy and back it with a block.',
      source: 'joinery C0, G21',
    },
  ];
}

/** A kind as the trade says it: `loose tenon`. */
function jointName(kind: JointKind): string {
  return kind === 'box' ? 'box joint' : kind === 'butt' ? 'screwed butt' : kind.replaceAll('-', ' ');
}

function reasons(kind: JointKind, { materials }: JointDuty): readonly string[] {
  const poor = materials
    .filter((material) => suitability[kind][material.kind] < 2)
    .map(({ name }) => `in ${name}`);
  return [...new Set(poor)];
}

/** The worst of what is asked: material, load and wet. */
function scoreOf(kind: JointKind, { materials, load = 'light', wet = false }: JointDuty): number {
  const row: Suits = suitability[kind];
  return Math.min(
    ...materials.map((material) => row[material.kind]),
    row[load] ?? 3,
    ...(wet ? [row.wet] : []),
  );
}

/** The two easiest of the same family that suit. */
function betterKinds(kind: JointKind, duty: JointDuty): readonly JointKind[] {
  const family = families.find((each) => each.includes(kind)) ?? [];
  return family
    .filter((other) => other !== kind && scoreOf(other, duty) >= 2)
    .sort((a, b) => suitability[a].hard - suitability[b].hard)
    .slice(0, 2);
}
