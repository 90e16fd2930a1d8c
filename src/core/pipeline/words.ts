import { formatLength, formatNumber, type LengthSystem } from '#core/units';

/** Lengths in mm as text with at most one decimal, joined as `700 × 300 × 12`. */
export function showSize(...lengths: readonly number[]): string {
  return lengths.map((length) => formatNumber(length, 1)).join(' × ');
}

/** Sizes in the units of a project, joined as `700 × 300 × 12`; inches to 1/32, as fine as a rule is read. */
export function showSizeIn(units: LengthSystem, ...lengths: readonly number[]): string {
  if (units === 'mm') return showSize(...lengths);
  return lengths.map((length) => formatLength(length, { system: units, step: 1 / 32 })).join(' × ');
}

/** The unit of a project as it stands after a figure. */
export function unitOf(units: LengthSystem): 'mm' | 'in' {
  return units === 'mm' ? 'mm' : 'in';
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

/** `1st`, `2nd`, `3rd`, `11th`. */
export function ordinal(number: number): string {
  const tens = number % 100;
  const endings = ['th', 'st', 'nd', 'rd'];
  return `${number}${tens > 10 && tens < 14 ? 'th' : (endings[number % 10] ?? 'th')}`;
}

/** Breaks a text into lines of at most `width` characters; it keeps its own indent, the later lines get `indent`. */
export function wrapLines(text: string, width = 96, indent = '  '): readonly string[] {
  const lines: string[] = [];
  let line = /^ */.exec(text)?.[0] ?? '';
  let isEmpty = true;
  for (const word of text.trim().split(/\s+/)) {
    if (!isEmpty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else line = isEmpty ? line + word : `${line} ${word}`;
    isEmpty = false;
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
  for (const thing of things.filter(isPart).sort(byAddress)) {
    if (run.length > 0 && !follows(run.at(-1) ?? '', thing)) close();
    run.push(thing);
  }
  if (run.length > 0) close();
  return [...runs, ...new Set(things.filter((thing) => !isPart(thing)))].join(', ');
}

function follows(before: string, after: string): boolean {
  return letterOf(before) === letterOf(after) && numberOf(after) === numberOf(before) + 1;
}

function byAddress(a: string, b: string): number {
  const [left, right] = [letterOf(a), letterOf(b)];
  if (left === right) return numberOf(a) - numberOf(b);
  return left.length - right.length || (left < right ? -1 : 1);
}

function letterOf(address: string): string {
  return address.replace(/\d/g, '');
}

function numberOf(address: string): number {
  return Number(address.replace(/\D/g, ''));
}
