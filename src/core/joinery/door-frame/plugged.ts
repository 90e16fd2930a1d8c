import type { Point } from '#core/geometry';
import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import type { FrameLayout } from './layout.ts';
import type { Member } from './members.ts';
import type { FrameCorner } from './types.ts';
import { carryCuts } from '../joints/carry.ts';
import { workOutEndOnFace, type EndOnFaceJoint } from '../joints/end-on-face.ts';
import { mirrorAll } from '../joints/mirror.ts';
import { figureOf } from '../joints/worked-joint.ts';
import { squareHousingDegrees } from '../rules.ts';
import type { Fixing, Machining } from '../types.ts';

const show = markSize;

/** Corners at which the head stands between the jambs, dowels or loose tenons across. */
export function isPlugged(corner: FrameCorner): corner is 'dowel' | 'loose-tenon' {
  return corner === 'dowel' || corner === 'loose-tenon';
}

/** The joint of the head's end on the face of a jamb (joinery C2, C3); null at other corners. */
export function pluggedJoint({ choices, book, jamb, head }: FrameLayout): EndOnFaceJoint | null {
  if (!isPlugged(choices.corner)) return null;
  const width = book.value('Ld');
  const male = { length: book.value('head_L'), width, thickness: book.value(head) };
  const other = { length: book.value('jamb_left_L'), width, thickness: book.value(jamb) };
  const glued = choices.glue ? { glue: choices.glue } : {};
  return workOutEndOnFace({ male, other, ...glued }, { kind: choices.corner, housing: 0, sheet: false });
}

/** What it takes from a member: from both ends of the head, from the face of a jamb at the middle of the head. */
export function pluggedCuts(
  layout: FrameLayout,
  { laid, side, width, thickness }: Member,
  headCentre: Point,
): readonly Machining[] {
  const joint = pluggedJoint(layout);
  if (!joint || side === 'sill') return [];
  const size = { length: laid.length, width, thickness };
  if (side === 'head') {
    const more = laid.length - layout.book.value('head_L'); // an end on the slant is longer over all
    const cuts = joint.cuts.male.map((one) => shiftX(one, more));
    return [...cuts, ...mirrorAll(cuts, 'x', size)];
  }
  const off = laid.toPart(headCentre).x - layout.book.value('jamb_left_L') / 2;
  return carryCuts(joint.cuts.other, { face: 'face', size, to: ({ x, y }) => ({ x: x + off, y }) });
}

function shiftX(one: Machining, by: number): Machining {
  if (one.kind !== 'recess' || by === 0) return one;
  const { min, max } = one.box;
  return { ...one, box: { min: { ...min, x: min.x + by }, max: { ...max, x: max.x + by } } };
}

/** Dowels or tenons of both corners. */
export function pluggedFixings(layout: FrameLayout): readonly Fixing[] {
  const joint = pluggedJoint(layout);
  return (joint?.takes ?? []).map((one) => ({ ...one, quantity: 2 * one.quantity, use: 'frame corners' }));
}

const leastSlot = 15; // length of a slot that holds a tenon, mm, common practice, no source

/** Findings on such corners: the joint's own, linings too narrow for two dowels or a tenon, corners off square. */
export function checkPlugged(layout: FrameLayout): readonly Problem[] {
  const joint = pluggedJoint(layout);
  const { choices, book } = layout;
  if (!joint) return [];
  const width = book.value('Ld');
  const dowels = choices.corner === 'dowel';
  const wanted = dowels ? 4.5 * figureOf(joint, 'diameter') : leastSlot + 20;
  const narrow: Problem = {
    severity: 'stop',
    code: 'lining-too-narrow',
    message: `A lining ${show(width)} from front to back has no room for ${dowels ? 'two dowels' : 'a loose tenon'} at its corners; ${show(wanted)} is the least.`,
    remedy: 'Take the rebate, or a tongue.',
    source: dowels ? 'joinery C2' : 'joinery C3',
  };
  const corners = ['TL', 'TR'].flatMap((at) => (book.has(`alpha_${at}`) ? [book.value(`alpha_${at}`)] : []));
  const off = Math.max(0, ...corners.map((degrees) => Math.abs(degrees - 90)));
  const askew: Problem = {
    severity: 'stop',
    code: 'joint-askew',
    message: `A corner is ${formatNumber(off, 1)}° off square, and ${dowels ? 'dowels go' : 'a loose tenon goes'} in square: up to ${squareHousingDegrees}° they give.`,
    remedy: 'Take a housing, which can be cut at the angle, or a square frame.',
    source: 'joinery B1',
  };
  return [
    ...joint.findings,
    ...(width < wanted - 1e-9 ? [narrow] : []),
    ...(off > squareHousingDegrees ? [askew] : []),
  ];
}
