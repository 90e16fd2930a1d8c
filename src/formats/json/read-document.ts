import { fail, succeed, type Result } from '#core/problems';
import * as v from 'valibot';

import { describePlace, findJsonFault } from './find-json-fault.ts';
import { formatPath, wordIssues } from './word-issues.ts';

/** The plain value of a JSON text; fails with line and column when it is broken. */
export function parseJson(text: string): Result<unknown> {
  const bare = text.startsWith('\ufeff') ? text.slice(1) : text;
  const fault = findJsonFault(bare);
  if (!fault) return succeed(JSON.parse(bare) as unknown);
  return fail({
    severity: 'stop',
    code: 'json-broken',
    about: describePlace(bare, fault.offset),
    message: `The file cannot be read at ${describePlace(bare, fault.offset)}: ${fault.what}`,
    remedy: 'Correct that place, or open an older copy of the file.',
  });
}

/** A value as the schema describes it; fails with a finding for every fault. */
export function matchSchema<Schema extends v.GenericSchema>(
  value: unknown,
  schema: Schema,
): Result<v.InferOutput<Schema>> {
  const match = v.safeParse(schema, value);
  if (!match.success) return fail(...wordIssues(match.issues));
  const path = findListAsObject(value, match.output, []);
  // The schemas check and change nothing: the value as given keeps the order of its keys, so that saving it again is no change.
  if (path === null) return succeed(value as v.InferOutput<Schema>);
  const about = formatPath(path);
  return fail({
    severity: 'stop',
    code: 'wrong-type',
    about,
    message: `${about} is a list; it must be an object.`,
    remedy: 'Correct the value in the file.',
  });
}

/** Path of a list where an object was meant: the schema library takes `[]` for an object without keys. */
function findListAsObject(
  given: unknown,
  taken: unknown,
  path: readonly unknown[],
): readonly unknown[] | null {
  if (typeof given !== 'object' || given === null || typeof taken !== 'object' || taken === null) return null;
  if (Array.isArray(given) !== Array.isArray(taken)) return path;
  const isList = Array.isArray(given);
  for (const [key, child] of Object.entries(given)) {
    const inside: unknown = (taken as Readonly<Record<string, unknown>>)[key];
    const found = findListAsObject(child, inside, [...path, isList ? Number(key) : key]);
    if (found) return found;
  }
  return null;
}
