import { isLapped, stopsGroove, type FramedLayout } from './sizes.ts';
import { cutBothEnds, flipRange, turnCuts, type RailInDoor } from '../hung-door/corners.ts';
import type { JointCuts } from '../joints/fingers.ts';
import { cutDowels, cutHalfLap, type FrameMember, type Meeting } from '../joints/frame.ts';
import {
  cutBridle,
  cutGrooveTongue,
  cutLoosePockets,
  cutPlacedTenon,
  cutScribedEnd,
} from '../joints/tenon.ts';
import { makeRecess, type Range } from '../parts.ts';
import type { Machining } from '../types.ts';

/** Which rail: it decides on which edges the groove runs and where the haunch is. */
export type RailName = 'top' | 'bottom' | 'mid';

export type LaidRail = RailInDoor & { readonly name: RailName };

/** A mid stile as it lies: x up, y right. */
export interface LaidStile {
  readonly size: FrameMember;
  readonly left: number;
  readonly foot: number;
  /** Rails, from the top, it stands between. */
  readonly above: number;
}

/** The members of a door with what is cut into each, in their own frames. */
export interface CutFrame {
  readonly rails: readonly LaidRail[];
  readonly midStiles: readonly LaidStile[];
  readonly left: readonly Machining[];
  readonly right: readonly Machining[];
  readonly ofRail: readonly (readonly Machining[])[];
  readonly ofMidStile: readonly Machining[];
}

/** Rails from the top. */
export function layRails({ book, rails }: FramedLayout): readonly LaidRail[] {
  const v = book.value;
  const thickness = v('T');
  const outer = { length: v('rail_L'), thickness };
  const mids = Array.from({ length: rails }, (_, i): LaidRail => ({
    name: 'mid',
    size: { length: v('mid_rail_L'), width: v('wm'), thickness },
    left: v('ws') - v('lr'),
    top: v('Hd') - v('wt') - (i + 1) * v('hs') - i * v('wm'),
  }));
  const left = v('ws') - v('l');
  return [
    { name: 'top', size: { ...outer, width: v('wt') }, left, top: v('Hd') },
    ...mids,
    { name: 'bottom', size: { ...outer, width: v('wb') }, left, top: v('wb') },
  ];
}

/** Mid stiles from the top, one in each row of panels; none without. */
export function layMidStiles(layout: FramedLayout): readonly LaidStile[] {
  const { book, stiles, rails } = layout;
  if (stiles === 0) return [];
  const v = book.value;
  const size = { length: v('mid_stile_L'), width: v('wm'), thickness: v('T') };
  return layRails(layout)
    .slice(1, rails + 2)
    .map((below, above) => ({ size, left: v('ws') + v('wc'), foot: below.top - v('lm'), above }));
}

/** Cuts all joints and grooves of the frame (joinery B3). */
export function cutFrame(layout: FramedLayout): CutFrame {
  const rails = layRails(layout);
  const midStiles = layMidStiles(layout);
  const stile = stileSize(layout);
  const ends = rails.map((rail) =>
    cutBothEnds(rail, stile, (meeting, turned) => cutEnd(layout, rail.name, { ...meeting, turned })),
  );
  const stood = midStiles.map((mid) => standBetween(layout, mid, rails));
  return {
    rails,
    midStiles,
    right: [...grooveStile(layout, false), ...ends.flatMap(({ right }) => right)],
    left: [...grooveStile(layout, true), ...ends.flatMap(({ left }) => left)],
    ofRail: rails.map((rail, i) =>
      dropCovered([
        ...grooveRail(layout, rail),
        ...(ends[i]?.rail ?? []),
        ...stood.flatMap((one) => one.rails.filter(({ index }) => index === i).flatMap(({ cuts }) => cuts)),
      ]),
    ),
    ofMidStile: dropCovered([...grooveMidStile(layout, midStiles[0]), ...(stood[0]?.male ?? [])]),
  };
}

