import { distanceBetween } from '#core/geometry';
import type { Problem } from '#core/problems';
import { checkHead, refuseHead } from './checks.ts';
import { curvedHeadFixings, curvedHeadJoints, curvedHeadSteps } from './lists.ts';
import { curvedHeadParameters } from './parameters.ts';
import { curvedHeadParts } from './parts.ts';
import { workOutHead, type HeadChoices } from './sizes.ts';
import { gluedWith } from '../glue.ts';
import { fillDefaults } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import { readOpening } from '../survey-fit.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type CurvedHead = Extract<Piece, { kind: 'curved-head' }>;

/** A curved door head, laminated with its mould or sawn (joinery B17). Frame of the piece as in `curvedHeadParts`. */
export function buildCurvedHead(piece: CurvedHead, context: BuildContext): BuiltPiece {
  const { choices, found, lacking } = choose(piece, context);
  return buildFrom({
    piece,
    what: 'head',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the door',
    table: curvedHeadParameters,
    found,
    lacking,
    workOut: () => workOutHead(choices),
    positive: { names: mustBePositive, source: 'joinery B17' },
    refuse: refuseHead,
    parts: (layout) => curvedHeadParts(piece, layout),
    finish: (layout, parts) => ({
      joints: curvedHeadJoints(layout, parts),
      fixings: curvedHeadFixings(layout),
      steps: curvedHeadSteps(layout, parts),
      findings: checkHead(layout, context.settings),
    }),
  });
}

const mustBePositive = [
  'R',
  'S',
  'Rm',
  'mould_chord',
  'mould_L',
  'mould_W',
  'seg_L',
  'seg_W',
  'tenon_b',
  'tenon_W',
  'tenon_L',
  'e_s',
  'jamb_L',
];

function choose(piece: CurvedHead, context: BuildContext) {
  const { parameters } = piece;
  const { values, given } = fillDefaults(parameters, curvedHeadParameters);
  const laminated = (parameters.method ?? 'laminated') === 'laminated';
  const head = findMaterial(context, parameters.materials.head, { for: 'the head', kind: 'solid' });
  const mould = findMaterial(context, parameters.materials.mould, { for: 'the mould', kind: 'sheet' });
  const entered = parameters.span !== undefined && parameters.rise !== undefined;
  const measured = entered ? null : measureHead(context);
  const choices = {
    span: 0,
    rise: 0,
    ...measured?.sizes,
    ...values,
    measured: measured?.sizes ? `shape ${context.shapeName ?? ''}` : null,
    given,
    glue: gluedWith(context.settings),
    stock: { head: head.material, mould: mould.material },
  } as unknown as HeadChoices;
  const known = choices.span > 0 && choices.rise > 0;
  return {
    choices,
    found: [...head.findings, ...(laminated ? mould.findings : [])],
    lacking: known ? [] : (measured?.problems ?? lackSize(piece, choices)),
  };
}

/** Span and rise of the head of a measured opening: its corners and its bow. */
function measureHead({ shape, shapeName }: BuildContext) {
  if (!shape) return null;
  const opening = readOpening(shape, shapeName ?? 'The shape');
  if (!opening.ok) return { sizes: null, problems: opening.problems };
  const { corners, bow } = opening.value;
  return {
    sizes: { span: distanceBetween(corners.TL, corners.TR), rise: Math.max(0, bow.head) },
    problems: null,
  };
}

function lackSize({ name }: CurvedHead, { span, rise }: HeadChoices): readonly Problem[] {
  const lacking = [...(span > 0 ? [] : ['span']), ...(rise > 0 ? [] : ['rise'])].join(' and ');
  return [
    {
      severity: 'stop',
      code: 'head-size-missing',
      message: `${name}: its ${lacking} ${lacking.includes('and') ? 'are' : 'is'} neither measured nor entered.`,
      remedy: 'Enter span and rise, or choose a measured opening whose head is bowed outwards.',
      source: 'joinery B17',
    },
  ];
}

/** A curved head with the trade's defaults and a usual size. */
export function newCurvedHead(start: NewPiece): Piece {
  const solid = start.materials.find((material) => material.kind === 'solid') ?? start.materials[0];
  const sheets = start.materials.flatMap((material) => (material.kind === 'sheet' ? [material] : []));
  const mould = [...sheets].sort((one, other) => other.thickness - one.thickness)[0] ?? start.materials[0];
  return {
    kind: 'curved-head',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: { span: 540, rise: 60, materials: { head: solid?.id ?? '', mould: mould?.id ?? '' } },
  };
}
