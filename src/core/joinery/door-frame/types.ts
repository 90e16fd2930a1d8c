import type { MaterialId } from '../ids.ts';

/** The corner joints a door frame can have (joinery B1). */
export type FrameCorner =
  | 'rebate'
  | 'tongue'
  | 'housing-over'
  | 'housing-between'
  | 'dowel'
  | 'loose-tenon'
  | 'half-lap'
  | 'bridle'
  | 'mitre'
  | 'butt';

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
