export type { Understood } from './build-pieces.ts';
export { checkCarrying, withCarrying } from './check-carrying.ts';
export type { Carrying } from './check-carrying.ts';
export { comparePieces, figuresOf } from './compare-pieces.ts';
export type { PartChange, PieceFigures } from './compare-pieces.ts';
export { asMade } from './made-parts.ts';
export { cutStockCommand } from './cut-stock.ts';
export { chooseOutline } from './import/choose-outline.ts';
export { traceOutline } from './import/trace-outline.ts';
export type { TraceOptions } from './import/trace-outline.ts';
export type { DrawnFile, DrawnPath, OutlineCandidate, OutlineChoice } from './import/types.ts';
export { viewPairs } from './interlock/view-pairs.ts';
export { expandLayout } from './expand-layout.ts';
export type { ExpandedPart } from './expand-layout.ts';
export { findBlocked } from './find-blocked.ts';
export { describeFit } from './fit/describe-fit.ts';
export { offerFix } from './fixes/offer-fix.ts';
export type { Fix } from './fixes/types.ts';
export { groupParts } from './group-parts.ts';
export { labelTexts } from './label-texts.ts';
export { listParts } from './list-parts.ts';
export { listAfterSaw, listSawOrder } from './list-saw-order.ts';
export type { SawLine } from './list-saw-order.ts';
export { listSundries } from './list-sundries.ts';
export { checkSums } from './check-sums.ts';
export { nameStock } from './stock-names.ts';
export { listShopping, sumShopping, tableOfShopping } from './list-shopping.ts';
export type { ShoppingLine } from './list-shopping.ts';
export { listTasks } from './list-tasks.ts';
export { makePlanFile } from './make-plan-file.ts';
export { findRemainders } from './find-remainders.ts';
export { addSavingStock } from './stock-of-saving.ts';
export { takePlanCommand } from './taken-plans.ts';
export { betterPlan, withBound } from './better-plan.ts';
export { planEverything } from './plan-everything.ts';
export type { PlanTools } from './plan-everything.ts';
export type { PlannedWork } from './plan-everything.ts';
export { planTrips } from './plan-trips.ts';
export { checkOutcome } from './shapes/check-outcome.ts';
export { assertPlan, planGroup, planGroups } from './plan-group.ts';
export type { SolveTools } from './plan-group.ts';
export { adjustShape } from './shapes/adjust-shape.ts';
export { wallPoint, wallReadings } from './shapes/adjust-walls.ts';
export { sketchLine, viewChecklist } from './checklist/view-checklist.ts';
export { visitChecklist } from './checklist/visit-checklist.ts';
export type { ReadingToTake, VisitBlock, VisitChecklist, VisitLine, VisitStage } from './checklist/types.ts';
export { assertNest, remainingJob } from './router/plan-router.ts';
export { isRouted } from './router/group-router.ts';
export { partsOnSheet, viewNest } from './router/view-nest.ts';
export { sizeDeviations } from './size-deviations.ts';
export { sayFindings } from './say-findings.ts';
export { summarise } from './summarise.ts';
export type { SummaryExtras } from './summarise.ts';
export { describeProof } from './summary-cutting.ts';
export { describeUnpriced, measureCost, sayCost } from './cost-measure.ts';
export type { CostMeasure } from './cost-measure.ts';
export { noPrice, sayStockPrice, saySum, sumStock } from './stock-prices.ts';
export type { PriceSum } from './stock-prices.ts';
export type { Table } from './table.ts';
export { understandProject } from './understand-project.ts';
export { readingsOf } from './shapes/shape-readings.ts';
export { ordinateId, ringOf, viewShape } from './view-shape.ts';
export type { ShapeRoom } from './view-shape.ts';
export { viewLayout } from './view-layout.ts';
export type { LayoutPaper } from './view-layout.ts';
export { countWords, describeThings, listWords, showSize, showSizeIn, wrapLines } from './words.ts';
export { wordFinding } from './word-finding.ts';
export { writeTrips } from './write-trips.ts';
export type {
  Blank,
  CuttingGroup,
  OrdinateSlip,
  OutputFile,
  PieceFit,
  PlannedGroup,
  PlannedRouting,
  RouterGroup,
  ShapeOutcome,
  Understanding,
} from './types.ts';
