import { coatedArea, coatsFor, finishLitres, type Coats } from '#core/finishing';
import type { BuiltPiece } from '#core/joinery';
import { coatingOf, type Coating } from '#core/materials';
import type { Project } from '#core/project';
import { formatNumber } from '#core/units';

import { listWords, showSizeIn } from './words.ts';

/** Something bought that no part and no fixing says: the finish, and what is used up in fitting. */
export interface Sundry {
  readonly item: string;
  readonly count: number;
  readonly use: string;
}

/** Tins are commonly this large, litres (common practice, no source). */
const tin = 0.75;

/** Varnish for all parts by area, coats and spread; touch-up and spacers where the steps of a piece take them. */
export function listSundries(project: Project, pieces: readonly BuiltPiece[]): readonly Sundry[] {
  return [...listFinish(project, pieces), ...listTouchUp(pieces), ...listSpacers(project, pieces)];
}

function listFinish({ settings }: Project, pieces: readonly BuiltPiece[]): readonly Sundry[] {
  const coating = coatingOf(settings.finish);
  const usual = coatsFor(settings.film, coating);
  const coats = { shown: settings.coatsShown ?? usual, hidden: settings.coatsHidden ?? usual };
  const wanted = pieces
    .map((piece) => ({ letter: piece.letter, ...finishOf(piece, coats, coating) }))
    .filter(({ litres }) => litres > 0);
  const litres = wanted.reduce((sum, each) => sum + each.litres, 0);
  if (litres <= 0) return [];
  const each = wanted.map((one) => `${one.letter} ${formatNumber(one.litres, 2)} l`).join(', ');
  const area = formatNumber(
    wanted.reduce((sum, one) => sum + one.m2, 0),
    1,
  );
  return [
    {
      item: `${coating.name}, tin of ${tin} l`,
      count: Math.ceil(litres / tin - 1e-9),
      use: `${each}: ${describeCoats(coats)} on ${area} m² in all, 1 l to ${coating.spreadM2} m², the first coat half as much again`,
    },
  ];
}

function finishOf(
  { parts }: BuiltPiece,
  coats: Coats,
  coating: Coating,
): { readonly litres: number; readonly m2: number } {
  const area = coatedArea(
    parts
      .filter(({ spare }) => spare === undefined)
      .map(({ outline, holes, finished, quantity }) => ({
        ...{ outline, holes, thickness: finished.thickness, count: quantity },
      })),
  );
  const m2 = (coats.shown > 0 ? area.shown : 0) + (coats.hidden > 0 ? area.hidden : 0);
  return { litres: finishLitres(area, coats, coating), m2 };
}

function describeCoats({ shown, hidden }: Coats): string {
  return shown === hidden ? `${shown} coats` : `${shown} coats where it shows and ${hidden} where not`;
}

function takers(pieces: readonly BuiltPiece[], thing: RegExp): readonly BuiltPiece[] {
  return pieces.filter(({ steps }) => steps.some(({ take = [] }) => take.some((each) => thing.test(each))));
}

function listTouchUp(pieces: readonly BuiltPiece[]): readonly Sundry[] {
  const letters = takers(pieces, /^touch-up/).map(({ letter }) => letter);
  if (letters.length === 0) return [];
  return [
    {
      item: 'Touch-up finish, small pot',
      count: 1,
      use: `${listWords(letters)}: edges planed aboard and filled screw holes; some of the finish itself will do`,
    },
  ];
}

/** Spacers at each corner of what hangs or slides between gaps. */
const spacersEach = 4;
const gapParameters = ['gapSide', 'gap', 'gapTop', 'gapBottom', 'frontGap'];

/** Spacers as thick as the gaps they keep; one set for each thickness, as they are used piece after piece. */
function listSpacers({ units }: Project, pieces: readonly BuiltPiece[]): readonly Sundry[] {
  const byGap = new Map<string, string[]>();
  for (const { letter, working } of takers(pieces, /^spacers/)) {
    const gap = gapParameters
      .flatMap((key) => working.filter(({ parameter }) => parameter === key))
      .find(({ value }) => value > 0)?.value;
    const size = gap === undefined ? 'as thick as the gap' : showSizeIn(units, gap);
    byGap.set(size, [...(byGap.get(size) ?? []), letter]);
  }
  const unit = units === 'mm' ? 'mm' : 'in';
  return [...byGap].map(([size, letters]) => ({
    item: /\d/.test(size) ? `Spacers ${size} ${unit} thick` : `Spacers ${size}`,
    count: spacersEach,
    use: `${listWords(letters)}: to set the gaps; strips of card or veneer, or ripped from an offcut`,
  }));
}
