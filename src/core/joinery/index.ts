export { jointWords } from './joints/joint-words.ts';
export {
  buildPiece,
  gapToShapeOf,
  isCarriedInParts,
  kindWords,
  newPiece,
  parametersOf,
  pieceKinds,
  requiredPieces,
  seenSizes,
  shapeNeeds,
} from './kinds.ts';
export type { KindWords, SeenSizes, ShapeNeeds } from './kind.ts';
export { askedParameters } from './asked-parameters.ts';
export { jointAdvice, suitability } from './joints/advice.ts';
export type { JointDuty, JointKind } from './joints/advice.ts';
export {
  workOutBoxJoint,
  workOutDovetailJoint,
  workOutLockRebate,
  workOutRebate,
} from './joints/case-joints.ts';
export { screwLimits } from './joints/corner.ts';
export {
  workOutEdgeJoint,
  workOutGroove,
  workOutLipping,
  workOutTongueGroove,
} from './joints/edge-joints.ts';
export {
  hasShortGrain,
  workOutCopeStick,
  workOutDowels,
  workOutLooseTenon,
  workOutTenon,
} from './joints/end-joints.ts';
export { findOverlap, workOutBridle, workOutHalfLap } from './joints/lapped-members.ts';
export { mirrorMachining } from './joints/mirror.ts';
export {
  bevelFence,
  dogBone,
  grooveFences,
  kerfBend,
  notchPasses,
  rebateSettings,
  ripFences,
} from './joints/saw-settings.ts';
export { workOutMitreSpline, workOutScarf } from './joints/sloped-joints.ts';
export { workOutEndOnFace } from './joints/end-on-face.ts';
export type { EndOnFaceJoint, EndOnFaceWish } from './joints/end-on-face.ts';
export type { EndOnFace } from './joints/joint-kinds.ts';
export { workOutButt, workOutHousing } from './joints/standing-joints.ts';
export { workOutJoint } from './joints/work-out-joint.ts';
export type { JointRequest } from './joints/work-out-joint.ts';
export { figureOf, gluedGap } from './joints/worked-joint.ts';
export type { JointFigure, WorkedJoint } from './joints/worked-joint.ts';
export { withFrontFittings } from './hung-door/front-fittings.ts';
export { withHingeBeds } from './hung-door/jamb-hinges.ts';
export type { MadePiece } from './hung-door/made-door.ts';
export { withPairFigure } from './hung-door/pair-figure.ts';
export { withStrike } from './hung-door/strike-in-door.ts';
export type { Gate } from './gates.ts';
export { roughSize } from './parts.ts';
export { sayBuilt } from './say-built.ts';
export { slicePart } from './slices.ts';
export type { PartSlice } from './slices.ts';
export { widestFlat } from './glue-up-panels.ts';
export { defaultSettings } from './rules.ts';
export type { GlueParameters } from './glue-types.ts';
export type { CabinetFrontParameters } from './cabinet-front/types.ts';
export type { CarcaseParameters } from './carcase/types.ts';
export type { ShelfParameters } from './shelf/types.ts';
export type { CountertopParameters } from './countertop/types.ts';
export type { RunParameters } from './run/types.ts';
export type { DoorFrameParameters, FrameCorner } from './door-frame/types.ts';
export type { DrawerCorner, DrawerParameters } from './drawer/types.ts';
export type { FlatDoorParameters } from './flat-door/types.ts';
export type { FreePanelParameters } from './free-panel/types.ts';
export type { FramedDoorParameters } from './framed-door/types.ts';
export type { FreeCorner, FreeFrameParameters } from './free-frame/types.ts';
export type { LouvredDoorParameters } from './louvred-door/types.ts';
export type { SlatLiningParameters } from './slat-lining/types.ts';
export type { HatchSurroundParameters } from './hatch-surround/types.ts';
export type { InfillParameters } from './infill/types.ts';
export type { DividersParameters } from './dividers/types.ts';
export type { LidsParameters } from './lids/types.ts';
export type { TrimRunParameters } from './trim-run/types.ts';
export type { AccessPanelParameters } from './access-panel/types.ts';
export type { StepParameters } from './step/types.ts';
export type { CurvedHeadParameters } from './curved-head/types.ts';
export type { MaterialId, PieceId } from './ids.ts';
export type {
  JoinerySettings,
  Material,
  NewPiece,
  ParameterInfo,
  Piece,
  PieceKind,
  SolidState,
} from './piece-types.ts';
export type {
  AssemblyStep,
  Board,
  BuildContext,
  BuiltPiece,
  Fixing,
  Joint,
  Machining,
  MatchedSet,
  Part,
  PartEdge,
  PartFace,
  PartId,
  PartSize,
  StepAddress,
  WorkingStep,
} from './types.ts';
