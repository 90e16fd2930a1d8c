import type { AccessPanelParameters } from './access-panel/types.ts';
import type { CabinetFrontParameters } from './cabinet-front/types.ts';
import type { CarcaseParameters } from './carcase/types.ts';
import type { DividersParameters } from './dividers/types.ts';
import type { ShelfParameters } from './shelf/types.ts';
import type { CountertopParameters } from './countertop/types.ts';
import type { RunParameters } from './run/types.ts';
import type { DoorFrameParameters } from './door-frame/types.ts';
import type { DrawerParameters } from './drawer/types.ts';
import type { FlatDoorParameters } from './flat-door/types.ts';
import type { FramedDoorParameters } from './framed-door/types.ts';
import type { FreeFrameParameters } from './free-frame/types.ts';
import type { FreePanelParameters } from './free-panel/types.ts';
import type { HatchSurroundParameters } from './hatch-surround/types.ts';
import type { CurvedHeadParameters } from './curved-head/types.ts';
import type { MaterialId, PieceId } from './ids.ts';
import type { InfillParameters } from './infill/types.ts';
import type { LidsParameters } from './lids/types.ts';
import type { LouvredDoorParameters } from './louvred-door/types.ts';
import type { SlatLiningParameters } from './slat-lining/types.ts';
import type { StepParameters } from './step/types.ts';
import type { TrimRunParameters } from './trim-run/types.ts';

/** How solid timber is bought: rough from the saw, or planed all round. */
export type SolidState = 'sawn' | 'planed';

/** A material of the project. A sheet's `thickness` is measured, never nominal; density in kg/m³. */
export type Material =
  | {
      readonly id: MaterialId;
      readonly kind: 'sheet';
      readonly name: string;
      readonly thickness: number;
      readonly density?: number;
    }
  | {
      readonly id: MaterialId;
      readonly kind: 'solid';
      readonly name: string;
      /** A row of the species table, as `Oak, European`. */
      readonly species?: string;
      readonly state: SolidState;
      readonly density?: number;
    };

/** Settings that hold for the whole project; each has a default from the trade (joinery 0.6). mm. */
export interface JoinerySettings {
  /** Finish film per face. */
  readonly film: number;
  /** Moisture content in percent: in the workshop now, aboard at the least, aboard at the most. */
  readonly moistureNow: number;
  readonly moistureLow: number;
  readonly moistureHigh: number;
  /** Edges broken. */
  readonly arris: number;
  /** Coats of finish on the faces that show and on those that do not, where they differ; else all faces get the same. */
  readonly coatsShown?: number;
  readonly coatsHidden?: number;
  /** Widest flat-sawn board in a solid part that must lie flat, mm; left out: 120 (joinery D3, C16). */
  readonly widestFlat?: number;
  /** For what spares are cut (joinery D3); left out: for nothing. */
  readonly spares?: 'none' | 'boards' | 'all';
}

interface PieceBase {
  readonly id: PieceId;
  /** The letter of its addresses: `C` in `C4`. */
  readonly letter: string;
  readonly name: string;
  /** Shape of the project it is fitted to, when it takes its size from one. */
  readonly shape?: string;
}

/** What to make, as the user asked for it. */
export type Piece =
  | (PieceBase & { readonly kind: 'door-frame'; readonly parameters: DoorFrameParameters })
  | (PieceBase & { readonly kind: 'carcase'; readonly parameters: CarcaseParameters })
  | (PieceBase & { readonly kind: 'shelf'; readonly parameters: ShelfParameters })
  | (PieceBase & { readonly kind: 'countertop'; readonly parameters: CountertopParameters })
  | (PieceBase & { readonly kind: 'run'; readonly parameters: RunParameters })
  | (PieceBase & { readonly kind: 'drawer'; readonly parameters: DrawerParameters })
  | (PieceBase & { readonly kind: 'cabinet-front'; readonly parameters: CabinetFrontParameters })
  | (PieceBase & { readonly kind: 'flat-door'; readonly parameters: FlatDoorParameters })
  | (PieceBase & { readonly kind: 'free-panel'; readonly parameters: FreePanelParameters })
  | (PieceBase & { readonly kind: 'framed-door'; readonly parameters: FramedDoorParameters })
  | (PieceBase & { readonly kind: 'free-frame'; readonly parameters: FreeFrameParameters })
  | (PieceBase & { readonly kind: 'louvred-door'; readonly parameters: LouvredDoorParameters })
  | (PieceBase & { readonly kind: 'slat-lining'; readonly parameters: SlatLiningParameters })
  | (PieceBase & { readonly kind: 'hatch-surround'; readonly parameters: HatchSurroundParameters })
  | (PieceBase & { readonly kind: 'infill'; readonly parameters: InfillParameters })
  | (PieceBase & { readonly kind: 'dividers'; readonly parameters: DividersParameters })
  | (PieceBase & { readonly kind: 'lids'; readonly parameters: LidsParameters })
  | (PieceBase & { readonly kind: 'trim-run'; readonly parameters: TrimRunParameters })
  | (PieceBase & { readonly kind: 'access-panel'; readonly parameters: AccessPanelParameters })
  | (PieceBase & { readonly kind: 'step'; readonly parameters: StepParameters })
  | (PieceBase & { readonly kind: 'curved-head'; readonly parameters: CurvedHeadParameters });

export type PieceKind = Piece['kind'];

/** What a new piece is told; `materials` are those of the project, of which the first fitting ones are taken. */
export interface NewPiece {
  readonly id: string;
  readonly letter: string;
  readonly name: string;
  readonly shape?: string;
  readonly materials: readonly Material[];
  /** What is made already, for a piece that goes with another. */
  readonly pieces?: readonly Piece[];
}

/** One parameter of a piece kind as the app shows it: label, unit, default and limits. */
export interface ParameterInfo {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly type:
    | 'length'
    | 'number'
    | 'whole'
    | 'choice'
    | 'yes-no'
    | 'material'
    | 'piece'
    | 'lengths'
    | 'numbers'
    | 'cells';
  readonly group: string;
  readonly default?: number | string | boolean;
  readonly min?: number;
  readonly max?: number;
  readonly choices?: readonly { readonly value: string; readonly label: string }[];
  /** Which materials a `material` parameter takes; and whether it may be left out. */
  readonly materialKind?: 'sheet' | 'solid' | 'either';
  readonly required?: boolean;
  /** Which pieces of the project a `piece` parameter takes. */
  readonly pieceKind?: PieceKind;
  readonly source?: string;
}
