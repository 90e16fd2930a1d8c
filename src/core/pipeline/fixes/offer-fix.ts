import { parametersOf, type ParameterInfo, type Piece } from '#core/joinery';
import type { Problem } from '#core/problems';
import { applyCommand, type Command, type ParameterValue, type Project } from '#core/project';
import { formatLength, formatNumber } from '#core/units';

import type { Understood } from '../build-pieces.ts';
import { understandProject } from '../understand-project.ts';
import { suggestChanges } from './fix-table.ts';
import { given } from './given.ts';
import type { Ailing, Change, Fix } from './types.ts';

/** More trials than this are not worth a touch, and would be felt. */
const mostTrials = 8;

/** Values that only the user can know, or choose, by the code of the finding that wants them. */
const asked: Readonly<Record<string, readonly string[]>> = {
  'bulkhead-not-measured': ['bulkheadMax', 'bulkheadMin'],
  'bin-not-measured': ['binLength', 'binWidth'],
  'size-missing': ['width', 'height'],
  'door-size-missing': ['width', 'height'],
  'shelf-size-missing': ['length', 'depth'],
  'aperture-missing': ['length', 'width', 'height'],
  'heights-missing': ['heights'],
  'outline-missing': ['width', 'height', 'depth'],
  'opening-not-measured': ['width', 'height', 'depth'],
  'top-unsupported': ['supports'],
  'frame-leans': ['datum'],
  'fit-chosen': ['mode'],
};

/**
 * What can be done about a finding with one touch. An act is tried on the project first and offered only when the finding
 * goes and no stop or warning comes instead. Null when there is no single thing to do.
 */
export function offerFix(finding: Problem, understood: Understood): Fix | null {
  const ailing = findAiling(finding, understood);
  if (!ailing) return null;
  const changes = [...suggestChanges(ailing), ...backToUsual(ailing)].slice(0, mostTrials);
  for (const change of changes) {
    const command = commandOf(change, ailing);
    if (command && clears(command, finding, understood))
      return { kind: 'act', label: wordChange(change, ailing), command };
  }
  return askFor(ailing);
}

function findAiling(finding: Problem, { project, understanding }: Understood): Ailing | null {
  const { about } = finding;
  const built = understanding.pieces.find(
    (each) =>
      each.findings.includes(finding) ||
      (about !== undefined &&
        (each.letter === about || each.piece === about || each.parts.some(({ id }) => id === about))),
  );
  const piece = built && project.pieces.find(({ id }) => id === built.piece);
  return piece ? { finding, piece, built, project } : null;
}

/** Each value the user changed, set back alone: only where the finding stands in the way, not for a note. */
function backToUsual({ finding, piece, built }: Ailing): readonly Change[] {
  if (finding.severity === 'note' || !built.findings.includes(finding)) return [];
  return parametersOf(piece.kind)
    .filter(
      (info) =>
        info.default !== undefined &&
        given(piece, info.key) !== undefined &&
        given(piece, info.key) !== info.default,
    )
    .map((info) => ({ [info.key]: null }));
}

function commandOf(change: Change, { piece, project }: Ailing): Command | null {
  const commands = Object.entries(change).map(([key, value]): Command => ({
    kind: 'set-parameter',
    id: piece.id,
    key,
    value,
  }));
  const [only] = commands;
  if (commands.length === 1 && only) return only;
  let next = project;
  for (const command of commands) {
    const result = applyCommand(next, command);
    if (!result.ok) return null;
    next = result.value;
  }
  const changed = next.pieces.find(({ id }) => id === piece.id);
  return changed ? { kind: 'change-piece', id: piece.id, piece: changed } : null;
}

/** Whether the finding goes with this act, and nothing as bad comes. */
function clears(command: Command, finding: Problem, understood: Understood): boolean {
  const next = applyCommand(understood.project, command);
  if (!next.ok || next.value === understood.project) return false;
  const before = countKeys(understood.understanding.findings);
  const after = countKeys(understandProject(next.value, understood).findings);
  const key = keyOf(finding);
  if ((after.get(key) ?? 0) >= (before.get(key) ?? 0)) return false;
  return [...after].every(([each, count]) => each.startsWith('note') || count <= (before.get(each) ?? 0));
}

function keyOf({ severity, code, about }: Problem): string {
  return `${severity} ${code} ${about ?? ''}`;
}

function countKeys(findings: readonly Problem[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const finding of findings) counts.set(keyOf(finding), (counts.get(keyOf(finding)) ?? 0) + 1);
  return counts;
}

function askFor({ finding, piece }: Ailing): Fix | null {
  const wanted = asked[finding.code] ?? [];
  const infos = parametersOf(piece.kind).filter(
    ({ key, type }) => wanted.includes(key) && (type === 'choice' || given(piece, key) === undefined),
  );
  if (infos.length === 0) return null;
  const verb = infos.every(({ type }) => type === 'choice') ? 'Choose' : 'Enter';
  const label = `${verb} ${infos.map(({ label }) => quote(label)).join(' and ')}`;
  return { kind: 'ask', label, piece: piece.id, keys: infos.map(({ key }) => key) };
}

function wordChange(change: Change, { piece, project }: Ailing): string {
  const infos = parametersOf(piece.kind);
  const parts = Object.entries(change).flatMap(([key, value]) => {
    const info = infos.find((each) => each.key === key);
    return info ? [wordOne(info, value, project)] : [];
  });
  return parts.join(', ');
}

function wordOne(info: ParameterInfo, value: ParameterValue | null, project: Project): string {
  const name = quote(info.label);
  if (value === null)
    return info.default === undefined
      ? `Leave out ${name}`
      : `Set ${name} back to ${showValue(info, info.default, project)}`;
  return `Set ${name} to ${showValue(info, value, project)}`;
}

function showValue(info: ParameterInfo, value: unknown, project: Project): string {
  const text = String(value);
  if (info.type === 'material') return project.materials.find(({ id }) => id === text)?.name ?? text;
  if (info.type === 'piece') return nameOf(project.pieces.find(({ id }) => id === text)) ?? text;
  const choice = info.choices?.find((each) => each.value === text);
  if (choice) return quote(choice.label);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number' && info.type === 'length')
    return formatLength(value, {
      system: project.units,
      step: project.units === 'mm' ? 0.1 : 1 / 64,
      unit: true,
    });
  return typeof value === 'number' ? formatNumber(value, 2) : text;
}

function nameOf(piece: Piece | undefined): string | undefined {
  return piece && `${piece.letter} ${piece.name}`;
}

/** As the field or its choice is labelled: many labels are no nouns. */
function quote(label: string): string {
  return `"${label}"`;
}
