import type { OutputFile } from '#core/pipeline';

/** Files of one kind, as the page lists them. */
export interface FileGroup {
  readonly title: string;
  readonly note: string;
  readonly files: readonly OutputFile[];
}

const kinds: readonly { readonly title: string; readonly note: string; readonly matches: RegExp }[] = [
  {
    title: 'Checklists',
    note: 'What to measure in one visit, with blanks to fill in.',
    matches: /^checklists/,
  },
  {
    title: 'Cutting diagrams',
    note: 'Print and take to the saw; rips in letters in the order of sawing.',
    matches: /^cutting/,
  },
  {
    title: 'Templates, full size',
    note: 'Print at 100 %, no fitting to the page, and measure the check bar before you cut anything by them.',
    matches: /template/,
  },
  { title: 'Labels', note: 'One for each part, with its address.', matches: /label/ },
  {
    title: 'Part sheets',
    note: 'Each piece whole and pulled apart, then its parts with joints and sizes: those made alike once, plain ones small.',
    matches: /^(parts?\/|part-sheets)/,
  },
  {
    title: 'Router files',
    note: 'Closed contours by operation and depth, in millimetres. Look through them before they run.',
    matches: /^router/,
  },
  { title: 'Lists', note: 'Parts, shopping, the summary and the visits.', matches: /\.(csv|txt|json)$/ },
];

/** The files sorted by what they are for; kinds without a file are left out. */
export function groupFiles(files: readonly OutputFile[]): readonly FileGroup[] {
  const kindOf = (file: OutputFile): number => kinds.findIndex((kind) => kind.matches.test(file.path));
  const known = kinds.map(({ title, note }, index) => ({
    title,
    note,
    files: printedFirst(files.filter((file) => kindOf(file) === index)),
  }));
  const others = { title: 'Other files', note: '', files: files.filter((file) => kindOf(file) < 0) };
  return [...known, others].filter((group) => group.files.length > 0);
}

/** What is printed comes before what a program reads. */
function printedFirst(files: readonly OutputFile[]): readonly OutputFile[] {
  const isPrinted = (file: OutputFile): boolean => file.path.endsWith('.pdf');
  return [...files.filter(isPrinted), ...files.filter((file) => !isPrinted(file))];
}

const types: Readonly<Record<string, string>> = {
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  csv: 'text/csv',
  json: 'application/json',
  txt: 'text/plain',
  zip: 'application/zip',
};

/** The media type of a file by its ending. */
export function typeOf(path: string): string {
  return types[path.slice(path.lastIndexOf('.') + 1)] ?? 'application/octet-stream';
}

/** How large a file is, as `12 kB`. */
export function sizeWords(file: OutputFile): string {
  const bytes =
    typeof file.content === 'string' ? new TextEncoder().encode(file.content).length : file.content.length;
  return bytes < 1000 ? `${bytes} B` : `${Math.round(bytes / 1000)} kB`;
}
