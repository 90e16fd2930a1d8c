import { evaluateFormula, namesInFormula, parseFormula, type Formula } from '#core/numerics';
import type { WorkingStep } from './types.ts';

type Unit = WorkingStep['unit'];

/** What a number is in words, where its rule or value comes from, and its unit (mm when left out). */
type About = readonly [label: string, source: string, unit?: Unit];

/** Collects the working of a piece: numbers put in, rules applied in order, each kept so that it can be unfolded. */
export interface WorkingBook {
  /** Puts a number in; answers it. */
  put(name: string, value: number, ...about: About): number;
  /** Puts in what a parameter of the piece says, so that sizes lead back to it; answers it. */
  putChoice(parameter: string, name: string, value: number, ...about: About): number;
  /** Works out a rule from names already known; answers its value. Throws on an unknown name: rules are ours. */
  work(name: string, formula: string, ...about: About): number;
  /** Value of a name already known; throws when it is not. */
  value(name: string): number;
  has(name: string): boolean;
  steps(): readonly WorkingStep[];
}

const parsed = new Map<string, { readonly tree: Formula; readonly names: readonly string[] }>();

function parseOnce(formula: string) {
  const known = parsed.get(formula);
  if (known) return known;
  const tree = parseFormula(formula);
  const entry = { tree, names: namesInFormula(tree) };
  parsed.set(formula, entry);
  return entry;
}

/** An empty book. A name may be used once; the same name twice is our mistake and throws. */
export function openWorkingBook(): WorkingBook {
  const steps: WorkingStep[] = [];
  const values: Record<string, number> = Object.create(null);
  const note = (step: WorkingStep): number => {
    if (step.name in values) throw new Error(`worked out twice: ${step.name}`);
    values[step.name] = step.value;
    steps.push(step);
    return step.value;
  };
  const value = (name: string): number => {
    const found = values[name];
    if (found === undefined) throw new Error(`not worked out yet: ${name}`);
    return found;
  };
  return {
    put: (name, number, ...[label, source, unit = 'mm']) =>
      note({ name, label, inputs: [], value: number, unit, source }),
    putChoice: (parameter, name, number, ...[label, source, unit = 'mm']) =>
      note({ name, label, inputs: [], value: number, unit, source, parameter }),
    work: (name, formula, ...[label, source, unit = 'mm']) => {
      const { tree, names } = parseOnce(formula);
      const inputs = names.map((input) => ({ name: input, value: value(input) }));
      return note({ name, label, formula, inputs, value: evaluateFormula(tree, values), unit, source });
    },
    value,
    has: (name) => name in values,
    steps: () => [...steps],
  };
}
