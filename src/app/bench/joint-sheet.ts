import {
  suitability,
  workOutJoint,
  type JointFigure,
  type JointRequest,
  type Material,
  type WorkedJoint,
} from '#core/joinery';
import { sayLengths, sayLengthsWithin, type LengthSystem } from '#core/units';

/** What the joint sheet is asked for. mm and degrees. */
export interface JointWish {
  readonly kind: JointRequest['kind'];
  readonly male: { readonly width: number; readonly thickness: number; readonly material: string };
  readonly other: { readonly width: number; readonly thickness: number; readonly material: string };
  readonly degrees: number;
  readonly glue: string;
}

const byAngle: readonly JointRequest['kind'][] = ['half-lap', 'bridle', 'mitre-and-spline'];
const usualLength = 400; // the far end of a member is of no concern to the figures

/** Joints at which the angle between the members counts. */
export function hasAngle(kind: JointRequest['kind']): boolean {
  return byAngle.includes(kind);
}

/** Every joint by its trade name, the easiest first. */
export function jointChoices(): readonly { readonly value: JointRequest['kind']; readonly label: string }[] {
  const kinds = Object.keys(suitability) as (keyof typeof suitability)[];
  const sorted = [...kinds].sort((a, b) => suitability[a].hard - suitability[b].hard);
  return [...sorted, 'lock-rebate' as const].map((value) => ({ value, label: jointLabel(value) }));
}

function jointLabel(kind: string): string {
  const words = kind === 'box' ? 'box joint' : kind === 'butt' ? 'butt, screwed' : kind.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The joint worked out for two members of these materials; null while a material is missing or a size is none. */
export function sheetOfJoint(
  wish: JointWish,
  materials: readonly Material[],
  units: LengthSystem,
): WorkedJoint | null {
  const found = [wish.male, wish.other].map(({ material }) => materials.find(({ id }) => id === material));
  const [ours, theirs] = found;
  const sizes = [wish.male, wish.other].flatMap(({ width, thickness }) => [width, thickness]);
  if (!ours || !theirs || !sizes.every((size) => size > 0) || !(wish.degrees >= 20 && wish.degrees <= 160))
    return null;
  const member = ({ width, thickness }: JointWish['male']) => ({ length: usualLength, width, thickness });
  const joint = workOutJoint({
    kind: wish.kind,
    male: member(wish.male),
    other: { ...member(wish.other), length: Math.max(usualLength, 2 * wish.male.width) },
    materials: [ours, theirs],
    ...(hasAngle(wish.kind) && {
      degrees: wish.kind === 'mitre-and-spline' ? wish.degrees / 2 : wish.degrees,
    }),
    glue: wish.glue,
  });
  const say = (text: string): string => sayLengths(text, units);
  return {
    ...joint,
    settings: sayLengthsWithin(joint.settings, say, new Set()),
    findings: sayLengthsWithin(joint.findings, say, new Set(['code', 'source'])),
    figures: joint.figures.filter(({ name }) => name !== 'near edge'), // where it is put is not asked for
  };
}

/** A figure as text: lengths as the project shows them. */
export function figureText({ value, unit }: JointFigure, length: (mm: number) => string): string {
  if (unit === 'degrees') return `${Math.round(value * 100) / 100}°`;
  return unit === 'count' ? String(value) : length(value);
}
