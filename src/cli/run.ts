import type { Problem } from '#core/problems';
import { writeJson } from '#formats/json';

import { readArguments, wrongUse, type Arguments } from './arguments.ts';
import { helpText } from './help.ts';
import type { Io } from './io.ts';
import type { ExitCode, Outcome } from './outcome.ts';
import { printFindings } from './print-findings.ts';
import { runCheck } from './verbs/check.ts';
import { runCut } from './verbs/cut.ts';
import { runMeasure } from './verbs/measure.ts';
import { runNest } from './verbs/nest.ts';
import { runOpen } from './verbs/open.ts';
import { runPlan } from './verbs/plan.ts';
import { runTrace } from './verbs/trace.ts';
import { version } from './version.ts';

type Verb = (io: Io, given: Arguments) => Promise<Outcome>;

const verbs: Readonly<Record<string, Verb>> = {
  plan: runPlan,
  measure: runMeasure,
  cut: runCut,
  nest: runNest,
  check: runCheck,
  open: runOpen,
  trace: runTrace,
};

/** Runs one command; what it says and answers goes through `io`. */
export async function run(argv: readonly string[], io: Io): Promise<ExitCode> {
  const wantsJson = argv.includes('--json');
  const read = readArguments(argv);
  if (!read.ok) return refuse(io, wantsJson, read.problems);
  const given = read.value;
  if (given.help || (given.verb === null && !given.version && argv.length === 0)) {
    io.answer(helpText);
    return 0;
  }
  if (given.version) {
    io.answer(`joggle ${version}\n`);
    return 0;
  }
  const verb = given.verb === null ? undefined : verbs[given.verb];
  if (!verb) return refuse(io, wantsJson, [unknownVerb(given.verb)]);
  return finish(io, wantsJson, await verb(io, given));
}

function finish(io: Io, wantsJson: boolean, outcome: Outcome): ExitCode {
  if (outcome.kind === 'refused') return refuse(io, wantsJson, outcome.findings);
  if (wantsJson) {
    io.say(printFindings(outcome.findings, outcome.project));
    io.answer(writeJson(outcome.document));
  } else {
    io.answer(outcome.text);
    io.say(printFindings(outcome.findings, outcome.project));
  }
  return outcome.findings.some((finding) => finding.severity === 'stop') ? 1 : 0;
}

function refuse(io: Io, wantsJson: boolean, findings: readonly Problem[]): ExitCode {
  io.say(printFindings(findings));
  if (wantsJson) io.answer(writeJson({ findings }));
  return 2;
}

function unknownVerb(verb: string | null): Problem {
  const known = 'plan, measure, cut, nest, check, trace or open';
  return verb === null
    ? wrongUse('verb', 'Nothing was asked for.', `Say ${known}; \`joggle --help\` explains them.`)
    : wrongUse(verb, `There is no command "${verb}".`, `Say ${known}; \`joggle --help\` explains them.`);
}
