import type { BuiltPiece, JoinerySettings, Material, Part } from '#core/joinery';
import { findSpecies, plywoodMovement, unknownMovement } from '#core/materials';
import type { Problem } from '#core/problems';
import type { Project } from '#core/project';
import { markSize } from '#core/units';

import { stepId } from './task-names.ts';
import { listWords } from './words.ts';

/** Tools that fill a boat with dust or chips (joinery F12): knife, planes, drill with a cup are allowed. */
const dusty = ['saw', 'fine saw', 'jigsaw', 'hand saw', 'router', 'sander', 'sandpaper', 'abrasive paper'];
/** A cup the hand feels over the width of a part, mm (common practice, no source). */
const feltCup = 1;

/** What spoils a visit or a finish (joinery D1, F9 to F12, G): dust aboard, fixings not in the kit, faces coated unevenly. */
export function checkSite(project: Project, pieces: readonly BuiltPiece[]): readonly Problem[] {
  return pieces.flatMap((piece) => [
    ...findDust(piece),
    ...findMissingFixings(project, piece),
    ...findUnevenCoats(project, piece),
  ]);
}

/** Steps aboard that are done with a tool that makes dust. */
function findDust(piece: BuiltPiece): readonly Problem[] {
  return piece.steps.flatMap((step): readonly Problem[] => {
    const tools = (step.take ?? []).filter((tool) => dusty.includes(tool));
    if (step.place !== 'boat' || tools.length === 0) return [];
    return [
      {
        severity: 'warn',
        code: 'dust-aboard',
        about: piece.letter,
        message: `${piece.letter} ${piece.name}: "${firstClause(step.text)}" is done aboard with a ${listWords(tools)}, which makes dust there.`,
        remedy:
          'Mark it aboard and cut it ashore, if the visits allow; else over a bag, in the open, with all else covered.',
        source: 'joinery F12',
      },
    ];
  });
}

function firstClause(text: string): string {
  return text.split(/[.;:]/, 1)[0] ?? text;
}

/** Everything ashore is done, the next step is aboard, and the fixings are not bought. */
function findMissingFixings({ done }: Project, piece: BuiltPiece): readonly Problem[] {
  const isDone = (step: BuiltPiece['steps'][number]) => done.includes(stepId(piece, step));
  const left = piece.steps.filter((step) => !isDone(step));
  const next = left.filter((step) => step.after.every((id) => !left.some((other) => other.id === id)));
  const started = left.length < piece.steps.length;
  const aboard = next.length > 0 && next.every(({ place, parts }) => place === 'boat' && parts.length > 0);
  if (!started || !aboard || piece.fixings.length === 0 || done.includes('buy:fixings')) return [];
  const named = piece.fixings.slice(0, 4).map(({ item, quantity }) => `${quantity} × ${item}`);
  const more = piece.fixings.length - named.length;
  return [
    {
      severity: 'warn',
      code: 'fixings-not-in-kit',
      about: piece.letter,
      message: `${piece.letter} ${piece.name} goes aboard next, and its fixings are not bought: ${listWords(more > 0 ? [...named, `${more} kinds more`] : named)}.`,
      remedy:
        'Buy them and put them with the parts before the visit, then tick them off; without them it is lost.',
      source: 'joinery F11, G',
    },
  ];
}

/** Wide parts with more coats on one face than on the other: the barer one takes up moisture first, and the part cups. */
function findUnevenCoats({ settings, materials }: Project, piece: BuiltPiece): readonly Problem[] {
  const { coatsShown: shown, coatsHidden: hidden } = settings;
  if (shown === undefined || hidden === undefined || shown === hidden) return [];
  const cups = piece.parts.map((part) => ({ part, cup: cupOf(part, materials, settings) }));
  const worst = [...cups].sort((a, b) => b.cup - a.cup)[0];
  if (!worst || worst.cup < feltCup) return [];
  const others = cups.filter(({ cup }) => cup >= feltCup).length - 1;
  return [
    {
      severity: 'warn',
      code: 'coats-uneven',
      about: piece.letter,
      message: `${worst.part.id} ${worst.part.name}, ${markSize(worst.part.finished.width)} wide, gets ${shown} coats on one face and ${hidden} on the other: it may cup by up to ${markSize(worst.cup)}${others > 0 ? `, and ${others} other ${others === 1 ? 'part' : 'parts'} likewise` : ''}.`,
      remedy: 'Give both faces and all edges the same number of coats.',
      source: 'joinery F10, G',
    },
  ];
}

/**
 * The most a part cups across its grain, mm, when one face follows the air aboard from the least to the most moisture and the
 * other not at all: curvature C ΔMC / T over half the width (joinery D1, as a bimetal strip; an upper limit).
 */
function cupOf(part: Part, materials: readonly Material[], settings: JoinerySettings): number {
  const material = materials.find(({ id }) => id === part.material);
  const species = material?.kind === 'solid' && material.species ? findSpecies(material.species) : null;
  const movement = part.kind === 'sheet' ? plywoodMovement : (species?.tangential ?? unknownMovement);
  const range = settings.moistureHigh - settings.moistureLow;
  return (part.finished.width ** 2 * movement * range) / (8 * part.finished.thickness);
}
