import { parametersOf, type BuiltPiece, type ParameterInfo, type WorkingStep } from '#core/joinery';
import { formatLength, formatNumber, type LengthSystem } from '#core/units';

/** The step of this name; null when the piece has none. */
export function findStep(built: BuiltPiece, name: string): WorkingStep | null {
  return built.working.find((step) => step.name === name) ?? null;
}

/** A value of the working with its unit, as `842.5 mm` or `3`. */
export function showValue(step: WorkingStep, system: LengthSystem): string {
  switch (step.unit) {
    case 'mm':
      return formatLength(step.value, { system, step: system === 'mm' ? 0.01 : 1 / 64, unit: true });
    case 'degrees':
      return `${formatNumber(step.value, 2)}°`;
    case 'percent':
      return `${formatNumber(step.value, 2)} %`;
    case 'kg':
      return `${formatNumber(step.value, 2)} kg`;
    default:
      return formatNumber(step.value, 4);
  }
}

/** The rule with its names replaced by their numbers: `down(641 - 2*5, 0.5)`. Whole names only. */
export function withNumbers(step: WorkingStep): string {
  const values = new Map(step.inputs.map((input) => [input.name, formatNumber(input.value, 3)]));
  return (step.formula ?? '').replace(/[\p{L}_][\p{L}\p{N}_]*/gu, (name) => values.get(name) ?? name);
}

/** The parameter that a number put in is; null when it is none. */
export function parameterBehind(step: WorkingStep, kind: BuiltPiece['kind']): ParameterInfo | null {
  return parametersOf(kind).find((info) => info.key === step.parameter) ?? null;
}

/** The parameters a size depends on, each once, the nearest in the working first. */
export function parametersBehind(built: BuiltPiece, name: string): readonly ParameterInfo[] {
  const found = stepsBehind(built, name).flatMap((step) => parameterBehind(step, built.kind) ?? []);
  return [...new Set(found)];
}

const shapeSource = 'shape ';

/** The names of the measured shapes a size depends on. */
export function shapesBehind(built: BuiltPiece, name: string): readonly string[] {
  const sources = stepsBehind(built, name).map((step) => step.source);
  const shapes = sources.filter((source) => source.startsWith(shapeSource));
  return [...new Set(shapes)].map((source) => source.slice(shapeSource.length));
}

/** A step and all that it rests on, each once, the nearest first. */
function stepsBehind(built: BuiltPiece, name: string): readonly WorkingStep[] {
  const steps = new Map<string, WorkingStep>();
  for (let names: readonly string[] = [name]; names.length > 0;) {
    const fresh = names.flatMap((each) => (steps.has(each) ? [] : (findStep(built, each) ?? [])));
    for (const step of fresh) steps.set(step.name, step);
    names = fresh.flatMap((step) => step.inputs.map((input) => input.name));
  }
  return [...steps.values()];
}

/** The names of the steps that give the sizes of parts, each once, in the order of the parts. */
export function sizeNames(built: BuiltPiece): readonly string[] {
  const names = built.parts.flatMap(({ working }) => [working.length, working.width, working.thickness]);
  return [...new Set(names)].filter((name) => findStep(built, name) !== null);
}

/** The results nothing else rests on and no part takes its size from: checks and figures for the fitting. */
export function otherNames(built: BuiltPiece): readonly string[] {
  const used = new Set(built.working.flatMap((step) => step.inputs.map((input) => input.name)));
  const sizes = sizeNames(built);
  return built.working
    .filter((step) => !used.has(step.name) && step.formula !== undefined && !sizes.includes(step.name))
    .map((step) => step.name);
}
