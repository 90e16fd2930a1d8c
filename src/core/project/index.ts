export { applyCommand } from './apply-command.ts';
export { checkProject } from './check-project.ts';
export type {
  Command,
  ParameterValue,
  PieceCommand,
  RackCommand,
  ReadingCommand,
  ShapeCommand,
  ShapeItemCommand,
  WholeCommand,
} from './commands.ts';
export { defaultTools } from './defaults.ts';
export { putInPlace, redo, runCommand, runCommands, startHistory, undo } from './history.ts';
export type { CommandsRun, History } from './history.ts';
export { findRepeats } from './find-repeats.ts';
export { isPieceLetter, nextLetter } from './letters.ts';
export { newProject, projectVersion } from './new-project.ts';
export type { PlanFile, PlanFileBlank, PlanFileGroup, PlanFilePart } from './plan-file.ts';
export { longestImage } from './shape-types.ts';
export type {
  CheckBar,
  HullSection,
  MeasuredCurve,
  MeasuredOpening,
  MeasuredOutline,
  MeasuredSections,
  MeasuredShape,
  MeasuredWalls,
  Obstruction,
  Photo,
  PicturePoint,
  ShapeChange,
  ShapeItem,
  TracedOutline,
  Wall,
} from './shape-types.ts';
export { migrations, upgradeProject } from './upgrade-project.ts';
export type { Migration } from './upgrade-project.ts';
export type {
  FixingPrice,
  MadePart,
  Project,
  RouterProfile,
  SawProfile,
  StockLine,
  TakenPlan,
  Tools,
} from './types.ts';
