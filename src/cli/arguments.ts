import { parseArgs } from 'node:util';

import { fail, succeed, type Problem, type Result } from '#core/problems';

/** The command line as understood. */
export interface Arguments {
  readonly verb: string | null;
  readonly files: readonly string[];
  readonly json: boolean;
  readonly help: boolean;
  readonly version: boolean;
  readonly output?: string;
  readonly job?: string;
  readonly seconds?: number;
  readonly work?: number;
  readonly seed?: number;
  readonly workers?: number;
  readonly port?: number;
  readonly into?: string;
  readonly layer?: string;
  readonly contour?: number;
  readonly name?: string;
  readonly seenFrom?: string;
  readonly unit?: string;
}

const options = {
  json: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean' },
  output: { type: 'string', short: 'o' },
  job: { type: 'string' },
  seconds: { type: 'string' },
  work: { type: 'string' },
  seed: { type: 'string' },
  workers: { type: 'string' },
  port: { type: 'string' },
  into: { type: 'string' },
  layer: { type: 'string' },
  contour: { type: 'string' },
  name: { type: 'string' },
  'seen-from': { type: 'string' },
  unit: { type: 'string' },
} as const;

/** Which options a verb takes besides `--json` and `--help`. */
const optionsOfVerb: Readonly<Record<string, readonly string[]>> = {
  plan: ['output', 'seconds', 'work', 'seed', 'workers'],
  measure: [],
  cut: ['seconds', 'work', 'seed', 'workers'],
  nest: ['seconds', 'work', 'seed', 'workers'],
  check: ['job'],
  open: ['port'],
  trace: ['into', 'layer', 'contour', 'name', 'seen-from', 'unit'],
};

/** The arguments taken apart; fails with a sentence for each that is wrong. */
export function readArguments(argv: readonly string[]): Result<Arguments> {
  const { values, positionals, tokens } = parseArgs({
    args: [...argv],
    options,
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const [verb = null, ...files] = positionals;
  const faults: Problem[] = [];
  const allowed = verb === null ? undefined : optionsOfVerb[verb];
  for (const token of tokens) if (token.kind === 'option') faults.push(...checkOption(token, verb, allowed));
  const number = (name: keyof typeof limits): number | undefined => {
    const text = values[name];
    if (typeof text !== 'string') return undefined;
    const found = readNumber(name, text);
    if (typeof found === 'number') return found;
    faults.push(found);
    return undefined;
  };
  const read: Arguments = {
    verb,
    files,
    json: values.json === true,
    help: values.help === true,
    version: values.version === true,
    ...texts(values, ['output', 'job', 'into', 'layer', 'name', 'unit']),
    ...(typeof values['seen-from'] === 'string' && { seenFrom: values['seen-from'] }),
    ...defined({ seconds: number('seconds'), work: number('work') }),
    ...defined({ seed: number('seed'), workers: number('workers'), port: number('port') }),
    ...defined({ contour: number('contour') }),
  };
  return faults.length > 0 ? fail(...faults) : succeed(read);
}

function checkOption(
  token: { readonly name: string; readonly rawName: string; readonly value?: string | undefined },
  verb: string | null,
  allowed: readonly string[] | undefined,
): readonly Problem[] {
  const known = token.name in options ? options[token.name as keyof typeof options] : undefined;
  if (!known) {
    return [
      wrongUse(token.rawName, `There is no option ${token.rawName}.`, '`joggle --help` lists them all.'),
    ];
  }
  if (known.type === 'string' && token.value === undefined)
    return [wrongUse(token.rawName, `The option ${token.rawName} needs a value after it.`)];
  if (known.type === 'boolean' && token.value !== undefined)
    return [
      wrongUse(token.rawName, `The option ${token.rawName} takes no value; it was given "${token.value}".`),
    ];
  const isGeneral = ['json', 'help', 'version'].includes(token.name);
  if (isGeneral || allowed === undefined || allowed.includes(token.name)) return [];
  return [
    wrongUse(
      token.rawName,
      `\`joggle ${verb}\` has no option ${token.rawName}.`,
      allowed.length > 0
        ? `It takes ${allowed.map((name) => `--${name}`).join(', ')}.`
        : 'It takes a file and --json.',
    ),
  ];
}

/** What numbers may be given: least, most, whole or not, and what for. */
const limits = {
  seconds: { least: 0.1, most: 86_400, whole: false, text: 'seconds from 0.1 to 86400' },
  work: { least: 1, most: 1e12, whole: true, text: 'a whole number of steps from 1 up' },
  seed: { least: 0, most: 4_294_967_295, whole: true, text: 'a whole number from 0 to 4294967295' },
  workers: { least: 1, most: 2, whole: true, text: '1 or 2' },
  port: { least: 1, most: 65_535, whole: true, text: 'a whole number from 1 to 65535' },
  contour: { least: 1, most: 1e6, whole: true, text: 'a whole number from 1 up' },
} as const;

function readNumber(name: keyof typeof limits, text: string): number | Problem {
  const { least, most, whole, text: wanted } = limits[name];
  const value = /^[+]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text.trim()) ? Number(text) : Number.NaN;
  const isFine = value >= least && value <= most && (!whole || Number.isInteger(value));
  return isFine ? value : wrongUse(`--${name}`, `--${name} is "${text}"; it must be ${wanted}.`);
}

/** A finding about how the command was called. */
export function wrongUse(about: string, message: string, remedy?: string): Problem {
  return { severity: 'stop', code: 'wrong-use', about, message, ...(remedy && { remedy }) };
}

/** Those of the options that are given as text. */
function texts<Name extends string>(
  values: Readonly<Record<string, unknown>>,
  names: readonly Name[],
): { [K in Name]?: string } {
  const given = names.flatMap((name) => {
    const value = values[name];
    return typeof value === 'string' ? [[name, value] as const] : [];
  });
  return Object.fromEntries(given) as { [K in Name]?: string };
}

function defined<T extends object>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}
