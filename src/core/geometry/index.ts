export { offsetOutline, simplifyOutlines, subtractOutlines } from './clipping.ts';
export { findCrossing } from './crossings.ts';
export {
  arcBetween,
  boxOfOutline,
  boxOfPoints,
  circleOutline,
  flattenOutline,
  isInside,
  mirrorOutline,
  moveOutline,
  outlineArea,
  outlinePerimeter,
  pointOnArc,
  rectangleOutline,
  reverseOutline,
  sidesOf,
  turnOutline,
} from './outline.ts';
export type { Arc } from './outline.ts';
export {
  boxOfPoints3,
  cornersOfBox,
  crossProduct,
  distanceBetween,
  joinBoxes3,
  placePoint,
  placedAsDrawn,
  unplacePoint,
} from './space.ts';
export { trapezoidsOf } from './trapezoids.ts';
export type {
  Box,
  Box3,
  Outline,
  PathPoint,
  Placement,
  Point,
  Point3,
  Shape,
  ShapeEdge,
  ShapeKind,
  ShapeObstruction,
  ShapeSection,
} from './types.ts';
