import { markSize } from '#core/units';
import { rectangleOutline, type Point } from '#core/geometry';
import { layFlat, rightwards, upwards, type Plane } from '../flat/lay-flat.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part } from '../types.ts';
import type { EdgeStrip, FiddleRun } from './edges.ts';
import type { Cutout } from './cutouts.ts';
import type { TopLayout } from './sizes.ts';

type Draft = Omit<PartDraft, 'number'>;
const backwards = { x: 0, y: 0, z: -1 };
const down = { x: 0, y: -1, z: 0 };

/** The plane of the top as seen from above, its level above the underside. */
const levelPlane = (y: number): Plane => ({
  origin: { x: 0, y, z: 0 },
  right: { x: 1, y: 0, z: 0 },
  up: backwards,
});

/**
 * The parts of a countertop. Frame of the piece: x along the front from the lower left of the top, y = 0 at its underside,
 * z to the viewer, z = 0 at its foremost edge.
 */
export function topParts(piece: Piece, layout: TopLayout): readonly Part[] {
  const drafts = [
    coreDraft(layout),
    ...layout.strips.map((strip) => stripDraft(layout, strip)),
    ...layout.fiddles.map((run) => fiddleDraft(layout, run)),
    ...layout.cutouts.flatMap((cutout) => doublerDrafts(layout, cutout)),
  ];
  return drafts.map((draft, i) => makePart(piece, { ...draft, number: i + 1 }));
}

function coreDraft({ book, choices, core, cutouts, strips }: TopLayout): Draft {
  const laid = layFlat(core, rightwards, levelPlane(book.value('T')));
  return {
    name: strips.length > 0 ? 'Top, core' : 'Top',
    material: choices.stock.top,
    flat: true,
    finished: { length: book.value('core_W'), width: book.value('core_D'), thickness: book.value('T') },
    working: { length: 'core_W', width: 'core_D', thickness: 'T' },
    outline: laid.outline,
    holes: cutouts.map(({ outline }) => laid.toPart(outline)),
    faceSide: 'face side up, far edge to the front',
    edges: strips.length > 0 ? [{ edge: 'far-edge', treatment: 'lipped', amount: choices.lipping }] : [],
    placements: [laid.placement],
    notes: [
      'Grain along the front.',
      ...(cutouts.length > 0
        ? ['Cut-outs last, from the template of the appliance; seal their edges with epoxy.']
        : []),
    ],
  };
}

function stripDraft({ book, choices }: TopLayout, strip: EdgeStrip): Draft {
  const laid = layFlat(strip.outline, strip.along, levelPlane(book.value('T')));
  const finished = {
    length: book.value(`${strip.name}_L`),
    width: book.value(`${strip.name}_W`),
    thickness: book.value('T'),
  };
  const blank = {
    length: finished.length + 20,
    width: finished.width + 0.5,
    thickness: finished.thickness + 2,
  };
  return {
    name: strip.title,
    material: choices.stock.lipping,
    finished,
    ...(strip.kind === 'side' && { cut: blank, rough: blank }),
    working: { length: `${strip.name}_L`, width: `${strip.name}_W`, thickness: 'T' },
    outline: laid.outline,
    faceSide: 'face side up',
    placements: [laid.placement],
    notes: [
      strip.kind === 'corner'
        ? 'Sawn from the solid, its grain along the chord; flushed and rounded with the top.'
        : `${markSize(20)} long, ${markSize(0.5)} wide and ${markSize(1)} proud of each face: trimmed and flushed when the glue is hard.`,
    ],
  };
}

function fiddleDraft({ book, choices }: TopLayout, { name, side, start, along }: FiddleRun): Draft {
  const axis = { x: along.x, y: 0, z: -along.y };
  return {
    name: `Fiddle, side ${side + 1}`,
    material: choices.stock.lipping,
    finished: { length: book.value(`${name}_L`), width: book.value('f'), thickness: book.value('tf') },
    working: { length: `${name}_L`, width: 'f', thickness: 'tf' },
    faceSide: 'face side outwards, face edge up',
    edges: [{ edge: 'face-edge', treatment: 'rounded', amount: 4 }],
    placements: [placeAt({ x: start.x, y: book.value('T') + book.value('f'), z: -start.y }, axis, down)],
  };
}

function doublerDrafts({ book, choices }: TopLayout, { number, doublers }: Cutout): readonly Draft[] {
  const names = [...new Set(doublers.map(({ name }) => name))];
  return names.map((name) => {
    const alike = doublers.filter((one) => one.name === name);
    const along: Point = name.startsWith('double_x') ? rightwards : upwards;
    return {
      name: `Doubler, cut-out ${number}, ${alike.map(({ title }) => title).join(' and ')}`,
      material: choices.stock.doubler,
      finished: {
        length: book.value(name),
        width: book.value(`double_W_${number}`),
        thickness: book.value('Td'),
      },
      working: { length: name, width: `double_W_${number}`, thickness: 'Td' },
      grain: 'any',
      turn: true,
      faceSide: 'face side up, glued under the top',
      placements: alike.map(
        ({ at, size }) => layFlat(rectangleOutline(size.x, size.y, at), along, levelPlane(0)).placement,
      ),
    };
  });
}
