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
  const pattern =
    /\s*(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?|[A-Za-z_][A-Za-z0-9_]*|\*\*|>=|<=|[-+*/(),])/gy;
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
  const tokens = splitTokens(text);
  let next = 0;
  const peek = () => tokens[next]?.text;
  const take = () => tokens[next++]?.text;
  const expect = (wanted: string) => {
    if (take() !== wanted) throw new Error(`formula lacks '${wanted}': ${text}`);
  };

  const readSum = (): Formula => readLeft(readProduct, ['+', '-']);
  const readProduct = (): Formula => readLeft(readSigned, ['*', '/']);
  function readLeft(operand: () => Formula, operators: readonly string[]): Formula {
    let left = operand();
    while (operators.includes(peek() ?? '')) {
      const operator = take() as Operator;
      left = { kind: 'binary', operator, left, right: operand() };
    }
    return left;
  }
  function readSigned(): Formula {
    if (peek() !== '-') return readPower();
    take();
    return { kind: 'negate', of: readSigned() };
  }
  function readPower(): Formula {
    const base = readAtom();
    if (peek() !== '**') return base;
    take();
    return { kind: 'binary', operator: '**', left: base, right: readSigned() };
  }
  function readAtom(): Formula {
    const token = take() ?? '';
    if (token === '(') {
      const inner = readSum();
      expect(')');
      return inner;
    }
    if (/^[\d.]/.test(token)) return { kind: 'number', value: Number(token) };
    if (!/^[A-Za-z_]/.test(token)) throw new Error(`formula ends too early or holds '${token}': ${text}`);
    if (peek() !== '(') return { kind: 'name', name: token };
    take();
    const args = [readSum()];
    while (peek() === ',') {
      take();
      args.push(readSum());
    }
    expect(')');
    return { kind: 'call', name: token, args };
  }

  const formula = readSum();
  if (next < tokens.length) throw new Error(`formula goes on after its end at '${peek()}': ${text}`);
  return formula;
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
