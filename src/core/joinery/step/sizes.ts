import { markSize } from '#core/units';
import type { GlueKind } from '#core/materials';
import type { Problem } from '#core/problems';
import { gluedWith } from '../glue.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { stepParameters } from './parameters.ts';
import type { StepParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

/** Every choice of a step with its default filled in. */
export type StepChoices = Required<Omit<StepParameters, 'materials' | 'between'>> &
  Pick<StepParameters, 'between'> & {
    readonly stock: { readonly sides: Material; readonly treads: Material };
    readonly sideThickness: number;
    readonly glue: GlueKind | undefined;
    readonly given: ReadonlySet<string>;
  };

export interface StepLayout {
  readonly choices: StepChoices;
  readonly book: WorkingBook;
}

const rule = 'joinery B13';
const usualThickness = 18;

/** Fills in the defaults of a step. */
export function chooseStep(
  parameters: StepParameters,
  context: BuildContext,
): { readonly choices: StepChoices; readonly findings: readonly Problem[] } {
  const { values, given } = fillDefaults(parameters, stepParameters);
  const sides = findMaterial(context, parameters.materials.sides, { for: 'the sides', kind: 'either' });
  const treads = findMaterial(context, parameters.materials.treads, { for: 'the treads', kind: 'either' });
  const measured = (material: Material) => (material.kind === 'sheet' ? material.thickness : usualThickness);
  const choices = {
    ...(values as unknown as StepChoices),
    treadThickness: parameters.treadThickness ?? measured(treads.material),
    sideThickness: measured(sides.material),
    stock: { sides: sides.material, treads: treads.material },
    glue: gluedWith(context.settings),
    given,
  };
  return { choices, findings: [...sides.findings, ...treads.findings] };
}

/** Works out a companion or box step (joinery B13). */
export function workOutStep(choices: StepChoices): StepLayout {
  const book = openWorkingBook();
  putIn(choices, book);
  book.work('n', 'ceil(Ht/riser_most)', 'risers from sole to landing', rule, 'count');
  book.work('riser', 'Ht/n', 'riser', rule);
  book.work('slope', 'atand(riser/going)', 'slope of the way up', rule, 'degrees');
  if (choices.form === 'box') sizeBox(choices, book);
  else sizeFlight(book);
  return { choices, book };
}

function putIn(choices: StepChoices, book: WorkingBook): void {
  const { given, stock } = choices;
  const table = { infos: stepParameters, values: choices, given };
  putParameters(book, table, {
    ...{ totalRise: 'Ht', mostRiser: 'riser_most', going: 'going', width: 'W', treadDepth: 'depth' },
  });
  putParameters(book, table, { soleSlopeDegrees: 'fall' }, 'degrees');
  const measured = (material: Material) =>
    material.kind === 'sheet' ? `measured: ${material.name}` : 'common practice, no source';
  book.put('T', choices.sideThickness, 'sides and risers, thickness', measured(stock.sides));
  const origin = given.has('treadThickness') ? 'you' : measured(stock.treads);
  book.putChoice('treadThickness', 'tt', choices.treadThickness, 'treads, thickness', origin);
  const housed = choices.joint === 'housing' || choices.joint === 'rebate';
  const how = housed ? rule : `joinery C, ${choices.joint.replace('-', ' ')}`;
  book.put('house', housed ? 6 : 0, 'treads go into the sides by', how);
  if (choices.joint === 'rebate') book.work('house_r', 'T/2', 'risers go into the sides by', 'joinery C8');
  else book.work('house_r', 'house', 'risers go into the sides by', rule);
  book.put('S', 5, 'left on each foot to scribe', 'joinery A11');
}

function sizeBox(choices: StepChoices, book: WorkingBook): void {
  const table = { infos: stepParameters, values: choices, given: choices.given };
  putParameters(book, table, { overhang: 'over', kickHeight: 'kick_h', kickDepth: 'kick_d' });
  putParameters(book, table, { boxRisers: 'k' }, 'count');
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  work('side_h', 'riser*k - tt', 'side on the higher foot, height');
  work('top_d', 'depth - over', 'side under the top tread, depth');
  work('side_d', 'top_d + (k - 1)*going', 'side, depth');
  work('inner_W', 'W - 2*over - 2*T', 'between the sides');
  work('foot_diff', '(W - 2*over)*tand(fall)', 'the lower foot is longer by');
  work('side_h_low', 'side_h + foot_diff', 'side on the lower foot, height');
  work('side_cut_h', 'side_h + foot_diff + S', 'both sides as cut, height');
  work('top_tread_L', 'inner_W + 2*T + 2*over', 'top tread, length');
  work('riser_board_L', 'inner_W + 2*house_r', 'risers and kick, length');
  work('low_tread_L', 'inner_W + 2*house', 'lower treads, length');
  work('low_tread_d', 'over + going + T', 'lower treads, depth');
  // its ends are inside the outer faces of the sides, between which the fall is reckoned
  work('kick_board_h', 'kick_h + foot_diff - (T - house_r)*tand(fall)', 'kick, height at its lower end');
  work('riser_1_h', 'riser - tt - kick_h', 'lowest riser board, height');
  work('riser_h', 'riser - tt', 'other riser boards, height');
  book.put('upstand', 15, 'sides stand above a lower tread by', 'joinery B1.10');
}

function sizeFlight(book: WorkingBook): void {
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  work('treads', 'n - 1', 'treads below the landing');
  work('inner_W', 'W - 2*T', 'between the strings');
  work('tread_L', 'inner_W + 2*house', 'treads, length');
  work(
    'string_W',
    'depth*sind(slope) + tt*cosd(slope) + 2*15',
    `string, width: ${markSize(15)} of wood beyond each housing`,
  );
  work('run', '(n - 2)*going + depth + 15', 'room it takes, front to back');
  work('foot_diff', 'W*tand(fall)', 'the lower foot is longer by');
}
