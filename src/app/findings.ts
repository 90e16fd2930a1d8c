import { nameStock, type Understanding } from '#core/pipeline';
import type { Problem, Severity } from '#core/problems';
import type { Project } from '#core/project';

/** How many findings there are of each severity. */
export type Count = Readonly<Record<Severity, number>>;

export function countFindings(findings: readonly Problem[]): Count {
  const count = { stop: 0, warn: 0, note: 0 };
  for (const finding of findings) count[finding.severity] += 1;
  return count;
}

export interface Goal {
  readonly path: string;
  readonly hash: string;
  /** Said on the button, as `Reading wb`. */
  readonly label: string;
}

/** The place where a finding can be dealt with; null when it concerns the whole. */
export function goalOf(finding: Problem, project: Project, understanding: Understanding): Goal | null {
  const about = finding.about;
  if (about === undefined) return null;
  return (
    goalAtBench(about, project, understanding) ??
    goalOnSite(about, project) ??
    goalAtRackOrSaw(about, project, understanding)
  );
}

function goalAtBench(about: string, project: Project, understanding: Understanding): Goal | null {
  const owner = understanding.pieces.find((built) => built.parts.some((part) => part.id === about));
  if (owner) return { path: '/bench/', hash: about, label: `Part ${about}` };
  const piece = project.pieces.find((each) => each.id === about || each.letter === about);
  return piece ? { path: '/bench/', hash: piece.letter, label: `${piece.letter} ${piece.name}` } : null;
}

function goalOnSite(about: string, project: Project): Goal | null {
  const [first, second] = about.split('/');
  const shape = project.shapes.find((each) => each.id === first);
  if (shape) return { path: '/', hash: about, label: second ? `Reading ${second}` : shape.name };
  const holder = project.shapes.find((each) => each.readings.some((reading) => reading.id === about));
  return holder ? { path: '/', hash: `${holder.id}/${about}`, label: `Reading ${about}` } : null;
}

function goalAtRackOrSaw(about: string, project: Project, understanding: Understanding): Goal | null {
  const group = understanding.groups.find((each) => each.id === about);
  if (group) return { path: '/saw/', hash: group.id, label: group.title };
  const material = project.materials.find((each) => each.id === about);
  const isStock = project.stock.some((each) => each.id === about);
  if (!material && !isStock) return null;
  return { path: '/rack/', hash: about, label: material?.name ?? nameStock(project, about) };
}

/** What a severity is called on screen. */
export const severityWords: Readonly<Record<Severity, { readonly one: string; readonly many: string }>> = {
  stop: { one: 'stop: do not cut', many: 'stops: do not cut' },
  warn: { one: 'warning', many: 'warnings' },
  note: { one: 'note', many: 'notes' },
};

/** The worst severity among findings; null when there are none. */
export function worstOf(findings: readonly Problem[]): Severity | null {
  const order: readonly Severity[] = ['stop', 'warn', 'note'];
  return order.find((severity) => findings.some((finding) => finding.severity === severity)) ?? null;
}
