export type {
  FixingPrice,
  MeasuredShape,
  Project,
  RouterProfile,
  SawProfile,
  StockLine,
  Tools,
} from './types.ts';
