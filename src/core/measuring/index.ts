export { adjustSurvey } from './adjust.ts';
export type { SurveyOutcome } from './adjust.ts';
export { confirmReading, suggestRepeat, withdrawSuggestion } from './confirm.ts';
export { checkAdjustment } from './check-adjustment.ts';
export { checkSurvey } from './check-survey.ts';
export { methods, sigmaOf } from './methods.ts';
export type { MethodEntry } from './methods.ts';
export { makeOpeningReading, openingChecklist, openingKeyOf, pointWords, readingWords } from './opening.ts';
export type { ChecklistLine, OpeningKey } from './opening.ts';
export { covarianceOfForms, formOfSize, sigmaOfForm, sigmaOfSize } from './derived.ts';
export type { DerivedSize, LinearForm } from './derived.ts';
export { bestExtraReading } from './extra-reading.ts';
export type { ExtraReading, GapPlan } from './extra-reading.ts';
export { hangShape, mirrorShape } from './hang-shape.ts';
export { edgeUncertainties, edgeUncertainty, pointUncertainty, spanUncertainty } from './uncertainty.ts';
export type {
  AdjustedNumber,
  AdjustedReading,
  Adjustment,
  KnownPoint,
  Method,
  Reading,
  Survey,
  Suspect,
  Thickness,
  Twist,
} from './types.ts';
export { tellsPoints } from './network.ts';
export { closeQuadrilateral } from './quadrilateral.ts';
export type { Quadrilateral, SixDistances } from './quadrilateral.ts';
export { fitOrdinates } from './ordinates.ts';
export type { OrdinateCurve, OrdinateSet } from './ordinates.ts';
export type { OrdinateDoubt } from './ordinate-slips.ts';
export {
  adviseEdge,
  adviseEdges,
  chanceOfFit,
  edgeDeviation,
  scribeAllowance,
  stackTolerances,
} from './chance.ts';
export type { EdgeAdvice, EdgeFit, GapLimits, ToleranceTerm } from './chance.ts';
export { sayReading } from './words.ts';
