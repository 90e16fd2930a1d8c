import { formatNumber, markSize } from '#core/units';
import type { Outline } from '#core/geometry';
import { makeRecess, type Range } from '../parts.ts';
import { shortGrainRatio } from '../rules.ts';
import type { Machining } from '../types.ts';
import { cutDowels, cutLooseTenon, type Meeting } from './frame.ts';
import { cutPlacedTenon, cutScribedEnd } from './tenon.ts';
import {
  checkWall,
  findings,
  gluedGap,
  nearestTool,
  type JointFigure,
  type WorkedJoint,
} from './worked-joint.ts';

const show = markSize;
const tenonTools: readonly number[] = [6, 8, 10, 12]; // joinery C4
export const slotTools: readonly number[] = [5, 6, 8, 10]; // joinery C3
export const dowelTools: readonly number[] = [6, 8, 10, 12];

/** Dowels between an end and an edge (joinery C2): a third to half of the thinner piece, at least two. */
export function workOutDowels(meeting: Meeting): WorkedJoint {
  const { male, other } = meeting;
  const thin = Math.min(male.thickness, other.thickness);
  const diameter = dowelTools.find((tool) => tool >= thin / 3) ?? 12;
  const depth = Math.min(2 * diameter, (2 / 3) * other.width);
  const first = Math.max(1.5 * diameter, Math.min(20, male.width / 4));
  const count = Math.max(2, Math.ceil((male.width - 2 * first) / 100) + 1);
  const pitch = (male.width - 2 * first) / (count - 1);
  const stations = Array.from({ length: count }, (_, i) => first + i * pitch);
  return {
    cuts: cutDowels(meeting, { diameter, depth, stations }),
    figures: [
      { name: 'diameter', value: diameter },
      { name: 'depth of the hole', value: depth + 1 },
      { name: 'length of the dowel', value: 2 * depth },
      ...stations.map((value, i) => ({ name: `station ${i + 1}`, value })),
    ],
    settings: [
      `Bore ${show(depth + 1)} deep with a stop, from the face side of both, places within ${show(0.2)}; fluted dowels.`,
    ],
    findings: findings((say) => {
      checkWall(say, 'Beside the dowels', (thin - diameter) / 2, thin);
      if (male.width < 4.5 * diameter)
        say('warn', 'dowels-crowded', {
          message: `Two dowels of ${show(diameter)} in wood ${show(male.width)} wide stand nearer than ${show(1.5 * diameter)} to its edges.`,
          remedy: 'Take a loose tenon.',
          source: 'joinery C2',
        });
    }),
  };
}

/** Loose tenon (joinery C3): the same slot in both, ends round; the tenon is 2 shorter than both slots together. */
export function workOutLooseTenon(meeting: Meeting, glue?: string): WorkedJoint {
  const { male, other } = meeting;
  const gap = gluedGap(glue);
  const thickness = nearestTool(slotTools, male.thickness / 3);
  const reach = male.thickness <= 22 ? Math.min(0.6 * other.width, 25) : Math.min(0.6 * other.width, 40);
  const slot = male.width - 20;
  return {
    cuts: cutLooseTenon(meeting, { reach, thickness, shoulder: 10, gap }),
    figures: [
      { name: 'slot thickness', value: thickness + 2 * gap },
      { name: 'slot length', value: slot },
      { name: 'slot depth', value: reach },
      { name: 'tenon length', value: 2 * reach - 2 },
      { name: 'tenon width', value: slot - 1 },
      { name: 'tenon thickness', value: thickness },
    ],
    settings: [
      `Router, cutter ${show(thickness)}: slots ${show(reach)} deep from the face side of both; ends of the tenon rounded ${show(thickness / 2)}.`,
    ],
    findings: findings((say) =>
      checkWall(say, 'Beside the slot', (male.thickness - thickness) / 2 - gap, male.thickness),
    ),
  };
}

/** What a mortise and tenon is to be. `groove`: depth of a groove in the inner edge, at Y = 0. */
export interface TenonWish {
  readonly form: 'stub' | 'through' | 'haunched';
  readonly groove?: number;
  readonly glue?: string;
}

/** Mortise and tenon, stub, through with wedges, or haunched at the end of the other member (joinery C4). */
export function workOutTenon(meeting: Meeting, wish: TenonWish): WorkedJoint {
  const { male, other } = meeting;
  const { form, groove = 0 } = wish;
  const T = male.thickness;
  const gap = gluedGap(wish.glue);
  const thickness = nearestTool(tenonTools, T / 3);
  const z: Range = [(T - thickness) / 2, (T + thickness) / 2];
  const reach =
    form === 'through'
      ? other.width
      : Math.max(0.6 * other.width, Math.min(3 * thickness, 0.7 * other.width));
  const haunch = male.width / 3;
  const y: Range =
    form === 'haunched'
      ? [groove, male.width - haunch]
      : [Math.max(groove, male.width / 8), (7 * male.width) / 8];
  const cuts = cutPlacedTenon(meeting, {
    ...{ reach, y, z, gap },
    ...(form === 'haunched' && {
      haunch: { y: [y[1], male.width] as const, z, reach: Math.max(10, groove) },
    }),
  });
  const wedges = form === 'through' ? wedgeSlots(meeting, y, [z[0] - gap, z[1] + gap]) : [];
  return {
    cuts: { male: cuts.male, other: [...cuts.other, ...wedges] },
    figures: tenonFigures(meeting, { thickness, reach, y, gap, form }),
    settings: [
      `Cheeks: blade ${show((T - thickness) / 2)} high, stock on its face, both faces.`,
      `Shoulders: stop to the far side of the blade ${show(reach)}.`,
      `Mortise: cutter ${show(thickness)}, ${show(form === 'through' ? reach : reach + 1.5)} deep; round the tenon ${show(thickness / 2)} or chop the ends square.`,
    ],
    findings: checkTenon(meeting, { thickness, reach, y, form }),
  };
}

