import type { Problem } from '#core/problems';

/** A finding as one or more sentences, led by what it concerns unless they begin with that. */
export function wordFinding(finding: Problem): string {
  const { about, message, remedy } = finding;
  const lead = about === undefined || message.startsWith(about) ? '' : `${about}: `;
  return `${lead}${message}${remedy === undefined ? '' : ` ${remedy}`}`;
}
