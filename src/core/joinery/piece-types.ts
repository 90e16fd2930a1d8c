import type { CoatingKind, GlueKind } from '#core/materials';
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
import type { GlueParameters } from './glue-types.ts';
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
  /** What the pieces are finished with; left out: spar varnish. */
  readonly finish?: CoatingKind;
  /** Coats of finish on the faces that show and on those that do not, where they differ; else all faces get the same. */
  readonly coatsShown?: number;
  readonly coatsHidden?: number;
  /** Widest flat-sawn board in a solid part that must lie flat, mm; left out: 120 (joinery D3, C16). */
  readonly widestFlat?: number;
  /** For what spares are cut (joinery D3); left out: for nothing. */
  readonly spares?: 'none' | 'boards' | 'all';
  /** What joints are glued with; left out or `usual`: as each piece usually is. */
  readonly glue?: GlueKind | 'usual';
  /** The pieces stand in the wet. */
  readonly wet?: boolean;
}

interface PieceBase {
  readonly id: PieceId;
  /** The letter of its addresses: `C` in `C4`. */
  readonly letter: string;
  readonly name: string;
  /** Shape of the project it is fitted to, when it takes its size from one. */
  readonly shape?: string;
}

/** A piece of one kind: what its kind asks for, and what all glued pieces may say of their glue. */
type PieceOf<Kind extends string, Parameters> = PieceBase & {
  readonly kind: Kind;
  readonly parameters: Parameters & GlueParameters;
};

/** What to make, as the user asked for it. */
export type Piece =
  | PieceOf<'door-frame', DoorFrameParameters>
  | PieceOf<'carcase', CarcaseParameters>
  | PieceOf<'shelf', ShelfParameters>
  | PieceOf<'countertop', CountertopParameters>
  | PieceOf<'run', RunParameters>
  | PieceOf<'drawer', DrawerParameters>
  | PieceOf<'cabinet-front', CabinetFrontParameters>
  | PieceOf<'flat-door', FlatDoorParameters>
  | PieceOf<'free-panel', FreePanelParameters>
  | PieceOf<'framed-door', FramedDoorParameters>
  | PieceOf<'free-frame', FreeFrameParameters>
  | PieceOf<'louvred-door', LouvredDoorParameters>
  | PieceOf<'slat-lining', SlatLiningParameters>
  | PieceOf<'hatch-surround', HatchSurroundParameters>
  | PieceOf<'infill', InfillParameters>
  | PieceOf<'dividers', DividersParameters>
  | PieceOf<'lids', LidsParameters>
  | PieceOf<'trim-run', TrimRunParameters>
  | PieceOf<'access-panel', AccessPanelParameters>
  | PieceOf<'step', StepParameters>
  | PieceOf<'curved-head', CurvedHeadParameters>;

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

/** A parameter that is asked only when another one is given or left out, or stands at one of these values; or when the piece is fitted to no measured shape. */
export type AskedWhen =
  | { readonly fitted: false }
  | { readonly key: string; readonly given: boolean }
  | { readonly key: string; readonly is: readonly (string | number | boolean)[] };

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
  readonly pieceKind?: PieceKind | readonly PieceKind[];
  /** When it is asked at all; left out: always. */
  readonly when?: AskedWhen;
  readonly source?: string;
}
