export type { Box, Box3, Outline, PathPoint, Placement, Point, Point3, Shape, ShapeEdge } from './types.ts';
