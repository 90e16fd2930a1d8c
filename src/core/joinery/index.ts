export { buildPiece, newPiece, shapeNeeds } from './build.ts';
export { parametersOf } from './parameters.ts';
export { roughSize } from './parts.ts';
export { defaultSettings } from './rules.ts';
export type {
  AssemblyStep,
  BuildContext,
  BuiltPiece,
  CabinetFrontParameters,
  DoorFrameParameters,
  DrawerCorner,
  DrawerParameters,
  Fixing,
  FrameCorner,
  JoinerySettings,
  Joint,
  Machining,
  MatchedSet,
  Material,
  MaterialId,
  NewPiece,
  ParameterInfo,
  Part,
  PartEdge,
  PartFace,
  PartId,
  PartSize,
  Piece,
  PieceId,
  PieceKind,
  SolidState,
  WorkingStep,
} from './types.ts';
