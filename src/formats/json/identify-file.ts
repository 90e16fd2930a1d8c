import { fail, succeed, type Result } from '#core/problems';

import { parseJson } from './read-document.ts';

/** The kinds of JSON file there are. */
export type FileKind =
  | 'project'
  | 'survey'
  | 'adjustment'
  | 'cutting-job'
  | 'cutting-plan'
  | 'nest-job'
  | 'nest-plan'
  | 'plan-file'
  | 'check-answer';

/** Keys that only one kind has, in the order in which they are looked for. */
const marks: readonly (readonly [FileKind, readonly string[]])[] = [
  ['check-answer', ['kind', 'findings']],
  ['plan-file', ['groups']],
  ['cutting-plan', ['layouts']],
  ['nest-plan', ['placements']],
  ['project', ['pieces']],
  ['project', ['shapes']],
  ['adjustment', ['points']],
  ['survey', ['readings']],
  ['nest-job', ['gap', 'parts']],
  ['nest-job', ['margin', 'parts']],
  ['cutting-job', ['stock']],
  ['cutting-job', ['parts']],
  ['project', ['version']],
];

/** Which of our files a text is, by its keys; fails when it is broken or none of them. */
export function identifyFile(text: string): Result<FileKind> {
  const document = parseJson(text);
  if (!document.ok) return document;
  const { value } = document;
  const keys = typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.keys(value) : [];
  const kind = marks.find(([, wanted]) => wanted.every((key) => keys.includes(key)))?.[0];
  if (kind === 'cutting-job' && hasOutlines(value)) return succeed('nest-job');
  if (kind) return succeed(kind);
  return fail({
    severity: 'stop',
    code: 'kind-unknown',
    message: `This is none of our files: ${keys.length > 0 ? `its keys are ${keys.slice(0, 8).join(', ')}` : 'it is not an object with keys'}.`,
    remedy:
      'A project has "pieces", a survey "readings", a cutting job "stock" and "parts", an answer "layouts", "placements" or "points".',
  });
}

/** Whether the parts of a job are given by their outlines, or its stock is a strip: then it is one for true shapes. */
function hasOutlines(value: unknown): boolean {
  const { parts, stock } = value as { readonly parts?: unknown; readonly stock?: unknown };
  const first = (list: unknown): object => {
    const item: unknown = Array.isArray(list) ? list[0] : null;
    return typeof item === 'object' && item !== null ? item : {};
  };
  return 'outline' in first(parts) || 'strip' in first(stock);
}
