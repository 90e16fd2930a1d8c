import type { GlueKind } from '#core/materials';

/** What any glued piece may say of its glue for itself; left out or `project`: as the project has it. */
export interface GlueParameters {
  readonly glue?: 'project' | GlueKind;
  readonly wet?: 'project' | 'dry' | 'wet';
}
