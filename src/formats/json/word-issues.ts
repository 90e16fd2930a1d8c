import type { Problem } from '#core/problems';
import type * as v from 'valibot';

import { suggestKey } from './suggest-key.ts';

type Issue = v.BaseIssue<unknown>;

/** More faults than this in one file are counted, not told one by one: nobody reads them. */
const mostTold = 50;

/**
 * One finding per fault, each with the path of what it concerns, as `pieces[2].parameters.jamThickness`; of very many the
 * first, and how many more there are.
 */
export function wordIssues(issues: readonly Issue[]): readonly Problem[] {
  const told = issues.slice(0, mostTold).flatMap(wordIssue);
  const more = issues.length - mostTold;
  if (more <= 0) return told;
  const rest = `There ${more === 1 ? 'is 1 more fault' : `are ${more} more faults`} in the file.`;
  return [
    ...told,
    stop(
      'more-faults',
      'the document',
      rest,
      'Correct those named first; the others may be of the same kind.',
    ),
  ];
}

/** The path of a value in a document: keys with points, places in lists in brackets; `the document` for the whole. */
export function formatPath(keys: readonly unknown[]): string {
  const path = keys.reduce<string>(
    (before, key) => (typeof key === 'number' ? `${before}[${key}]` : `${before}.${String(key)}`),
    '',
  );
  return path === '' ? 'the document' : path.replace(/^\./, '');
}

function wordIssue(issue: Issue): readonly Problem[] {
  const keys = (issue.path ?? []).map((item) => item.key);
  if (issue.type === 'strict_object' && issue.expected === 'never') return wordUnknownKeys(issue, keys);
  const path = formatPath(keys);
  const sign = issue.kind === 'validation' ? 'value-out-of-range' : 'wrong-type';
  if (issue.input === undefined)
    return [
      stop(
        'missing-key',
        path,
        `${path} is missing.`,
        `Add it: ${issue.type === 'strict_object' ? 'it may not be left out' : `it must be ${describeExpected(issue)}`}.`,
      ),
    ];
  return [
    stop(
      sign,
      path,
      `${path} is ${showValue(issue.input)}; it must be ${describeExpected(issue)}.`,
      'Correct the value in the file.',
    ),
  ];
}

/** The schema library names only the first unknown key of an object; its message carries the known ones. */
function wordUnknownKeys(issue: Issue, keys: readonly unknown[]): readonly Problem[] {
  const known = issue.message.split(' ');
  const holder = issue.path?.at(-1)?.input;
  const unknown = Object.keys(typeof holder === 'object' && holder !== null ? holder : {}).filter(
    (key) => !known.includes(key),
  );
  return unknown.map((key) => {
    const path = formatPath([...keys.slice(0, -1), key]);
    const close = suggestKey(key, known);
    return stop(
      'unknown-key',
      path,
      `The key "${key}" at ${path} is not known.`,
      close === null ? `Known here: ${known.join(', ')}.` : `Did you mean "${close}"?`,
    );
  });
}

function describeExpected(issue: Issue): string {
  const limit = 'requirement' in issue ? issue.requirement : undefined;
  switch (issue.type) {
    case 'finite':
      return 'a number this side of infinity';
    case 'min_value':
      return `${String(limit)} or more`;
    case 'max_value':
      return `${String(limit)} or less`;
    case 'gt_value':
      return `above ${String(limit)}`;
    case 'safe_integer':
      return 'a whole number';
    case 'non_empty':
      return 'a text that is not empty';
    case 'regex':
      return issue.message;
    case 'strict_object':
      return 'an object';
    case 'strict_tuple':
      return 'a list of the right length';
    case 'array':
      return 'a list';
    default:
      return describeType(issue.expected ?? 'something else');
  }
}

const typeWords: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text',
  boolean: 'true or false',
  Array: 'a list',
  Object: 'an object',
};

function describeType(expected: string): string {
  const choices = expected.replace(/^\(|\)$/g, '').split(' | ');
  const words = [...new Set(choices.map((choice) => typeWords[choice] ?? choice))];
  if (words.length === 1) return words[0] ?? expected;
  return words.every((word) => word.startsWith('"')) ? `one of ${words.join(', ')}` : words.join(' or ');
}

function showValue(value: unknown): string {
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  if (typeof value === 'number' && !Number.isFinite(value)) return 'a number beyond all bounds';
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…"` : text;
}

function stop(code: string, about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, about, message, remedy };
}
