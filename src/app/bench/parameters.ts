import {
  kindWords,
  parametersOf,
  type Material,
  type ParameterInfo,
  type Piece,
  type PieceKind,
} from '#core/joinery';
import type { Problem } from '#core/problems';
import type { ParameterValue } from '#core/project';
import { formatLength, formatNumber, type LengthSystem } from '#core/units';

/** Parameters under one heading, in the order to ask them. */
export interface ParameterGroup {
  readonly name: string;
  readonly parameters: readonly ParameterInfo[];
}

export function groupParameters(parameters: readonly ParameterInfo[]): readonly ParameterGroup[] {
  const names = [...new Set(parameters.map((each) => each.group))];
  return names.map((name) => ({ name, parameters: parameters.filter((each) => each.group === name) }));
}

/** What the user gave for a parameter; undefined when it stands at its default. */
export function givenValue(piece: Piece, key: string): ParameterValue | undefined {
  const [first = '', second] = key.split('.');
  const values = piece.parameters as unknown as Readonly<Record<string, unknown>>;
  const found = second === undefined ? values[first] : (values[first] as Record<string, unknown>)[second];
  return found as ParameterValue | undefined;
}

/** How many parameters of a group were changed from their default. */
export function countChanged(piece: Piece, group: ParameterGroup): number {
  return group.parameters.filter((info) => isChanged(piece, info)).length;
}

/** Whether the user gave something else than the default. What has no default is not counted. */
export function isChanged(piece: Piece, info: ParameterInfo): boolean {
  const given = givenValue(piece, info.key);
  return given !== undefined && info.default !== undefined && given !== info.default;
}

/** Default and limits in a few words, as `default 5, from 3 to 10 mm`. */
export function limitWords(info: ParameterInfo, system: LengthSystem): string {
  const parts = [defaultWords(info, system), rangeWords(info, system)].filter((words) => words !== '');
  return parts.join(', ');
}

function defaultWords(info: ParameterInfo, system: LengthSystem): string {
  if (info.default === undefined || typeof info.default === 'string') return '';
  if (typeof info.default === 'boolean') return `usually ${info.default ? 'yes' : 'no'}`;
  return `usually ${showNumber(info, info.default, system)}`;
}

function rangeWords(info: ParameterInfo, system: LengthSystem): string {
  const unit = info.type === 'length' || info.type === 'lengths' ? (system === 'mm' ? ' mm' : ' in') : '';
  const low = info.min === undefined ? null : showNumber(info, info.min, system);
  const high = info.max === undefined ? null : showNumber(info, info.max, system);
  if (low !== null && high !== null) return `${low} to ${high}${unit}`;
  if (low !== null) return `at least ${low}${unit}`;
  return high === null ? '' : `at most ${high}${unit}`;
}

/** The default as the field shows it while nothing is given. */
export function defaultText(info: ParameterInfo, system: LengthSystem): string {
  return typeof info.default === 'number' ? showNumber(info, info.default, system) : '';
}

function showNumber(info: ParameterInfo, value: number, system: LengthSystem): string {
  const isLength = info.type === 'length' || info.type === 'lengths';
  return isLength ? formatLength(value, { system }) : formatNumber(value, 3);
}

/** The materials a parameter takes, as choices; with an empty first one when it may be left out. */
export function materialChoices(
  info: ParameterInfo,
  materials: readonly Material[],
): readonly { readonly value: string; readonly label: string }[] {
  const wanted = info.materialKind ?? 'either';
  const fitting = materials.filter((material) => wanted === 'either' || material.kind === wanted);
  const choices = fitting.map((material) => ({ value: material.id, label: material.name }));
  return info.required ? choices : [{ value: '', label: 'Not given' }, ...choices];
}

/** The pieces a parameter can name, as choices, and none. */
export function pieceChoices(
  info: ParameterInfo,
  pieces: readonly Piece[],
): readonly { readonly value: string; readonly label: string }[] {
  const wanted = [info.pieceKind ?? []].flat();
  const fitting = pieces.filter((piece) => wanted.includes(piece.kind));
  return [
    { value: '', label: 'None: sizes below' },
    ...fitting.map(({ id, letter, name }) => ({ value: id, label: `${letter} ${name}` })),
  ];
}

/** Said when a new piece finds nothing on the rack that a part of it can be made of: of which part, and of what. */
export function nothingFits(kind: PieceKind, materials: readonly Material[]): Problem {
  const missing = parametersOf(kind).filter(
    (info) => info.type === 'material' && info.required && materialChoices(info, materials).length === 0,
  );
  const wanted = Object.entries(materialWords).flatMap(([material, words]) => {
    const parts = missing.filter(({ materialKind = 'either' }) => materialKind === material);
    return parts.length === 0 ? [] : [`${words} (${parts.map(({ label }) => label).join('; ')})`];
  });
  return {
    severity: 'stop',
    code: 'no-fitting-material',
    message: `${kindWords(kind).name}: the rack has nothing yet to make it of. It wants ${wanted.join(' and ')}.`,
    remedy: 'Add that material on the rack first, then the piece.',
  };
}

const materialWords = { solid: 'solid timber', sheet: 'a sheet', either: 'a sheet or solid timber' } as const;
