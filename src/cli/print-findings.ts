import { wordFinding } from '#core/pipeline';
import type { Project } from '#core/project';
import { sortBySeverity, type Problem, type Severity } from '#core/problems';

const words: Readonly<Record<Severity, string>> = { stop: 'Stop', warn: 'Warning', note: 'Note' };

/** Findings as sentences, the worst first, one line each. */
export function printFindings(findings: readonly Problem[], project?: Project): string {
  return sortBySeverity(findings)
    .map((finding) => `${words[finding.severity]}: ${wordFinding(finding, project)}\n`)
    .join('');
}
