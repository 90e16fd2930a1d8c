import type { Problem, Severity } from '#core/problems';

/** A finding on a shape: what it concerns within it, and the rest of what is said. */
export function shapeFinding(
  severity: Severity,
  code: string,
  about: string | undefined,
  {
    message,
    remedy,
    source,
  }: { readonly message: string; readonly remedy: string; readonly source?: string },
): Problem {
  return {
    severity,
    code,
    ...(about !== undefined && { about }),
    message,
    remedy,
    ...(source !== undefined && { source }),
  };
}

/** Findings of a curve with what it is put before, as `Section "Left end": ordinate 4 …`. */
export function saidOf(subject: string, about: string, findings: readonly Problem[]): readonly Problem[] {
  return findings.map((finding) => ({ ...finding, about, message: `${subject}: ${finding.message}` }));
}
