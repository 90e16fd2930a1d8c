import { fail, succeed, type Result } from '#core/problems';

import { wrongUse, type Arguments } from '../arguments.ts';

/** The one file a verb is given; fails with a sentence when there is none, or more. */
export function oneFile(given: Arguments, usage: string): Result<string> {
  const [file, second] = given.files;
  if (file === undefined)
    return fail(wrongUse('file', 'No file was named.', `Say \`joggle ${usage}\`, or - for standard input.`));
  if (second !== undefined)
    return fail(
      wrongUse(
        'file',
        `One file is expected, and ${given.files.length} were named: ${given.files.join(', ')}.`,
        `Say \`joggle ${usage}\`.`,
      ),
    );
  return succeed(file);
}
