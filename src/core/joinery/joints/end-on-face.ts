import { formatNumber, markSize } from '#core/units';
import { unreachable } from '#core/problems';
import { makeRecess, type Range } from '../parts.ts';
import type { Fixing, Machining } from '../types.ts';
import type { Standing } from './case-joints.ts';
import { dowelTools, slotTools } from './end-joints.ts';
import type { EndOnFace } from './joint-kinds.ts';
import { workOutButt, workOutHousing } from './standing-joints.ts';
import { checkWall, figureOf, findings, gluedGap, nearestTool, type WorkedJoint } from './worked-joint.ts';

const show = markSize;

/** The choices of a joint of an end on a face as they are asked for. */
export const endOnFaceChoices: Readonly<Record<EndOnFace, string>> = {
  housing: 'Housing',
  butt: 'Butt, screwed through and glued',
  dowel: 'Dowels',
  'loose-tenon': 'Loose tenons',
};

/** What such a joint has to suit: how deep a housing is, whether the board that ends is a sheet, whether hard. */
export interface EndOnFaceWish {
  readonly kind: EndOnFace;
  readonly housing: number;
  readonly sheet: boolean;
  readonly hard?: boolean;
}

/** A joint of an end on a face: besides its cuts, what one of it takes of screws, dowels or tenons. */
export interface EndOnFaceJoint extends WorkedJoint {
  /** How far the end goes into the other. */
  readonly enters: number;
  readonly takes: readonly Fixing[];
}

/**
 * The end (X = L) of the male on the face (Z = 0) of the other, its face side towards X = 0: its middle lies half way along
 * the other, its width along Y from 0 (joinery C1, C2, C3, C7).
 */
export function workOutEndOnFace(standing: Standing, wish: EndOnFaceWish): EndOnFaceJoint {
  const at = standing.other.length / 2;
  switch (wish.kind) {
    case 'housing': {
      const joint = workOutHousing(standing, { at, depth: wish.housing });
      return { ...joint, enters: wish.housing, takes: [] };
    }
    case 'butt':
      return screwed(standing, wish, at);
    case 'dowel':
      return workOutFaceDowels(standing, at);
    case 'loose-tenon':
      return workOutFaceTenons(standing, at);
    default:
      return unreachable(wish.kind);
  }
}

/** Screws through the other into the end: in a sheet as thin as a quarter of it allows (joinery C1). */
function screwed(standing: Standing, wish: EndOnFaceWish, at: number): EndOnFaceJoint {
  const { male, other } = standing;
  const diameter = wish.sheet ? Math.max(3, Math.min(4, Math.floor(male.thickness / 2) / 2)) : 4;
  const grain = wish.sheet ? 'side' : 'end';
  const joint = workOutButt(standing, { at, diameter, grain, hard: wish.hard ?? true, sheet: wish.sheet });
  const length = Math.ceil(figureOf(joint, 'least length') / 5) * 5;
  return {
    ...joint,
    cuts: { ...joint.cuts, other: joint.cuts.other.map((hole) => within(hole, other.width)) },
    enters: 0,
    takes: [
      {
        item: `Screw ${formatNumber(diameter)} × ${length}, countersunk, stainless A4`,
        quantity: figureOf(joint, 'screws'),
        use: 'ends, through the uprights',
        source: 'joinery C1',
      },
    ],
  };
}

/** Keeps a screw on the board. */
function within(hole: Machining, width: number): Machining {
  return hole.kind === 'hole' ? { ...hole, y: Math.min(Math.max(hole.y, 0), width) } : hole;
}

const leastBehind = (thickness: number) => Math.max(5, thickness / 4); // joinery C0.2