interface SizedTenon {
  readonly thickness: number;
  readonly reach: number;
  readonly y: Range;
  readonly form: TenonWish['form'];
}

function tenonFigures(
  { other }: Meeting,
  tenon: SizedTenon & { readonly gap: number },
): readonly JointFigure[] {
  const { thickness, reach, y, gap, form } = tenon;
  return [
    { name: 'tenon thickness', value: thickness },
    { name: 'tenon length', value: form === 'through' ? reach + 2 : reach },
    { name: 'tenon width', value: y[1] - y[0] },
    { name: 'mortise from the line of the edge', value: y[0] - 0.25 },
    { name: 'mortise length', value: y[1] - y[0] + 0.5 },
    { name: 'mortise width', value: thickness + 2 * gap },
    { name: 'mortise depth', value: form === 'through' ? other.width : reach + 1.5 },
  ];
}

const wedge = { widen: 3, slope: 8 } as const; // joinery C4

/** The mortise of a wedged tenon, wider at the far side by 3 at each end. */
function wedgeSlots({ male, centre }: Meeting, y: Range, z: Range): readonly Machining[] {
  const [low, high] = [centre - male.width / 2 + y[0] - 0.25, centre - male.width / 2 + y[1] + 0.25];
  const deep = wedge.widen * wedge.slope;
  const slot = (outline: Outline): Machining => ({
    ...{ kind: 'prism', name: 'mortise', from: 'face', outline, below: z[0], depth: z[1] },
    note: 'room for a wedge',
  });
  return [
    slot([
      { x: low - wedge.widen, y: 0 },
      { x: low, y: 0 },
      { x: low, y: deep },
    ]),
    slot([
      { x: high, y: 0 },
      { x: high + wedge.widen, y: 0 },
      { x: high, y: deep },
    ]),
  ];
}

function checkTenon({ male, other, centre }: Meeting, { thickness, reach, y, form }: SizedTenon) {
  const T = male.thickness;
  const beyond = Math.min(centre - male.width / 2 + y[0], other.length - (centre - male.width / 2 + y[1]));
  const short = Math.max(1.5 * thickness, 15);
  return findings((say) => {
    checkWall(say, 'Beside the mortise', (T - thickness) / 2, T);
    if (form !== 'through') checkWall(say, 'Behind the mortise', other.width - reach - 1.5, T);
    if (thickness < T / 4)
      say('warn', 'tenon-thickness', {
        message: `A tenon ${show(thickness)} thick in wood of ${show(T)} is under a quarter of it.`,
        remedy: 'Take a thicker tenon, or two side by side.',
        source: 'joinery C4',
      });
    if (y[1] - y[0] > 6 * thickness)
      say('warn', 'tenon-wide', {
        message: `A tenon ${show(y[1] - y[0])} wide and ${show(thickness)} thick: over ${show(6 * thickness)} it warps and shrinks loose.`,
        remedy: `Make two of it, ${show(male.width / 4)} apart.`,
        source: 'joinery C4',
      });
    if (beyond >= short) return;
    say('warn', 'mortise-near-end', {
      message: `The mortise begins ${show(Math.max(0, beyond))} from the end of the other member: under ${show(short)} its end shears out.`,
      remedy: `Leave a horn of ${show(20)} until it is glued, or take a haunched tenon.`,
      source: 'joinery C4, C0.3',
    });
  });
}

/** Scribed rail on a moulded stile (joinery C18): `stick` deep moulding, drawn as its step, and a groove as deep. */
export function workOutCopeStick(
  meeting: Meeting,
  profile: { readonly stick: number; readonly step: number; readonly tongue: Range },
): WorkedJoint {
  const { male, other } = meeting;
  const { stick, step, tongue } = profile;
  const inner: Range = [other.width - stick, other.width];
  const moulding = makeRecess(
    'rebate',
    'face',
    { x: [0, other.length], y: inner, z: [0, step] },
    'moulding, drawn as its step',
  );
  const groove = makeRecess('groove', 'far-edge', { x: [0, other.length], y: inner, z: tongue });
  const cuts = cutScribedEnd(meeting, { step, tongue, reach: stick });
  const area = (male.length * other.length) / 1e6;
  return {
    cuts: { male: cuts.male, other: [moulding, groove] },
    figures: [
      { name: 'added to the rail, each end', value: stick },
      { name: 'tongue thickness', value: tongue[1] - tongue[0] },
      { name: 'groove depth', value: stick },
    ],
    settings: [`One cutter set for both; try it on spare stock of the same thickness, within ${show(0.1)}.`],
    findings: findings((say) => {
      checkWall(say, 'Behind the groove', male.thickness - tongue[1], male.thickness);
      if (area > 0.25)
        say('warn', 'door-large-for-tongues', {
          message: `Short tongues alone hold a door of about ${formatNumber(area, 2)} m²; over 0.25 m² they do not.`,
          remedy: 'Add loose tenons.',
          source: 'joinery C18',
        });
    }),
  };
}

/** A web or tongue shorter along the grain than twice its thickness across (joinery C0.3); plywood has no short grain. */
export function hasShortGrain(along: number, across: number, sheet = false): boolean {
  return !sheet && along < shortGrainRatio * across;
}
