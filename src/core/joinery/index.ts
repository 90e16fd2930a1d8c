export { jointWords } from './joint-words.ts';
export { buildPiece, newPiece, requiredPieces, shapeNeeds } from './build.ts';
export { screwLimits } from './joints-corner.ts';
export { parametersOf } from './parameters.ts';
export { roughSize } from './parts.ts';
export { defaultSettings } from './rules.ts';
export { seenSizes } from './seen-sizes.ts';
export type { SeenSizes } from './seen-sizes.ts';
export type {
  CabinetFrontParameters,
  DoorFrameParameters,
  DrawerCorner,
  DrawerParameters,
  FlatDoorParameters,
  FrameCorner,
  JoinerySettings,
  Material,
  MaterialId,
  NewPiece,
  ParameterInfo,
  Piece,
  PieceId,
  PieceKind,
  SolidState,
} from './piece-types.ts';
export type {
  AssemblyStep,
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
