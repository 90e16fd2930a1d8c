import type { Gate } from '#core/joinery';
import type { Problem } from '#core/problems';
import { unreachable } from '#core/problems';
import { formatNumber } from '#core/units';
import { longestRoundCorner } from './corner-turn.ts';
import { fitsThrough, leastSecondSide } from './rectangle-fit.ts';
import type { GateAnswer, Load } from './types.ts';

/** Room for the hands on each side, mm (joinery F1, common practice). */
export const handRoom = 5;

/** Of a corner of radius R, what a straight side loses: 1 - 1/√2 of it (joinery F1). */
const lostInCorner = 1 - Math.SQRT1_2;

type Of<Kind extends Gate['kind']> = Extract<Gate, { kind: Kind }>;

/** A load held so that two of its sizes meet the gate and the third runs along or across; in words. */
interface Hold {
  readonly words: string;
  readonly p: number;
  readonly q: number;
  readonly rest: number;
}

/** Every gate of the route in order, and how the load takes it (joinery F5). */
export function takeRoute(load: Load, route: readonly Gate[]): readonly GateAnswer[] {
  return route.map((gate) => takeGate(load, gate));
}

/** How a load takes one gate: square through an opening, round a corner, into a space (joinery F1 to F4). */
export function takeGate(load: Load, gate: Gate): GateAnswer {
  switch (gate.kind) {
    case 'opening':
      return throughOpening(load, gate);
    case 'corner':
      return roundCorner(load, gate);
    case 'space':
      return intoSpace(load, gate);
    default:
      return unreachable(gate);
  }
}

/** The first gate that a load does not pass, as a finding; null when it goes the whole way (joinery F5, G19). */
export function checkRoute(load: Load, route: readonly Gate[]): Problem | null {
  const failing = takeRoute(load, route).find((answer) => !answer.passes);
  if (!failing) return null;
  const { gate, need = NaN, have = NaN } = failing;
  const sizes = sizesOf(load).map((size) => formatNumber(size, 0));
  return {
    severity: 'warn',
    code: 'route-too-narrow',
    message: `${load.name}, ${sizes.join(' × ')} mm as one, does not pass ${gate.name}: ${failing.way} it needs ${formatNumber(Math.ceil(need), 0)} mm, and there are ${formatNumber(Math.floor(have), 0)}.`,
    remedy:
      'Carry it in parts and join it aboard, leave horns and covers off until it is in, take the hatch off for the day, or try it with a cardboard of this size.',
    source: 'joinery F1 to F5, G19',
  };
}

/** Longest first. */
function sizesOf({ length, width, thickness }: Load): [number, number, number] {
  const [l = 0, q = 0, t = 0] = [length, width, thickness].sort((one, other) => other - one);
  return [l, q, t];
}

function holdsOf(load: Load): readonly [Hold, Hold, Hold] {
  const [l, q, t] = sizesOf(load);
  return [
    { words: 'long end first', p: q, q: t, rest: l },
    { words: 'on edge', p: l, q: t, rest: q },
    { words: 'flat side first', p: l, q, rest: t },
  ];
}

function throughOpening(load: Load, gate: Of<'opening'>): GateAnswer {
  const lost = 2 * handRoom + 2 * lostInCorner * (gate.cornerRadius ?? 0);
  const a = Math.max(gate.width, gate.height) - lost;
  const b = Math.min(gate.width, gate.height) - lost;
  const holds = holdsOf(load);
  const passing = holds.find(({ p, q }) => fitsThrough({ p, q, a, b }));
  if (passing) return { gate, passes: true, way: passing.words };
  const [longEnd] = holds;
  const need = leastSecondSide({ p: longEnd.p, q: longEnd.q, a, b });
  // where no second side helps, the first is what lacks
  if (need === Infinity) return { gate, passes: false, way: longEnd.words, need: longEnd.q, have: a };
  return { gate, passes: false, way: longEnd.words, need, have: b };
}

function roundCorner(load: Load, gate: Of<'corner'>): GateAnswer {
  const [before, after] = [gate.before - 2 * handRoom, gate.after - 2 * handRoom];
  const depth = gate.depth - 2 * handRoom;
  const holds = holdsOf(load);
  const low = holds.filter(({ rest }) => rest <= depth);
  const passing = low.find(
    ({ p, q }) => slides(p, q, before, after) || p <= longestRoundCorner(before, after, q),
  );
  if (passing) return { gate, passes: true, way: cornerWords(passing, load) };
  const best = low[0];
  if (!best)
    return { gate, passes: false, way: 'whichever way it is held', need: sizesOf(load)[2], have: depth };
  const have = Math.max(...low.map(({ q }) => longestRoundCorner(before, after, q)));
  // too wide for a passage however it is turned
  if (have === 0)
    return {
      gate,
      passes: false,
      way: cornerWords(best, load),
      need: Math.min(...low.map(({ q }) => q)),
      have: Math.min(before, after),
    };
  return { gate, passes: false, way: 'turning', need: best.p, have };
}

/** Slides in along one passage and out along the other without turning. */
function slides(p: number, q: number, before: number, after: number): boolean {
  return (p <= before && q <= after) || (q <= before && p <= after);
}

function cornerWords({ rest }: Hold, load: Load): string {
  const [l, q] = sizesOf(load);
  return rest === l ? 'standing on end' : rest === q ? 'on edge' : 'flat';
}

function intoSpace(load: Load, gate: Of<'space'>): GateAnswer {
  const room = [gate.length, gate.width, gate.height].map((size) => size - 2 * handRoom);
  const [l, q, t] = sizesOf(load);
  const lying = room.findIndex((across, i) => {
    const others = room.filter((_, j) => j !== i);
    return t <= across && fitsThrough({ p: l, q, a: others[0] ?? 0, b: others[1] ?? 0 });
  });
  if (lying >= 0) return { gate, passes: true, way: lying === 2 ? 'lying flat' : 'on edge or standing' };
  return {
    gate,
    passes: false,
    way: 'turned any way',
    need: l,
    have: Math.hypot(room[0] ?? 0, room[2] ?? 0),
  };
}

/** Whether something of this height and depth can be stood up under a headroom: its diagonal must clear it (joinery F3). */
export function canBeStoodUp(height: number, depth: number, headroom: number): boolean {
  return Math.hypot(height, depth) <= headroom;
}
