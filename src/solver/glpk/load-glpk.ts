import createGlpk from 'glpk.js/node';
import type { GLPK, LP, Result } from 'glpk.js/node';
import type { LinearProgram, LinearSolution, SolveLp } from '#core/numerics';

let loaded: Promise<GLPK> | null = null;

/** The linear-program solver, ready to be called; it is loaded once. Works in Node and in a web worker. */
export async function loadGlpk(): Promise<SolveLp> {
  loaded ??= quietly(() => createGlpk());
  const glpk = await loaded;
  return (program, seconds) => solve(glpk, program, seconds);
}

/** GLPK binds the console's writers while it loads and would chatter on them for ever; it is given mute ones. */
async function quietly<T>(load: () => Promise<T>): Promise<T> {
  const { log, error } = console;
  console.log = console.error = () => undefined;
  try {
    return await load();
  } finally {
    console.log = log;
    console.error = error;
  }
}

function solve(glpk: GLPK, program: LinearProgram, seconds?: number): LinearSolution {
  const names = nameVariables(program);
  const problem = toGlpk(glpk, program, names);
  const whole = (program.integers?.length ?? 0) > 0;
  const options = {
    msglev: glpk.GLP_MSG_OFF,
    presol: whole,
    ...(whole && seconds ? { tmlim: seconds } : {}),
  };
  return fromGlpk(glpk, program, names, glpk.solve(problem, options));
}

/** Short names, because a solver keeps names as keys of plain objects and refuses long ones. */
function nameVariables(program: LinearProgram): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const add = (variable: string) => {
    if (!names.has(variable)) names.set(variable, `x${names.size}`);
  };
  for (const [variable] of program.objective) add(variable);
  for (const row of program.rows) for (const [variable] of row.terms) add(variable);
  for (const { variable } of program.bounds ?? []) add(variable);
  for (const variable of program.integers ?? []) add(variable);
  return names;
}

type Terms = LinearProgram['objective'];

/** Terms of one row, each variable once: GLPK aborts on a variable named twice and on what is no number. */
function toTerms(
  terms: Terms,
  names: ReadonlyMap<string, string>,
  where: string,
): { name: string; coef: number }[] {
  const sums = new Map<string, number>();
  for (const [variable, coefficient] of terms) {
    if (!Number.isFinite(coefficient))
      throw new Error(`coefficient of ${variable} in ${where} is ${coefficient}`);
    const name = names.get(variable) as string;
    sums.set(name, (sums.get(name) ?? 0) + coefficient);
  }
  return [...sums].map(([name, coef]) => ({ name, coef }));
}

function toGlpk(glpk: GLPK, program: LinearProgram, names: ReadonlyMap<string, string>): LP {
  const bounds = program.bounds ?? [];
  return {
    name: 'program',
    objective: {
      direction: program.sense === 'minimise' ? glpk.GLP_MIN : glpk.GLP_MAX,
      name: 'objective',
      vars: toTerms(program.objective, names, 'the objective'),
    },
    subjectTo: program.rows.map((row, i) => ({
      name: `r${i}`,
      vars: toTerms(row.terms, names, row.name),
      bnds: toBounds(glpk, row.lower, row.upper, row.name),
    })),
    bounds: bounds.map(({ variable, lower, upper }) => ({
      name: names.get(variable) as string,
      ...toBounds(glpk, lower ?? 0, upper, variable),
    })),
    generals: (program.integers ?? []).map((variable) => names.get(variable) as string),
  };
}

function toBounds(glpk: GLPK, lower: number | undefined, upper: number | undefined, where: string) {
  const lb = lower === undefined || lower === -Infinity ? undefined : lower;
  const ub = upper === undefined || upper === Infinity ? undefined : upper;
  if (Number.isNaN(lb ?? 0) || Number.isNaN(ub ?? 0)) throw new Error(`a bound of ${where} is no number`);
  if (lb === undefined && ub === undefined) return { type: glpk.GLP_FR, lb: 0, ub: 0 };
  if (ub === undefined) return { type: glpk.GLP_LO, lb: lb as number, ub: 0 };
  if (lb === undefined) return { type: glpk.GLP_UP, lb: 0, ub };
  return lb === ub ? { type: glpk.GLP_FX, lb, ub } : { type: glpk.GLP_DB, lb, ub };
}

function fromGlpk(
  glpk: GLPK,
  program: LinearProgram,
  names: ReadonlyMap<string, string>,
  { result }: Result,
): LinearSolution {
  const whole = (program.integers?.length ?? 0) > 0;
  const status = statusOf(glpk, result.status, whole);
  const usable = status === 'optimal' || status === 'feasible';
  const variables: Record<string, number> = {};
  const duals: Record<string, number> = {};
  if (usable) {
    for (const [variable, name] of names) variables[variable] = result.vars[name] ?? 0;
    if (!whole) program.rows.forEach((row, i) => (duals[row.name] = result.dual?.[`r${i}`] ?? 0));
  }
  return { status, value: usable ? result.z : NaN, variables, duals };
}

function statusOf(glpk: GLPK, status: number, whole: boolean): LinearSolution['status'] {
  switch (status) {
    case glpk.GLP_OPT:
      return 'optimal';
    case glpk.GLP_FEAS:
      return whole ? 'feasible' : 'none';
    case glpk.GLP_UNBND:
      return 'unbounded';
    case glpk.GLP_NOFEAS:
    case glpk.GLP_INFEAS:
      return 'infeasible';
    default:
      return 'none';
  }
}