/** Without the cuts that a groove has made already. */
function dropCovered(cuts: readonly Machining[]): readonly Machining[] {
  const grooves = cuts.flatMap((cut) => (cut.kind === 'recess' && cut.name === 'groove' ? [cut.box] : []));
  const axes = ['x', 'y', 'z'] as const;
  return cuts.filter(
    (cut) =>
      cut.kind !== 'recess' ||
      cut.name !== 'shoulder' ||
      !grooves.some(({ min, max }) =>
        axes.every((axis) => cut.box.min[axis] >= min[axis] - 1e-9 && cut.box.max[axis] <= max[axis] + 1e-9),
      ),
  );
}

function stileSize({ book }: FramedLayout): FrameMember {
  return { length: book.value('Hd'), width: book.value('ws'), thickness: book.value('T') };
}

/** In the thickness: a tenon or tongue in line with the groove. */
function inThickness({ book }: FramedLayout, thickness: number): Range {
  return [(book.value('T') - thickness) / 2, (book.value('T') + thickness) / 2];
}

/** `turned`: the left end, seen with the door turned half round. */
type End = Meeting & { readonly turned: boolean };

/** One end of a rail in its stile, as at the right (joinery C3 to C5, C18). */
function cutEnd(layout: FramedLayout, name: RailName, { turned, ...meeting }: End): JointCuts {
  const { book, choices } = layout;
  const v = book.value;
  const { male: size, other: stile, centre } = meeting;
  const z = inThickness(layout, v('tenon_t'));
  const { joint } = choices;
  if (joint === 'groove-tongue') return cutGrooveTongue(meeting, z, v('gd'));
  if (joint === 'scribed-moulding')
    return cutScribedEnd(meeting, { step: v('step'), tongue: z, reach: v('gd') });
  if (joint === 'bridle' && name !== 'mid') return cutBridle(meeting, z, v('gap'), centre < stile.length / 2);
  if (joint === 'half-lap' && name !== 'mid') return cutHalfLap(meeting, stile.width);
  const place = (range: Range): Range => (turned ? flipRange(range, size.width) : range);
  const outer = outerMargin(layout, name);
  const inner = innerMargin(layout);
  const upright: Range = name === 'bottom' ? [inner, size.width - outer] : [outer, size.width - inner];
  const y = place(upright);
  if (joint === 'dowel') return cutDowels(meeting, { ...dowelOf(layout), stations: stationsIn(y) });
  if (joint === 'loose-tenon') return cutLoosePockets(meeting, { depth: v('reach'), y, z, gap: v('gap') });
  const haunched = (joint === 'haunched-tenon' || joint === 'through-tenon') && name !== 'mid';
  const strip: Range = name === 'bottom' ? [size.width - outer, size.width] : [0, outer];
  const haunch = {
    y: place(strip),
    z: inThickness(layout, Math.min(v('tenon_t'), v('gw') - 2 * v('gap'))),
    reach: v('gd'),
    inGroove: true,
  };
  const reach = name === 'mid' ? v('lr') : v('l');
  return cutPlacedTenon(meeting, { reach, y, z, gap: v('gap'), ...(haunched && { haunch }) });
}

/** Wood beside a tenon towards the outside of the door: the haunch, or the other groove of a mid rail. */
function outerMargin({ book, choices }: FramedLayout, name: RailName): number {
  if (choices.joint === 'dowel') return book.value(name === 'mid' ? 'dowel_in' : 'dowel_out');
  if (choices.joint === 'loose-tenon') return name === 'mid' ? book.value('inner') : 10;
  if (name === 'mid') return book.value('gd');
  return book.value(name === 'top' ? 'hh' : 'hh_bottom');
}

/** Wood beside a tenon, or to the first dowel, towards the panel. */
function innerMargin({ book, choices }: FramedLayout): number {
  if (choices.joint === 'dowel') return book.value('dowel_in');
  return book.value(choices.joint === 'loose-tenon' ? 'inner' : 'gd');
}

const widestPitch = 100; // of dowels in a frame, mm (joinery C2)

/** Dowels from the first to the last place of a range: two, or more where they would stand wide. */
export function stationsIn([from, to]: Range): readonly number[] {
  const gaps = Math.max(1, Math.ceil((to - from) / widestPitch));
  return Array.from({ length: gaps + 1 }, (_, i) => from + (i * (to - from)) / gaps);
}