/** Dowels between an end and a face (joinery C2): a third to half of the thinner, two thirds of the other deep at the most. */
export function workOutFaceDowels({ male, other }: Standing, at: number): EndOnFaceJoint {
  const thin = Math.min(male.thickness, other.thickness);
  const diameter = dowelTools.find((tool) => tool >= thin / 3) ?? 12;
  const free = other.thickness - leastBehind(other.thickness) - 1;
  const deep = Math.max(1, Math.min(2 * diameter, (2 / 3) * other.thickness, free));
  const depth = 2 * diameter;
  const first = Math.max(1.5 * diameter, Math.min(20, male.width / 4));
  const count = Math.max(2, Math.ceil((male.width - 2 * first) / 150) + 1);
  const pitch = (male.width - 2 * first) / (count - 1);
  const stations = Array.from({ length: count }, (_, i) => first + i * pitch);
  const hole = { kind: 'hole', diameter, note: 'dowel' } as const;
  return {
    cuts: {
      male: stations.map((e) => ({ ...hole, from: 'end', x: e, y: male.thickness / 2, depth: depth + 1 })),
      other: stations.map((e) => ({ ...hole, from: 'face', x: at, y: e, depth: deep + 1 })),
    },
    figures: [
      { name: 'diameter', value: diameter },
      { name: 'hole in the end, depth', value: depth + 1 },
      { name: 'hole in the face, depth', value: deep + 1 },
      { name: 'length of the dowel', value: depth + deep },
      { name: 'dowels', value: count, unit: 'count' },
    ],
    settings: [
      `Bore ${show(diameter)}, ${show(depth + 1)} deep in the end and ${show(deep + 1)} in the face, with a stop and a jig from the face side, ${count} in ${show(male.width)}, places within ${show(0.2)}; fluted dowels.`,
    ],
    findings: findings((say) => {
      checkWall(say, 'Beside the dowels', (male.thickness - diameter) / 2, male.thickness);
      if (deep < 1.5 * diameter)
        say('warn', 'dowel-short', {
          message: `Dowels of ${show(diameter)} go ${show(deep)} into a board ${show(other.thickness)} thick; ${show(1.5 * diameter)} is the least.`,
          remedy: 'Take thicker uprights, or a housing.',
          source: 'joinery C2',
        });
    }),
    enters: 0,
    takes: [
      {
        item: `Dowel ${formatNumber(diameter)} × ${formatNumber(Math.floor(depth + deep))}, fluted`,
        quantity: count,
        use: 'ends',
        source: 'joinery C2',
      },
    ],
  };
}

/** Loose tenons between an end and a face (joinery C3): one for each 150 of width, the slot in the face as deep as a wall allows. */
export function workOutFaceTenons({ male, other, glue }: Standing, at: number): EndOnFaceJoint {
  const gap = gluedGap(glue);
  const thickness = nearestTool(slotTools, male.thickness / 3);
  const reach = male.thickness <= 22 ? 25 : 40;
  const deep = Math.max(1, Math.min(reach, other.thickness - leastBehind(other.thickness)));
  const slots = slotsAcross(male.width, 8 * thickness);
  const half = thickness / 2 + gap;
  const [length, long] = [reach + deep - 2, slotLength(slots)];
  const pocket = (from: 'face' | 'end', x: Range, [y, z]: readonly [Range, Range]) =>
    makeRecess('mortise', from, { x, y, z }, 'for a loose tenon');
  const across: Range = [male.thickness / 2 - half, male.thickness / 2 + half];
  return {
    cuts: {
      male: slots.map((y) => pocket('end', [male.length - reach, male.length], [y, across])),
      other: slots.map((y) => pocket('face', [at - half, at + half], [y, [0, deep]])),
    },
    figures: [
      { name: 'slot thickness', value: 2 * half },
      { name: 'slot length', value: long },
      { name: 'slot in the end, depth', value: reach },
      { name: 'slot in the face, depth', value: deep },
      { name: 'tenon length', value: length },
      { name: 'tenon width', value: long - 1 },
      { name: 'tenons', value: slots.length, unit: 'count' },
    ],
    settings: [
      `Slots ${show(2 * half)} wide: ${show(reach)} deep in the end, ${show(deep)} in the face, ${show(long)} long, ${slots.length} in ${show(male.width)}; face side to the fence. Tenons ${show(thickness)} × ${show(long - 1)} × ${show(length)}, ends rounded.`,
    ],
    findings: findings((say) => {
      checkWall(say, 'Beside the slot', across[0], male.thickness);
      if (deep < 2 * thickness)
        say('warn', 'tenon-short', {
          message: `Loose tenons go ${show(deep)} into a board ${show(other.thickness)} thick; ${show(2 * thickness)} holds them.`,
          remedy: 'Take thicker uprights, or a housing.',
          source: 'joinery C3, C0.2',
        });
    }),
    enters: 0,
    takes: [tenonOf(slots.length, [thickness, long - 1, length])],
  };
}

function tenonOf(quantity: number, size: readonly number[]): Fixing {
  const item = `Loose tenon ${size.map((each) => formatNumber(each)).join(' × ')}, hardwood`;
  return { item, quantity, use: 'ends', source: 'joinery C3' };
}

/** Slots across a width, 10 from its edges, one for each 150. */
function slotsAcross(width: number, longest: number): readonly Range[] {
  const length = Math.max(1, Math.min(width - 20, longest));
  const free = width - 20 - length;
  const count = free < length + 20 ? 1 : Math.ceil(free / 150) + 1;
  const first = count === 1 ? 10 + free / 2 : 10;
  const pitch = count === 1 ? 0 : free / (count - 1);
  return Array.from({ length: count }, (_, i): Range => [first + i * pitch, first + i * pitch + length]);
}

const slotLength = (slots: readonly Range[]): number => (slots[0] ? slots[0][1] - slots[0][0] : 0);
