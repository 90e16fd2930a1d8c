import type { Problem } from '#core/problems';
import type { Project } from '#core/project';

/** Exit code 0: done. 1: a finding of severity `stop`. 2: wrong use or unreadable input. */
export type ExitCode = 0 | 1 | 2;

/** How a verb ended: refused with reasons, or with an answer. */
export type Outcome =
  | { readonly kind: 'refused'; readonly findings: readonly Problem[] }
  | {
      readonly kind: 'done';
      /** The document for `--json`. */
      readonly document: unknown;
      readonly text: string;
      readonly findings: readonly Problem[];
      /** Gives the things that findings concern the names they have in it. */
      readonly project?: Project;
    };