const dowelOf = ({ book: { value: v } }: FramedLayout) => ({ diameter: v('tenon_t'), depth: v('reach') });

/** Both ends of a mid stile in the rails above and below. */
function standBetween(layout: FramedLayout, mid: LaidStile, rails: readonly LaidRail[]) {
  const meet = (index: number, turned: boolean) => {
    const rail = rails[index];
    if (!rail) throw new Error(`no rail ${index}`);
    const along = mid.left + mid.size.width / 2 - rail.left;
    const centre = turned ? rail.size.length - along : along;
    const cuts = cutMidEnd(layout, { male: mid.size, other: rail.size, centre });
    return turned
      ? { index, male: turnCuts(cuts.male, mid.size), cuts: turnCuts(cuts.other, rail.size) }
      : { index, male: cuts.male, cuts: cuts.other };
  };
  const [above, below] = [meet(mid.above, false), meet(mid.above + 1, true)];
  return { male: [...above.male, ...below.male], rails: [above, below] };
}

function cutMidEnd(layout: FramedLayout, meeting: Meeting): JointCuts {
  const { book, choices } = layout;
  const v = book.value;
  const z = inThickness(layout, v('tenon_t'));
  if (choices.joint === 'groove-tongue') return cutGrooveTongue(meeting, z, v('gd'));
  if (choices.joint === 'scribed-moulding') {
    return cutScribedEnd(meeting, { step: v('step'), tongue: z, reach: v('gd') });
  }
  const inner = innerMargin(layout);
  const y: Range = [inner, meeting.male.width - inner];
  if (choices.joint === 'dowel') {
    return cutDowels(meeting, { ...dowelOf(layout), depth: v('reach_mid'), stations: stationsIn(y) });
  }
  if (choices.joint === 'loose-tenon') {
    return cutLoosePockets(meeting, { depth: v('reach_mid'), y, z, gap: v('gap') });
  }
  return cutPlacedTenon(meeting, { reach: v('lm'), y, z, gap: v('gap') });
}

/** A groove for the panel along an edge, with the moulding where there is one. */
function grooveAlong(
  { book, choices }: FramedLayout,
  x: Range,
  edge: 'face-edge' | 'far-edge',
  width: number,
): readonly Machining[] {
  const v = book.value;
  const y: Range = edge === 'face-edge' ? [0, v('gd')] : [width - v('gd'), width];
  const groove = makeRecess('groove', edge, { x, y, z: [v('gz'), v('gz') + v('gw')] });
  if (choices.joint !== 'scribed-moulding') return [groove];
  return [groove, makeRecess('rebate', 'face', { x, y, z: [0, v('step')] }, 'moulding, drawn as its step')];
}

function grooveStile(layout: FramedLayout, turned: boolean): readonly Machining[] {
  const { book, choices } = layout;
  const v = book.value;
  const [top, bottom] = [v('wt') - v('gd'), v('Hd') - v('wb') + v('gd')];
  const whole: Range = stopsGroove(choices.joint) ? [top, bottom] : [0, v('Hd')];
  return grooveAlong(layout, turned ? flipRange(whole, v('Hd')) : whole, 'far-edge', v('ws'));
}

function grooveRail(layout: FramedLayout, { name, size }: LaidRail): readonly Machining[] {
  const v = layout.book.value;
  const stopped = isLapped(layout.choices.joint) && name !== 'mid';
  const short = stopped ? v('ws') - v('gd') : 0;
  const x: Range = [short, size.length - short];
  return [
    ...(name === 'top' ? [] : grooveAlong(layout, x, 'face-edge', size.width)),
    ...(name === 'bottom' ? [] : grooveAlong(layout, x, 'far-edge', size.width)),
  ];
}

function grooveMidStile(layout: FramedLayout, mid: LaidStile | undefined): readonly Machining[] {
  if (!mid) return [];
  const x: Range = [0, mid.size.length];
  return (['face-edge', 'far-edge'] as const).flatMap((edge) => grooveAlong(layout, x, edge, mid.size.width));
}
