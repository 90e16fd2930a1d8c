import type { Problem } from '#core/problems';
import { readFrame } from './frame.ts';
import type { HungChoices } from './hung-choices.ts';
import { doorOfCell, readCell } from '../front-cell.ts';
import { isRebated, sizeBolts, sizeLap, sizeLeaf, widthName } from './pair.ts';
import { sizeSwing } from './sizes.ts';
import type { HungDoorParameters } from './types.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import type { JoinerySettings, ParameterInfo } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';
import type { WorkingBook } from '../working.ts';

/** Fills in the defaults of a hung door, size and gaps from its frame when it has one; `lacking` when there is no size. */
export function chooseHung<Choices extends HungChoices>(
  parameters: HungDoorParameters,
  infos: readonly ParameterInfo[],
  context: BuildContext,
): {
  readonly choices: Choices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { values, given } = fillDefaults(parameters, infos);
  const { frame, findings: unread } = readFrame(parameters.frame, context, values);
  const { cell, findings: unknown } = readCell(parameters, context);
  const findings = [...unread, ...unknown];
  const ofCell = Object.entries(cell ? doorOfCell(cell) : {}).filter(([key]) => !given.has(key));
  const choices = {
    width: 0,
    height: 0,
    ...values,
    ...Object.fromEntries(ofCell),
    ...(frame && frame.sizes),
    frame,
    cell,
    given,
  } as unknown as Choices;
  return { choices, findings, lacking: lackSize(parameters, choices, findings.length > 0) };
}

function lackSize(
  { frame }: HungDoorParameters,
  { width, height }: HungChoices,
  told: boolean,
): readonly Problem[] {
  if (width > 0 && height > 0) return [];
  const lacking = [...(width > 0 ? [] : ['width']), ...(height > 0 ? [] : ['height'])].join(' and ');
  return [
    {
      severity: 'stop',
      code: 'door-size-missing',
      message: `The door ${frame === undefined || !told ? 'hangs in no frame of this project' : 'gets no size from its frame'}, and no ${lacking} has been entered.`,
      remedy: 'Choose the door frame it hangs in, or enter the clear size less the gaps.',
      source: 'joinery B1, B2',
    },
  ];
}

const fromFrame: Readonly<Record<string, string>> = {
  width: 'Wd',
  height: 'Hd',
  gapSide: 'gs',
  gapTop: 'gt',
  gapBottom: 'gb',
};

/** Puts in size, gaps, thickness, bevel and pivot of a hung door, and works out what it needs to swing. */
export function putHung(
  book: WorkingBook,
  choices: HungChoices,
  infos: readonly ParameterInfo[],
  settings: JoinerySettings,
): void {
  const { frame, given } = choices;
  const from = { infos, values: choices, given };
  if (frame) {
    const origin = `frame ${frame.built.letter}, ${frame.built.name}`;
    for (const [key, name] of Object.entries(namesFor(choices))) {
      if (!(key in frame.sizes)) {
        putParameters(book, from, { [key]: name });
        continue;
      }
      const label = infos.find((info) => info.key === key)?.label.toLowerCase() ?? key;
      book.putChoice('frame', name, choices[key as keyof HungSizes], label, origin);
    }
  } else putFromCell(book, choices, infos);
  sizeLeaf(book, choices, infos);
  putParameters(book, from, { thickness: 'T', pivotBeyond: 'e', pivotProud: 'k' });
  if (hasBevel(choices)) putParameters(book, from, { bevelDegrees: 'beta' }, 'degrees');
  else
    book.put(
      'beta',
      0,
      'bevel of the leading edge: square where it meets the other',
      'common practice, no source',
      'degrees',
    );
  book.put('f_v', settings.film, 'finish film, each face', 'setting');
  sizeLap(book, choices);
  book.work('back_W', 'Wd - T*tand(beta)', 'door width at the back of the bevelled edge', 'joinery B2');
  sizeSwing(book);
  sizeBolts(book, choices);
}

type HungSizes = Pick<HungChoices, 'width' | 'height' | 'gapSide' | 'gapTop' | 'gapBottom'>;

/** Whether the leading edge is bevelled: not where it is rebated, nor of the door that is bolted. */
export const hasBevel = (choices: Pick<HungChoices, 'leaf' | 'meeting'>): boolean =>
  choices.leaf !== 'second' && !isRebated(choices);

/** The names of size and gaps in the working. */
export const namesFor = ({ leaf }: Pick<HungChoices, 'leaf'>): Readonly<Record<string, string>> => ({
  ...fromFrame,
  width: widthName({ leaf }),
});

/** Size and gaps of a door that hangs in no door frame: those of its opening in a front unless entered. */
function putFromCell(book: WorkingBook, choices: HungChoices, infos: readonly ParameterInfo[]): void {
  const { cell, given } = choices;
  const ofCell = cell ? doorOfCell(cell) : {};
  for (const [key, name] of Object.entries(namesFor(choices))) {
    if (!cell || given.has(key) || !(key in ofCell)) {
      putParameters(book, { infos, values: choices, given }, { [key]: name });
      continue;
    }
    const label = infos.find((info) => info.key === key)?.label.toLowerCase() ?? key;
    const origin = `front ${cell.built.letter}, ${cell.built.name}`;
    book.putChoice('cabinetFront', name, ofCell[key] ?? 0, label, origin);
  }
}

interface AnyPiece {
  readonly kind: string;
  readonly id: string;
  readonly parameters: object;
}

/**
 * Where a new door is to hang: beside the first of two doors whose other one is missing, else in the first door frame that
 * no door hangs in; null when there is no such place.
 */
export function placeNewDoor(
  pieces: readonly AnyPiece[],
): Pick<HungDoorParameters, 'frame' | 'leaf' | 'hinged' | 'meeting' | 'meetingGap' | 'meetingRebate'> | null {
  const all = pieces.map(({ parameters }) => parameters as HungDoorParameters);
  const alone = all.find(
    ({ frame, leaf }) =>
      frame !== undefined && leaf === 'first' && all.filter((one) => one.frame === frame).length === 1,
  );
  if (alone?.frame !== undefined) {
    const { frame, hinged, meeting, meetingGap, meetingRebate } = alone;
    return {
      frame,
      leaf: 'second',
      hinged: hinged === 'right' ? 'left' : 'right',
      ...(meeting && { meeting }),
      ...(meetingGap !== undefined && { meetingGap }),
      ...(meetingRebate !== undefined && { meetingRebate }),
    };
  }
  const taken = all.map(({ frame }) => frame);
  const free = pieces.find(({ kind, id }) => kind === 'door-frame' && !taken.includes(id));
  return free ? { frame: free.id } : null;
}
