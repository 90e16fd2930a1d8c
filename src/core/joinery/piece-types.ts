export type PieceId = string;
export type MaterialId = string;

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
}

/** The corner joints a door frame can have (joinery B1). */
export type FrameCorner =
  'rebate' | 'tongue' | 'housing-over' | 'housing-between' | 'half-lap' | 'bridle' | 'mitre' | 'butt';

/** Parameters of a door frame; what is left out takes the default of its table (`parametersOf`). mm and degrees-free. */
export interface DoorFrameParameters {
  readonly datum?: 'mean' | 'left' | 'right' | 'boat';
  readonly mode?: 'auto' | 'square' | 'fitted';
  readonly packingSides?: number;
  readonly packingHead?: number;
  readonly packingSill?: number;
  readonly jambThickness?: number;
  readonly headThickness?: number;
  readonly sill?: boolean;
  readonly sillThickness?: number;
  readonly sillNosing?: number;
  /** How the jambs stand on the sill; flat frames use their corner joint instead. */
  readonly sillJoint?: 'tongue' | 'butt';
  /** Thickness of the bulkhead, the thickest and the thinnest of the six points measured. */
  readonly bulkheadMax?: number;
  readonly bulkheadMin?: number;
  readonly corner?: FrameCorner;
  readonly jointDepth?: number;
  readonly tongueThickness?: number;
  /** Wood beyond the joint: head past the jamb (housing over), jamb past the head (housing between). */
  readonly horn?: number;
  /** `cover`: the cover on the far face laps over the door opening and is the stop. */
  readonly stop?: 'planted' | 'rebated' | 'cover' | 'none';
  readonly stopThickness?: number;
  readonly stopRebate?: number;
  readonly covers?: 'both' | 'near' | 'far' | 'none';
  readonly coverWidth?: number;
  readonly coverThickness?: number;
  readonly reveal?: number;
  readonly doorThickness?: number;
  readonly doorGapSide?: number;
  readonly doorGapTop?: number;
  readonly doorGapBottom?: number;
  readonly infill?: boolean;
  /** Heights from the top of the head to what is above, left to right at equal steps; infill only. */
  readonly infillOrdinates?: readonly number[];
  readonly materials: {
    readonly frame: MaterialId;
    readonly covers?: MaterialId;
    readonly infill?: MaterialId;
  };
}

export type DrawerCorner =
  'box' | 'through-dovetail' | 'lapped-dovetail' | 'rebate' | 'housed-back' | 'lock-rebate' | 'butt';

/** Parameters of a drawer. Opening: the smallest of three readings each. mm. */
export interface DrawerParameters {
  readonly openingWidth: number;
  readonly openingHeight: number;
  readonly clearDepth: number;
  /** Largest minus smallest opening width along the depth. */
  readonly openingVariation?: number;
  readonly sideThickness?: number;
  readonly frontThickness?: number;
  readonly backThickness?: number;
  readonly bottomThickness?: number;
  readonly grooveDepth?: number;
  readonly grooveUp?: number;
  readonly runner?: 'metal' | 'side-rail' | 'bottom-notch' | 'bottom';
  readonly runnerLength?: number;
  readonly notch?: number;
  readonly railDepth?: number;
  readonly bottomStyle?: 'captured' | 'slides-under-back';
  readonly corner?: DrawerCorner;
  readonly front?: 'overlay' | 'inset' | 'none';
  readonly overlay?: number;
  readonly insetGap?: number;
  readonly falseFrontThickness?: number;
  readonly count?: number;
  readonly materials: {
    readonly box: MaterialId;
    readonly bottom: MaterialId;
    readonly front?: MaterialId;
    readonly runners?: MaterialId;
  };
}

/** Parameters of a cabinet front: a face frame with a grid of openings, and what closes each. mm. */
export interface CabinetFrontParameters {
  readonly width?: number;
  readonly height?: number;
  /** Gap all round in the opening it is fitted to; or wood left on the outer stiles for scribing. */
  readonly fittingGap?: number;
  readonly scribe?: number;
  readonly columns?: number;
  readonly rows?: number;
  readonly stileWidth?: number;
  readonly topRail?: number;
  readonly midRail?: number;
  readonly bottomRail?: number;
  readonly thickness?: number;
  readonly grading?: 'equal' | 'arithmetic' | 'geometric' | 'given';
  readonly step?: number;
  readonly ratio?: number;
  readonly heights?: readonly number[];
  readonly joint?: 'loose-tenon' | 'stub-tenon' | 'half-lap' | 'dowel' | 'butt';
  readonly jointLength?: number;
  readonly fronts?: 'inset' | 'overlay';
  readonly gap?: number;
  readonly overlay?: number;
  readonly frontThickness?: number;
  /** What closes the openings: rows from top to bottom, each with its columns from left to right. */
  readonly cells?: readonly (readonly ('drawer' | 'door' | 'open')[])[];
  readonly grain?: 'vertical' | 'horizontal';
  readonly continuous?: 'none' | 'tight' | 'true';
  readonly kerf?: number;
  readonly notch?: number;
  readonly materials: { readonly frame: MaterialId; readonly fronts: MaterialId };
}

/**
 * Parameters of a flat door: a sheet with solid lippings. Its size and gaps come from a door frame of the project when
 * `frame` names one, else from `width`, `height` and the gaps. mm; the bevel in degrees.
 */
export interface FlatDoorParameters {
  readonly frame?: PieceId;
  readonly width?: number;
  readonly height?: number;
  readonly gapSide?: number;
  readonly gapTop?: number;
  readonly gapBottom?: number;
  /** The side of the hinges as seen from the side of their knuckles. */
  readonly hinged?: 'left' | 'right';
  /** Of the sheet as measured when left out. */
  readonly thickness?: number;
  readonly lipping?: number;
  readonly hingeLipping?: number;
  readonly lockLipping?: number;
  readonly lipJoint?: 'butt' | 'mitre' | 'corner-block';
  readonly cornerRadius?: number;
  readonly bevelDegrees?: number;
  /** Slots in each of the two bands; 0 for none. */
  readonly slots?: number;
  readonly slotsRun?: 'upright' | 'across';
  readonly slotWidth?: number;
  readonly slotLength?: number;
  /** Outside to outside of the slots of a band. */
  readonly slotZone?: number;
  /** From the upper or lower edge of the door to the band. */
  readonly slotEdge?: number;
  /** Pivot of the hinges beyond the edge of the door, and proud of its face. */
  readonly pivotBeyond?: number;
  readonly pivotProud?: number;
  readonly hingeLength?: number;
  /** How deep the body of a lock goes in from the edge; 0 for a latch on the face. */
  readonly lockDepth?: number;
  readonly battens?: 'auto' | 'always' | 'none';
  readonly materials: { readonly core: MaterialId; readonly lipping: MaterialId };
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
  | (PieceBase & { readonly kind: 'drawer'; readonly parameters: DrawerParameters })
  | (PieceBase & { readonly kind: 'cabinet-front'; readonly parameters: CabinetFrontParameters })
  | (PieceBase & { readonly kind: 'flat-door'; readonly parameters: FlatDoorParameters });

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
    'length' | 'number' | 'whole' | 'choice' | 'yes-no' | 'material' | 'piece' | 'lengths' | 'cells';
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
