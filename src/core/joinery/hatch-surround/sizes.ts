import type { GlueKind } from '#core/materials';
import type { Problem } from '#core/problems';
import { readSides } from '../flat/shape-sides.ts';
import { gluedWith } from '../glue.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { hatchSurroundParameters } from './parameters.ts';
import type { HatchSurroundParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

/** Every choice of a hatch surround with its default filled in. */
export type SurroundChoices = Required<Omit<HatchSurroundParameters, 'materials'>> & {
  readonly stock: { readonly ring: Material; readonly lining: Material };
  readonly given: ReadonlySet<string>;
  /** Name of the shape the aperture was read from; null when it was entered. */
  readonly from: string | null;
  readonly glue: GlueKind | undefined;
};

export interface SurroundLayout {
  readonly choices: SurroundChoices;
  readonly book: WorkingBook;
}

const rule = 'joinery B16';

/** Fills in the defaults of a surround and finds its aperture; a `stop` in `lacking` when there is none. */
export function chooseSurround(
  parameters: HatchSurroundParameters,
  context: BuildContext,
  name: string,
): {
  readonly choices: SurroundChoices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { values, given } = fillDefaults(parameters, hatchSurroundParameters);
  const form = values['form'] as SurroundChoices['form'];
  const wanted = form === 'one-piece' ? 'sheet' : 'either';
  const ring = findMaterial(context, parameters.materials.ring, { for: 'the ring', kind: wanted });
  const other = parameters.materials.lining ?? parameters.materials.ring;
  const lining = findMaterial(context, other, { for: 'the lining', kind: 'either' });
  const aperture = readAperture(parameters, context);
  const thickness =
    parameters.thickness ?? (ring.material.kind === 'sheet' ? ring.material.thickness : values['thickness']);
  const choices = {
    depths: [],
    ...values,
    ...aperture.size,
    // laps lengthen the segments: three of them keep the grain from running out (joinery B16)
    ...(!given.has('segments') && values['joint'] === 'half-lap' && { segments: 3 }),
    thickness,
    stock: { ring: ring.material, lining: lining.material },
    given,
    glue: gluedWith(context.settings),
    from: aperture.from,
  } as unknown as SurroundChoices;
  const size = aperture.size;
  const missing = size.width > 0 && size.height > 0 ? [] : [noAperture(name)];
  return {
    choices,
    findings: [...ring.findings, ...(parameters.materials.lining ? lining.findings : [])],
    lacking: aperture.problems.length > 0 ? aperture.problems : missing,
  };
}

/** The aperture at its narrowest: of the shape, or as entered. */
function readAperture({ width = 0, height = 0 }: HatchSurroundParameters, context: BuildContext) {
  const { shape, shapeName = 'the shape' } = context;
  if (!shape) return { size: { width, height }, from: null, problems: [] };
  const read = readSides(shape, shapeName);
  if (!read.ok) return { size: { width: 0, height: 0 }, from: shapeName, problems: read.problems };
  const [sill, right, head, left] = read.value;
  if (read.value.length !== 4 || !sill || !right || !head || !left) {
    return { size: { width: 0, height: 0 }, from: shapeName, problems: [notFourSided(shapeName)] };
  }
  const xs = (side: typeof left) => [side.from, side.to, ...side.between].map(({ x }) => x);
  const ys = (side: typeof left) => [side.from, side.to, ...side.between].map(({ y }) => y);
  const size = {
    width: Math.min(...xs(right)) - Math.max(...xs(left)),
    height: Math.min(...ys(head)) - Math.max(...ys(sill)),
  };
  return { size, from: shapeName, problems: [] };
}

function noAperture(name: string): Problem {
  return {
    severity: 'stop',
    code: 'aperture-missing',
    message: `${name} has no aperture yet.`,
    remedy: 'Fit it to a measured opening, or enter width and height of the aperture.',
    source: 'joinery A10, B16',
  };
}

function notFourSided(name: string): Problem {
  return {
    severity: 'stop',
    code: 'aperture-not-four-sided',
    about: name,
    message: `${name} has not four sides; a hatch surround goes round a rectangle with rounded corners.`,
    remedy: 'Take a free frame or a free panel with a cut-out.',
    source: rule,
  };
}

/** Works out the sizes of a hatch surround (joinery B16). */
export function workOutSurround(choices: SurroundChoices): SurroundLayout {
  const book = openWorkingBook();
  putIn(choices, book);
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  work('Ri', 'r + rv', 'radius of the inside of the ring');
  work('Ro', 'Ri + w', 'radius of the outside of the ring');
  work('ring_W', 'A + 2*rv + 2*w', 'ring, width outside');
  work('ring_H', 'B + 2*rv + 2*w', 'ring, height outside');
  work('straight_A', 'A - 2*r', 'straights, bottom and top, length');
  work('straight_B', 'B - 2*r', 'straights, left and right, length');
  if (choices.form === 'segments') sizeSegments(choices, book);
  const area = 'ring_W*ring_H - (4 - pi)*Ro**2 - ((A + 2*rv)*(B + 2*rv) - (4 - pi)*Ri**2)';
  book.work('ring_area', area, 'area of the ring, mm²', rule, 'ratio');
  book.work(
    'waste_share',
    '1 - ring_area/(ring_W*ring_H)',
    'share of a one-piece blank that is wasted',
    rule,
    'ratio',
  );
  if (choices.lining === 'solid') sizeLining(choices, book);
  return { choices, book };
}

function putIn(choices: SurroundChoices, book: WorkingBook): void {
  const { given, from, stock } = choices;
  const source = from === null ? 'you' : `shape ${from}, at its narrowest`;
  book.putChoice('width', 'A', choices.width, 'aperture, width', source);
  book.putChoice('height', 'B', choices.height, 'aperture, height', source);
  const table = { infos: hatchSurroundParameters, values: choices, given };
  putParameters(book, table, { cornerRadius: 'r', ringWidth: 'w', reveal: 'rv' });
  if (choices.form === 'segments')
    putParameters(book, table, {
      segments: 'k',
      ...(choices.joint === 'half-lap' ? { lapLength: 'lap' } : { tenonDepth: 'd' }),
    });
  const measured = stock.ring.kind === 'sheet' && !given.has('thickness');
  const origin = measured ? `measured: ${stock.ring.name}` : given.has('thickness') ? 'you' : rule;
  book.putChoice('thickness', 'T', choices.thickness, 'thickness of the ring', origin);
}

function sizeSegments(choices: SurroundChoices, book: WorkingBook): void {
  const work = (name: string, formula: string, label: string, source = rule) =>
    book.work(name, formula, label, source);
  book.work('alpha', '90/k', 'angle of a segment', rule, 'degrees');
  work('seg_W', 'Ro - Ri*cosd(alpha/2)', 'segment, width of its board');
  work('seg_L', '2*Ro*sind(alpha/2)', 'segment, length');
  if (choices.joint === 'half-lap') {
    book.work('lambda', 'degrees(lap/((Ri + Ro)/2))', 'angle of a lap', 'joinery C6', 'degrees');
    const name = 'grain runs out at the ends of a segment by';
    book.work('run_out', '(alpha + lambda)/2', name, rule, 'degrees');
    return;
  }
  book.work('run_out', 'alpha/2', 'grain runs out at the ends of a segment by', rule, 'degrees');
  const gap = gluedGap(choices.glue);
  book.put('gap', gap, 'gap on each glued face', 'joinery C');
  if (choices.joint === 'mitre-and-spline') {
    work('t', 'max(3, round(T/4))', 'spline, thickness', 'joinery C14');
    work('tenon_L', '2*d - 1', 'spline, width across the joint', 'joinery C14');
    work('tenon_W', 'sqrt(max(0, Ro**2 - d**2)) - Ri', 'spline, length along the joint');
    return;
  }
  work('t', 'round(T/3)', 'loose tenon, thickness', 'joinery C3');
  work('tenon_L', '2*d - 2', 'loose tenon, length across the joint', 'joinery C3');
  work('tenon_W', 'w - 2*10 - 1', 'loose tenon, along the joint', 'joinery C3');
}

function sizeLining(choices: SurroundChoices, book: WorkingBook): void {
  const work = (name: string, formula: string, label: string, source = rule) =>
    book.work(name, formula, label, source);
  const most = choices.depths.length > 0 ? Math.max(...choices.depths) : 0;
  book.putChoice(
    'depths',
    'depth_max',
    most,
    'depth through deck and lining, the largest',
    most > 0 ? 'you' : 'nothing entered',
  );
  const table = { infos: hatchSurroundParameters, values: choices, given: choices.given };
  putParameters(book, table, { liningThickness: 'tl' });
  work('Ld', 'depth_max + 2', 'lining, depth');
  work('ply_most', '(r - tl)/100', 'thickest ply that bends round the corner dry', 'joinery B17');
  work('plies', 'max(4, ceil(tl/ply_most))', 'plies in a bent corner', 'joinery B17');
  work('ply_T', 'tl/plies', 'ply, thickness', 'joinery B17');
  work('arc', 'radians(90)*r', 'bent corner, length round its outside');
  work('ply_L', 'arc + 50', 'ply, length of the blank', 'joinery B17');
}
