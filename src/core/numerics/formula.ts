/**
 * Arithmetic written as a carpenter would check it: numbers, names, + - * / ** ( ), and the functions below.
 * Angles in formulas are degrees, as on a bevel gauge. The text shown is the text worked out.
 */
export type Formula =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'negate'; readonly of: Formula }
  | { readonly kind: 'binary'; readonly operator: Operator; readonly left: Formula; readonly right: Formula }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Formula[] };

type Operator = '+' | '-' | '*' | '/' | '**';

const degrees = Math.PI / 180;
const guard = 1e-9; // keeps 3.0000000001 from rounding up; far below any tape

const functions: Readonly<Record<string, (...args: number[]) => number>> = {
  min: Math.min,
  max: Math.max,
  abs: Math.abs,
  sqrt: Math.sqrt,
  floor: (x = NaN) => Math.floor(x + guard),
  ceil: (x = NaN) => Math.ceil(x - guard),
  round: Math.round,
  down: (x = NaN, step = 1) => Math.floor(x / step + guard) * step,
  up: (x = NaN, step = 1) => Math.ceil(x / step - guard) * step,
  sind: (x = NaN) => Math.sin(x * degrees),
  cosd: (x = NaN) => Math.cos(x * degrees),
  tand: (x = NaN) => Math.tan(x * degrees),
  cotd: (x = NaN) => 1 / Math.tan(x * degrees),
  asind: (x = NaN) => Math.asin(x) / degrees,
  acosd: (x = NaN) => Math.acos(x) / degrees,
  atand: (x = NaN) => Math.atan(x) / degrees,
  atan2d: (y = NaN, x = NaN) => Math.atan2(y, x) / degrees,
  radians: (x = NaN) => x * degrees,
  degrees: (x = NaN) => x / degrees,
};

const constants: Readonly<Record<string, number>> = { pi: Math.PI };

type Token = { readonly text: string; readonly at: number };

function splitTokens(text: string): readonly Token[] {
  const pattern = /\s*(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?|[A-Za-z_][A-Za-z0-9_]*|\*\*|[-+*/(),])/gy;
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.trimEnd().length) {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (!match) throw new Error(`formula not understood at ${at + 1}: ${text}`);
    tokens.push({ text: match[1] ?? '', at });
    at = pattern.lastIndex;
  }
  return tokens;
}

/** Reads a formula. Throws on anything it does not understand: formulas are ours, not the user's. */
export function parseFormula(text: string): Formula {
  const reader: Reader = { text, tokens: splitTokens(text), next: 0 };
  const formula = readSum(reader);
  if (reader.next < reader.tokens.length) {
    throw new Error(`formula goes on after its end at '${peek(reader)}': ${text}`);
  }
  return formula;
}

/** Where reading stands; it moves on as tokens are taken. */
interface Reader {
  readonly text: string;
  readonly tokens: readonly Token[];
  next: number;
}

function peek(reader: Reader): string | undefined {
  return reader.tokens[reader.next]?.text;
}

function take(reader: Reader): string {
  return reader.tokens[reader.next++]?.text ?? '';
}

function expectToken(reader: Reader, wanted: string): void {
  if (take(reader) !== wanted) throw new Error(`formula lacks '${wanted}': ${reader.text}`);
}

function readSum(reader: Reader): Formula {
  return readLeft(reader, readProduct, ['+', '-']);
}

function readProduct(reader: Reader): Formula {
  return readLeft(reader, readSigned, ['*', '/']);
}

function readLeft(
  reader: Reader,
  operand: (reader: Reader) => Formula,
  operators: readonly string[],
): Formula {
  let left = operand(reader);
  while (operators.includes(peek(reader) ?? '')) {
    const operator = take(reader) as Operator;
    left = { kind: 'binary', operator, left, right: operand(reader) };
  }
  return left;
}

function readSigned(reader: Reader): Formula {
  if (peek(reader) !== '-') return readPower(reader);
  take(reader);
  return { kind: 'negate', of: readSigned(reader) };
}

function readPower(reader: Reader): Formula {
  const base = readAtom(reader);
  if (peek(reader) !== '**') return base;
  take(reader);
  return { kind: 'binary', operator: '**', left: base, right: readSigned(reader) };
}

function readAtom(reader: Reader): Formula {
  const token = take(reader);
  if (token === '(') {
    const inner = readSum(reader);
    expectToken(reader, ')');
    return inner;
  }
  if (/^[\d.]/.test(token)) return { kind: 'number', value: Number(token) };
  if (!/^[A-Za-z_]/.test(token)) {
    throw new Error(`formula ends too early or holds '${token}': ${reader.text}`);
  }
  return peek(reader) === '(' ? readCall(reader, token) : { kind: 'name', name: token };
}

function readCall(reader: Reader, name: string): Formula {
  take(reader);
  const args = [readSum(reader)];
  while (peek(reader) === ',') {
    take(reader);
    args.push(readSum(reader));
  }
  expectToken(reader, ')');
  return { kind: 'call', name, args };
}

/** The value of a formula with these numbers put in. Throws when a name or function is unknown. */
export function evaluateFormula(formula: Formula | string, values: Readonly<Record<string, number>>): number {
  const tree = typeof formula === 'string' ? parseFormula(formula) : formula;
  switch (tree.kind) {
    case 'number':
      return tree.value;
    case 'name':
      return lookUp(tree.name, values);
    case 'negate':
      return -evaluateFormula(tree.of, values);
    case 'binary':
      return combine(tree.operator, evaluateFormula(tree.left, values), evaluateFormula(tree.right, values));
    case 'call': {
      const call = Object.hasOwn(functions, tree.name) ? functions[tree.name] : undefined;
      if (!call) throw new Error(`unknown function in formula: ${tree.name}`);
      return call(...tree.args.map((arg) => evaluateFormula(arg, values)));
    }
  }
}

/** The names a formula needs, in order of first use, without repeats and without constants. */
export function namesInFormula(formula: Formula | string): readonly string[] {
  const names = new Set<string>();
  const visit = (tree: Formula): void => {
    if (tree.kind === 'name' && !Object.hasOwn(constants, tree.name)) names.add(tree.name);
    if (tree.kind === 'negate') visit(tree.of);
    if (tree.kind === 'call') tree.args.forEach(visit);
    if (tree.kind === 'binary') [tree.left, tree.right].forEach(visit);
  };
  visit(typeof formula === 'string' ? parseFormula(formula) : formula);
  return [...names];
}

function lookUp(name: string, values: Readonly<Record<string, number>>): number {
  const value = Object.hasOwn(values, name)
    ? values[name]
    : Object.hasOwn(constants, name)
      ? constants[name]
      : undefined;
  if (value === undefined) throw new Error(`unknown name in formula: ${name}`);
  return value;
}

function combine(operator: Operator, left: number, right: number): number {
  switch (operator) {
    case '+':
      return left + right;
    case '-':
      return left - right;
    case '*':
      return left * right;
    case '/':
      return left / right;
    case '**':
      return left ** right;
  }
}
