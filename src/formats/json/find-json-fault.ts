/** Where a text stops being JSON, and what is wrong there. */
export interface JsonFault {
  readonly offset: number;
  /** A sentence without its place. */
  readonly what: string;
}

/** A place in the text that moves as it is read. */
interface Cursor {
  readonly text: string;
  at: number;
}

/** Deeper than any file of ours; keeps a hostile file from exhausting the stack. */
const deepest = 200;

const space = /[ \t\r\n]*/y;
const stringToken = /"(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const numberToken = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.+-])/y;
const wordToken = /(?:true|false|null)(?!\w)/y;

/** The first fault of a text that should be JSON (RFC 8259), a key given twice included; null when there is none. */
export function findJsonFault(text: string): JsonFault | null {
  const cursor: Cursor = { text, at: 0 };
  skipSpace(cursor);
  if (cursor.at === text.length) return { offset: 0, what: 'The file is empty.' };
  const fault = readValue(cursor, 0);
  if (fault) return fault;
  skipSpace(cursor);
  return cursor.at < text.length
    ? faultAt(cursor, `After the end of the document stands ${seen(cursor)}.`)
    : null;
}

/** The place of an offset in words, as `line 12, column 5`. */
export function describePlace(text: string, offset: number): string {
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  return `line ${line}, column ${offset - (before.lastIndexOf('\n') + 1) + 1}`;
}

function readValue(cursor: Cursor, depth: number): JsonFault | null {
  if (depth > deepest) return faultAt(cursor, `Lists and objects are nested deeper than ${deepest}.`);
  const sign = cursor.text[cursor.at];
  if (sign === '{') return readItems(cursor, depth, '}');
  if (sign === '[') return readItems(cursor, depth, ']');
  if (sign === '"') return take(cursor, stringToken) === null ? brokenString(cursor) : null;
  if (take(cursor, numberToken) !== null || take(cursor, wordToken) !== null) return null;
  return faultAt(cursor, describeNoValue(cursor));
}

/** The inside of an object (closed by `}`) or a list (closed by `]`), from its opening bracket. */
function readItems(cursor: Cursor, depth: number, close: '}' | ']'): JsonFault | null {
  const opened = cursor.at;
  const keys = new Set<string>();
  cursor.at += 1;
  skipSpace(cursor);
  if (takeSign(cursor, close)) return null;
  for (;;) {
    const fault = (close === '}' ? readKey(cursor, keys) : null) ?? readValue(cursor, depth + 1);
    if (fault) return fault;
    skipSpace(cursor);
    if (takeSign(cursor, close)) return null;
    if (!takeSign(cursor, ',')) return faultAt(cursor, describeNoComma(cursor, opened, close));
    skipSpace(cursor);
    if (cursor.text[cursor.at] === close)
      return faultAt(cursor, `There is a comma too many before ${close}.`);
  }
}

function readKey(cursor: Cursor, keys: Set<string>): JsonFault | null {
  const start = cursor.at;
  if (cursor.text[start] !== '"')
    return faultAt(cursor, `A key in double quotes is expected, but there is ${seen(cursor)}.`);
  const token = take(cursor, stringToken);
  if (token === null) return brokenString(cursor);
  const key: string = JSON.parse(token);
  if (keys.has(key)) return { offset: start, what: `The key ${token} is given twice in the same object.` };
  keys.add(key);
  skipSpace(cursor);
  if (!takeSign(cursor, ':')) return faultAt(cursor, `A colon is missing after the key ${token}.`);
  skipSpace(cursor);
  return null;
}

function describeNoValue(cursor: Cursor): string {
  const rest = cursor.text.slice(cursor.at, cursor.at + 12);
  if (rest === '') return 'The file ends where a value is expected.';
  if (/^-?(?:nan|infinity)/i.test(rest))
    return `${/^-?\w+/.exec(rest)?.[0]} is not a number that a file can hold.`;
  if (/^[+.\d-]/.test(rest)) return `A number is written wrongly: ${seen(cursor)}.`;
  if (rest.startsWith("'")) return 'Text must stand in double quotes, not single ones.';
  if (/^\/[/*]/.test(rest)) return 'Remarks are not allowed in this kind of file.';
  return `A value is expected, but there is ${seen(cursor)}.`;
}

function describeNoComma(cursor: Cursor, opened: number, close: string): string {
  const what = close === '}' ? 'object' : 'list';
  if (cursor.at >= cursor.text.length)
    return `The file ends in the middle of the ${what} begun in ${describePlace(cursor.text, opened)}.`;
  return `A comma or ${close} is missing before ${seen(cursor)}.`;
}

function brokenString(cursor: Cursor): JsonFault {
  return faultAt(
    cursor,
    'A text in double quotes is not closed on its line, or holds a sign that must be escaped.',
  );
}

/** The next few signs, for a sentence. */
function seen(cursor: Cursor): string {
  const token = /^(?:"[^"\n]{0,20}"?|[\w.+-]{1,20}|[^\s])/.exec(cursor.text.slice(cursor.at))?.[0];
  return token === undefined ? 'nothing more' : token;
}

function faultAt(cursor: Cursor, what: string): JsonFault {
  return { offset: cursor.at, what };
}

function skipSpace(cursor: Cursor): void {
  take(cursor, space);
}

function takeSign(cursor: Cursor, sign: string): boolean {
  if (cursor.text[cursor.at] !== sign) return false;
  cursor.at += 1;
  return true;
}

function take(cursor: Cursor, token: RegExp): string | null {
  token.lastIndex = cursor.at;
  const found = token.exec(cursor.text);
  if (!found) return null;
  cursor.at += found[0].length;
  return found[0];
}
