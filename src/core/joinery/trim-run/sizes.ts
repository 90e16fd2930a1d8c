import type { Problem } from '#core/problems';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { trimRunParameters } from './parameters.ts';
import type { TrimRunParameters } from './types.ts';
import { chooseWalls, type Walls } from './walls.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

/** Every choice of a trim run with its default filled in. */
export type TrimChoices = Required<Omit<TrimRunParameters, 'materials' | 'wallLengths' | 'cornerAngles'>> & {
  readonly material: Material;
  readonly given: ReadonlySet<string>;
  readonly run: Walls;
};

/** How a piece of trim ends: square, mitred at a corner, or square before the post of that corner. */
export interface TrimEnd {
  readonly kind: 'square' | 'mitre' | 'post';
  /** Number of the corner from 1; 0 for a free end. */
  readonly corner: number;
}

/** A trim run with its sizes worked out; `ends` of each wall from left to right. */
export interface TrimLayout {
  readonly choices: TrimChoices;
  readonly book: WorkingBook;
  readonly ends: readonly { readonly left: TrimEnd; readonly right: TrimEnd }[];
  /** Pieces each wall is made of, scarfed together. */
  readonly pieces: readonly number[];
}

const rule = 'joinery B11';

/** Flatter outside corners are mitred: a post there would be all but nothing, degrees (common practice, no source). */
const postFrom = 200;

/** Fills in the defaults of a trim run and finds its walls; what is missing is in `lacking`. */
export function chooseTrim(
  parameters: TrimRunParameters,
  context: BuildContext,
  name: string,
): {
  readonly choices: TrimChoices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { values, given } = fillDefaults(parameters, trimRunParameters);
  const { material, findings } = findMaterial(context, parameters.materials.trim, {
    for: 'the trim',
    kind: 'either',
  });
  const { walls, problems } = chooseWalls(parameters, context, name);
  const thickness =
    parameters.thickness ?? (material.kind === 'sheet' ? material.thickness : Number(values['thickness']));
  const choices = { ...values, thickness, material, given, run: walls } as unknown as TrimChoices;
  return { choices, findings, lacking: problems };
}

/** Works out a trim run (joinery B11). */
export function workOutTrim(choices: TrimChoices): TrimLayout {
  const book = openWorkingBook();
  const { run } = choices;
  putIn(choices, book);
  run.angles.forEach((angle, i) => sizeCorner({ choices, book, angle, corner: i + 1 }));
  const ends = run.walls.map((_, i) => ({ left: endAt(choices, i - 1), right: endAt(choices, i) }));
  const pieces = run.walls.map((_, i) =>
    sizeWall({ choices, book, ends: ends[i] ?? { left: none, right: none }, i }),
  );
  return { choices, book, ends, pieces };
}

const none: TrimEnd = { kind: 'square', corner: 0 };

/** The end at a corner counted from 0: -1 is the left end of the run, in a closed room the last corner. */
function endAt({ run, outside }: TrimChoices, corner: number): TrimEnd {
  const i = corner < 0 && run.closed ? run.angles.length - 1 : corner;
  const angle = run.angles[i];
  if (angle === undefined) return none;
  const isOutside = angle >= postFrom && !run.walls[i]?.isReturn && !run.walls[i + 1]?.isReturn;
  return { kind: outside === 'post' && isOutside ? 'post' : 'mitre', corner: i + 1 };
}

function putIn(choices: TrimChoices, book: WorkingBook): void {
  const { given, material } = choices;
  const table = { infos: trimRunParameters, values: choices, given };
  putParameters(book, table, { width: 'w', stick: 'stick' });
  putParameters(book, table, { tiltDegrees: 'B' }, 'degrees');
  if (choices.outside === 'post') putParameters(book, table, { postRadius: 'R' });
  const measured = material.kind === 'sheet' && !given.has('thickness');
  const origin = measured ? `measured: ${material.name}` : given.has('thickness') ? 'you' : rule;
  book.putChoice('thickness', 't', choices.thickness, 'thickness', origin);
  book.work('D', 'w*cosd(B) + t*sind(B)', 'stands out from the wall', rule);
  book.work('open_half', 'w*tand(0.5)', 'half a degree wrong opens a corner by', rule);
}

