export { findAssemblyOrder } from './assembly-order.ts';
export type { AssemblyMove, AssemblyOrder } from './assembly-order.ts';
export { longestRoundCorner } from './corner-turn.ts';
export { fitsThrough, leastSecondSide } from './rectangle-fit.ts';
export type { Passage } from './rectangle-fit.ts';
export { canBeStoodUp, checkRoute, handRoom, takeRoute } from './route.ts';
export { bodiesOf } from './solids.ts';
export type { Body, Solid } from './solids.ts';
export type { GateAnswer, Load } from './types.ts';
