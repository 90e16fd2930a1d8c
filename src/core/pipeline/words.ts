import { formatNumber } from '#core/units';

/** Lengths in mm as text with at most one decimal, joined as `700 × 300 × 12`. */
export function showSize(...lengths: readonly number[]): string {
  return lengths.map((length) => formatNumber(length, 1)).join(' × ');
}

/** A list in a sentence: `A`, `A and B`, `A, B and C`. */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** A count with its noun: `1 sheet`, `3 sheets`. */
export function countWords(count: number, noun: string, plural = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : plural}`;
}

/** Breaks a text into lines of at most `width` characters, the later ones indented. */
export function wrapLines(text: string, width = 96, indent = '  '): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

/** Things in a sentence, parts of a piece run together: `A1 to A4, A7, tape`. */
export function describeThings(things: readonly string[]): string {
  if (things.length === 0) return 'nothing new';
  const isPart = (thing: string): boolean => /^[A-Z]{1,2}\d+$/.test(thing);
  const runs: string[] = [];
  let run: string[] = [];
  const close = (): void => {
    runs.push(run.length > 2 ? `${run[0]} to ${run.at(-1)}` : run.join(', '));
    run = [];
  };
  for (const thing of things.filter(isPart)) {
    if (run.length > 0 && !follows(run.at(-1) ?? '', thing)) close();
    run.push(thing);
  }
  if (run.length > 0) close();
  return [...runs, ...new Set(things.filter((thing) => !isPart(thing)))].join(', ');
}

function follows(before: string, after: string): boolean {
  const split = (id: string): readonly [string, number] => [
    id.replace(/\d/g, ''),
    Number(id.replace(/\D/g, '')),
  ];
  const [[letter, number], [nextLetter, next]] = [split(before), split(after)];
  return letter === nextLetter && next === number + 1;
}
