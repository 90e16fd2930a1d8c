import type { CuttingJob, CuttingPlan } from '#core/cutting';
import type { MaterialId, PartId, PartSize, PieceId } from '#core/joinery';
import type { NestJob, NestPlan } from '#core/nesting';
import type { Problem } from '#core/problems';

/** A rectangle of a cutting job and the parts that come out of it, x along its length. */
export interface PlanFileBlank {
  readonly id: string;
  readonly set?: string;
  readonly parts: readonly {
    readonly part: PartId;
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly width: number;
    /** The outline as it lies in a blank shared head to tail; a bulge is the tangent of a quarter of the arc's angle. */
    readonly outline?: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
  }[];
}

/** What is cut on one saw from one material: the job as given to `joggle cut`, and its answer. */
export interface PlanFileGroup {
  readonly id: string;
  readonly title: string;
  readonly material: MaterialId;
  readonly form: 'sheet' | 'board' | 'batten';
  readonly job: CuttingJob;
  readonly blanks: readonly PlanFileBlank[];
  readonly plan: CuttingPlan;
}

/** What the router cuts from one sheet material: the job as given to `joggle nest`, and its answer. */
export interface PlanFileRouting {
  readonly id: string;
  readonly title: string;
  readonly material: MaterialId;
  readonly job: NestJob;
  readonly plan: NestPlan;
}

/** One line of the parts list. Sizes in mm. */
export interface PlanFilePart {
  /** Its address, as `C4`. */
  readonly id: PartId;
  readonly piece: PieceId;
  readonly name: string;
  readonly quantity: number;
  readonly hand: 'left' | 'right' | 'none';
  readonly material: MaterialId;
  readonly finished: PartSize;
  readonly cut: PartSize;
  readonly rough: PartSize;
  /** Glued up edge to edge of this many, each as large as `rough`. */
  readonly staves?: number;
  /** Made to try a setting on or to have one in hand; why. */
  readonly spare?: string;
}

/** `plan.json`, the answer of `joggle plan` as a file: what was planned, with the jobs that can be cut and checked again. */
export interface PlanFile {
  readonly version: 1;
  /** Name of the project. */
  readonly project: string;
  readonly currency: string;
  readonly groups: readonly PlanFileGroup[];
  readonly routing?: readonly PlanFileRouting[];
  readonly parts: readonly PlanFilePart[];
  readonly findings: readonly Problem[];
}
