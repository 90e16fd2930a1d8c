import type { PartId } from '#core/joinery';
import type { PlannedGroup, PlannedRouting, Understanding } from '#core/pipeline';
import type { Problem } from '#core/problems';
import type { Project } from '#core/project';
import type { PdfFonts } from '#formats/pdf';

/** What a bundle is made of; `planned` holds the groups whose plan is there. */
export interface BundleSource {
  readonly project: Project;
  readonly understanding: Understanding;
  readonly planned: readonly PlannedGroup[];
  /** The router's groups whose plan is there. */
  readonly routed: readonly PlannedRouting[];
  readonly fonts: PdfFonts;
}

/** Passed to every writer of pages: the parts that must not be cut, with the reason. */
export interface BundleContext extends BundleSource {
  readonly blocked: ReadonlyMap<PartId, Problem>;
}

/** Printed across what must not be cut. */
export const stamp = 'DO NOT CUT';
