import { sortBySeverity, type Problem } from '#core/problems';
import { jointAdvice, suitability, type JointKind } from './joints/advice.ts';
import type { Material } from './piece-types.ts';
import type { BuildContext, BuiltPiece, Joint } from './types.ts';

/** Joints that pieces call by another name than the table of C0. */
const otherNames: Readonly<Record<string, JointKind>> = {
  'stub mortise and tenon': 'stub-tenon',
  'haunched mortise and tenon': 'haunched-tenon',
  'through mortise and tenon': 'through-tenon',
  'loose tenon': 'loose-tenon',
  'scribed-moulding': 'cope-and-stick',
  'housing-over': 'housing',
  'housing-between': 'housing',
  'housed-back': 'housing',
  'lock-rebate': 'rebate',
  'cross-halving': 'half-lap',
  'sill butt': 'butt',
};

/** What pieces say of a joint in their own words, so that it is not said twice. */
const toldAlready = [
  'dovetail-in-sheet',
  'lap-in-sheet',
  'lap-in-plywood',
  'screw-into-end',
  'joint-unfit',
  'joint-weak',
];

/** The row of the table of C0 that a joint of a piece belongs to; null for one that is not in it. */
export function jointKindOf(kind: string): JointKind | null {
  return kind in suitability ? (kind as JointKind) : (otherNames[kind] ?? null);
}

/** A built piece with what the table of suitability says of its joints in their materials, their load and the wet (joinery C0, G21). */
export function withJointAdvice(
  built: BuiltPiece,
  { materials, settings }: Pick<BuildContext, 'materials' | 'settings'>,
): BuiltPiece {
  if (built.joints.length === 0 || built.findings.some(({ code }) => toldAlready.includes(code)))
    return built;
  const found = new Map<string, Problem>();
  for (const joint of built.joints)
    for (const problem of adviseOn(joint, built, { materials, wet: settings.wet === true }))
      if (!found.has(problem.message)) found.set(problem.message, { ...problem, about: built.letter });
  if (found.size === 0) return built;
  return { ...built, findings: sortBySeverity([...built.findings, ...found.values()]) };
}

function adviseOn(
  joint: Joint,
  built: BuiltPiece,
  { materials, wet }: { readonly materials: readonly Material[]; readonly wet: boolean },
): readonly Problem[] {
  const kind = jointKindOf(joint.kind);
  if (!kind) return [];
  const used = joint.between.flatMap((id) => {
    const part = built.parts.find((one) => one.id === id);
    return materials.find((material) => material.id === part?.material) ?? [];
  });
  return used.length === 0
    ? []
    : jointAdvice(kind, { materials: used, wet, ...(joint.load && { load: joint.load }) });
}
