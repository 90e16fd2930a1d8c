import type { CuttingJob, CuttingPlan } from '#core/cutting';
import type { Outline, Shape } from '#core/geometry';
import type { BuiltPiece, MaterialId, PartId } from '#core/joinery';
import type { Adjustment, EdgeAdvice, ExtraReading } from '#core/measuring';
import type { NestJob, NestPlan } from '#core/nesting';
import type { Problem } from '#core/problems';
import type { MeasuredShape, SawProfile } from '#core/project';

export interface ShapeOutcome {
  readonly shape: MeasuredShape;
  readonly adjustment: Adjustment;
  /** Null when the readings do not fix a shape. */
  readonly adjusted: Shape | null;
  /** Ordinates of its curves and sections that stand off the line of the others. */
  readonly ordinateSlips?: readonly OrdinateSlip[];
}

/** Ordinates of a curve or a section that may hold a slip: one, or one of several. */
export interface OrdinateSlip {
  /** Id of the curve or section. */
  readonly item: string;
  /** Places in its list of ordinates, counted from 0. */
  readonly at: readonly number[];
  /** Measured less what the others say, mm. */
  readonly slip: number;
}

/** What one rectangle of a cutting job stands for: a single part, or several that come out of it in order. */
export interface Blank {
  /** The id of the part in the cutting job. */
  readonly id: string;
  readonly set?: string;
  /** Offsets inside the blank, x along its length. */
  readonly parts: readonly {
    readonly part: PartId;
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly width: number;
    /** The outline as it lies in a blank that is shared head to tail; the extents are then those of its box. */
    readonly outline?: Outline;
  }[];
}

/** One cutting job: the parts of one material from the stock that suits them, on one saw. */
export interface CuttingGroup {
  readonly id: string;
  readonly title: string;
  readonly material: MaterialId;
  /** Sheets and boards are sawn in two directions, battens to length only. */
  readonly form: 'sheet' | 'board' | 'batten';
  /** Of the stock: of battens width and thickness, of sheets and boards the thickness. */
  readonly section: { readonly width?: number; readonly thickness: number };
  readonly saw: SawProfile;
  readonly job: CuttingJob;
  readonly blanks: readonly Blank[];
  /** The plan chosen for just this job; left out where none is. */
  readonly taken?: CuttingPlan;
  readonly findings: readonly Problem[];
}

/** Parts of one sheet material that the router cuts by their outlines, as a job of `joggle nest`. */
export interface RouterGroup {
  readonly id: string;
  readonly title: string;
  readonly material: MaterialId;
  readonly thickness: number;
  /** Ids of the stock lines it may use, shared with the saw. */
  readonly lines: readonly string[];
  readonly job: NestJob;
  readonly findings: readonly Problem[];
}

/** A router group with its plan, and the job that the saw left it. */
export interface PlannedRouting {
  readonly group: RouterGroup;
  readonly job: NestJob;
  readonly plan: NestPlan;
}

/** How surely a piece will fit the shape it was made for, edge by edge. */
export interface PieceFit {
  readonly piece: string;
  readonly letter: string;
  readonly name: string;
  readonly shape: string;
  /** Readings that may hold a slip, in words: the chances suppose that they hold none. */
  readonly doubts: readonly string[];
  readonly edges: readonly EdgeAdvice[];
  /** That all edges fit as planned, 0 to 1; edges taken as independent. */
  readonly chance: number;
  /** The one reading more that raises the chance most; null when none is worth it. */
  readonly extra: ExtraReading | null;
}

/** What a project comes to before it is cut: fast enough to be worked out at every change. */
export interface Understanding {
  readonly shapes: readonly ShapeOutcome[];
  readonly pieces: readonly BuiltPiece[];
  readonly groups: readonly CuttingGroup[];
  readonly routing: readonly RouterGroup[];
  /** How surely each piece fits its shape. */
  readonly fits: readonly PieceFit[];
  readonly findings: readonly Problem[];
}

export interface PlannedGroup {
  readonly group: CuttingGroup;
  readonly plan: CuttingPlan;
}

/** A file to write: text or bytes under a relative path. */
export interface OutputFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}