interface Corner {
  readonly choices: TrimChoices;
  readonly book: WorkingBook;
  readonly angle: number;
  readonly corner: number;
}

function sizeCorner({ choices, book, angle, corner }: Corner): void {
  const { run, outside } = choices;
  const n = corner;
  const isReturn = run.walls[n - 1]?.isReturn === true || run.walls[n]?.isReturn === true;
  const label = `corner ${n}`;
  if (isReturn) book.put(`theta_${n}`, angle, `angle at ${label}, a return`, rule, 'degrees');
  else if (run.source === 'you') {
    book.putChoice('cornerAngles', `theta_${n}`, angle, `angle at ${label}, in the room`, 'you', 'degrees');
  } else book.put(`theta_${n}`, angle, `angle at ${label}, in the room`, run.source, 'degrees');
  if (outside === 'post' && angle >= postFrom && !isReturn) {
    book.work(`alpha_${n}`, `360 - theta_${n}`, `inside angle of the post at ${label}`, rule, 'degrees');
    book.work(
      `tangent_${n}`,
      `R/tand(alpha_${n}/2)`,
      `trim stops before the outer point of ${label} by`,
      rule,
    );
    book.work(`arc_${n}`, `R*radians(180 - alpha_${n})`, `round of the post at ${label}`, rule);
    book.work(
      `wood_${n}`,
      `R - (R - t)/sind(alpha_${n}/2)`,
      `wood of the post over the wall at ${label}`,
      rule,
    );
    return;
  }
  book.work(
    `set_${n}`,
    `abs(90 - theta_${n}/2)`,
    `saw off square at ${label}, standing trim`,
    rule,
    'degrees',
  );
  if (choices.tiltDegrees === 90) return;
  book.work(`A_${n}`, `180 - theta_${n}`, `turn at ${label}`, rule, 'degrees');
  book.work(
    `X_${n}`,
    `atand(cosd(B)*tand(A_${n}/2))`,
    `mitre at ${label}, trim flat on the saw`,
    rule,
    'degrees',
  );
  book.work(
    `Y_${n}`,
    `asind(sind(B)*sind(A_${n}/2))`,
    `bevel at ${label}, trim flat on the saw`,
    rule,
    'degrees',
  );
}

/** Lengths of the trim on a wall, at its back, at its front and over its points; answers of how many pieces it is made. */
function sizeWall({
  choices,
  book,
  ends,
  i,
}: {
  readonly choices: TrimChoices;
  readonly book: WorkingBook;
  readonly ends: { readonly left: TrimEnd; readonly right: TrimEnd };
  readonly i: number;
}): number {
  const n = i + 1;
  const wall = choices.run.walls[i];
  const name = wall?.name ?? '';
  const length = wall?.length ?? 0;
  if (wall?.isReturn) book.put(`Lb_${n}`, 0, `${name}, at the wall`, rule);
  else if (choices.run.source === 'you') book.putChoice('wallLengths', `Lb_${n}`, length, name, 'you');
  else book.put(`Lb_${n}`, length, name, choices.run.source);
  const front = [ends.left, ends.right].map(frontTerm).join('');
  const over = [ends.left, ends.right].map(overTerm).join('');
  book.work(`Lf_${n}`, `Lb_${n}${front}`, `trim on ${name}, length of its front`, rule);
  const L = book.work(`L_${n}`, `Lb_${n}${over}`, `trim on ${name}, length over its points`, rule);
  const room = book.value('stick') - 20;
  if (L <= room || room <= 2 * book.value('t')) return 1;
  const count = book.work(
    `n_${n}`,
    `ceil((L_${n} - t)/(stick - 20 - t))`,
    `trim on ${name}, pieces`,
    rule,
    'count',
  );
  const rest = `(L_${n} + (n_${n} - 1)*t)/n_${n}`;
  book.work(`P_${n}`, rest, `trim on ${name}, each piece with its 45° scarf`, rule);
  return count;
}

function frontTerm({ kind, corner }: TrimEnd): string {
  if (kind === 'square') return '';
  const mitre = ` - D*cotd(theta_${corner}/2)`;
  return kind === 'mitre' ? mitre : `${mitre} - tangent_${corner}`;
}

function overTerm(end: TrimEnd): string {
  return end.kind === 'mitre' ? ` + max(0, -D*cotd(theta_${end.corner}/2))` : frontTerm(end);
}
