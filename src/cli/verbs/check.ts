import { fail, type Problem, type Result } from '#core/problems';

import type { Arguments } from '../arguments.ts';
import { checkText, type CheckedFile } from '../check-text.ts';
import type { Io } from '../io.ts';
import type { Outcome } from '../outcome.ts';
import { readInput } from '../read-input.ts';
import { oneFile } from './one-file.ts';

/** `check FILE [--job JOB]`: what kind of file it is and what is wrong with it. */
export async function runCheck(io: Io, given: Arguments): Promise<Outcome> {
  const file = oneFile(given, 'check FILE');
  if (!file.ok) return { kind: 'refused', findings: file.problems };
  const text = readInput(io, file.value);
  if (!text.ok) return { kind: 'refused', findings: text.problems };
  const checked = checkText(file.value, text.value);
  if (!checked.ok) return { kind: 'refused', findings: checked.problems };
  const beside =
    given.job === undefined ? noJob(checked.value) : checkAgainstJob(io, given.job, checked.value);
  if (!beside.ok) return { kind: 'refused', findings: beside.problems };
  const { kind } = checked.value;
  const findings = [...checked.value.findings, ...beside.problems];
  const verdict =
    findings.length === 0
      ? 'nothing wrong found'
      : `${findings.length} ${findings.length === 1 ? 'finding' : 'findings'}`;
  return { kind: 'done', document: { kind, findings }, text: `${kind}: ${verdict}\n`, findings };
}

function noJob(checked: CheckedFile): Result<null> {
  const problems: readonly Problem[] =
    checked.against === undefined
      ? []
      : [
          {
            severity: 'note',
            code: 'job-not-given',
            message: 'The form of the plan is right; whether it answers its job was not checked.',
            remedy: 'Add --job JOB.json.',
          },
        ];
  return { ok: true, value: null, problems };
}

function checkAgainstJob(io: Io, path: string, { against, kind }: CheckedFile): Result<null> {
  if (against === undefined)
    return fail({
      severity: 'stop',
      code: 'wrong-use',
      about: '--job',
      message: `--job goes with a plan of cut or nest; this file is a ${kind}.`,
      remedy: 'Leave --job out.',
    });
  const text = readInput(io, path);
  if (!text.ok) return text;
  const found = against(text.value);
  if (!found.ok) return found;
  return { ok: true, value: null, problems: found.value };
}
