import { isInside } from '#core/geometry';
import type { Outline } from '#core/geometry';
import type { Machining, Part, PartEdge } from '#core/joinery';
import type { Problem } from '#core/problems';
import { unreachable } from '#core/problems';
import type { LengthSystem } from '#core/units';
import { joinAlike } from '../machining-words.ts';
import { formatMm } from '../scales.ts';
import { leftOnAt } from '../scribe-edge.ts';
import { layerName } from './layers.ts';
import { makePocketContour } from './pocket-contour.ts';

export interface RouterSetup {
  /** Cutter diameter, mm. */
  readonly cutter: number;
  readonly passDepth: number;
  /** `relieved` (usual): inside corners that take a square corner are widened; `plain`: contours as designed. */
  readonly corners?: 'relieved' | 'plain';
  /** In what the notes are told, mm where left out; the files themselves are in mm. */
  readonly units?: LengthSystem;
}

export type RouterSide = 'face' | 'back';

export interface Contour {
  readonly layer: string;
  readonly outline: Outline;
  /** A line with two ends, not closed. */
  readonly isOpen?: boolean;
  /** A full circle, for drilling. */
  readonly circle?: { readonly x: number; readonly y: number; readonly radius: number };
}

export interface SideWork {
  readonly contours: readonly Contour[];
  readonly findings: readonly Problem[];
}

const touching = 0.01; // mm; nearer to a surface than this is on it

/** What a router does to one machining from a side of the part, in the part's own frame; null when it is not for this side. */
export function workFromSide(
  machining: Machining,
  part: Part,
  side: RouterSide,
  setup: RouterSetup,
): SideWork | null {
  switch (machining.kind) {
    case 'recess':
      return pocketWork(machining, part, side, setup);
    case 'prism': {
      if (machining.from !== side || isWithin(machining)) return null;
      const through = machining.depth >= part.finished.thickness - touching;
      const layer = layerName('pocket', through ? 'through' : machining.depth);
      return { contours: [{ layer, outline: machining.outline }], findings: [] };
    }
    case 'hole':
      return machining.from === side ? { contours: drillWork(machining, part), findings: [] } : null;
    case 'bevel':
      return null;
    default:
      return unreachable(machining);
  }
}

/** True when a machining can be reached from the face side or the back. */
export function isReachable(machining: Machining, part: Part): boolean {
  if (machining.kind === 'bevel') return false;
  if (machining.kind === 'recess') return sideOfRecess(machining, part) !== null;
  if (machining.kind === 'prism' && isWithin(machining)) return false;
  return machining.from === 'face' || machining.from === 'back';
}

/** A slot in the middle of the thickness opens at an end or edge, never at the face it is measured from. */
function isWithin({ below }: Extract<Machining, { kind: 'prism' }>): boolean {
  return (below ?? 0) > touching;
}

type Recess = Extract<Machining, { kind: 'recess' }>;

/** A recess named from an edge or end can still be milled from the face or back it opens at. */
function sideOfRecess(recess: Recess, part: Part): RouterSide | null {
  const atFace = recess.box.min.z <= touching;
  const atBack = recess.box.max.z >= part.finished.thickness - touching;
  if (recess.from === 'back' && atBack) return 'back';
  if (atFace) return 'face';
  return atBack ? 'back' : null;
}

function pocketWork(recess: Recess, part: Part, side: RouterSide, setup: RouterSetup): SideWork | null {
  if (sideOfRecess(recess, part) !== side) return null;
  const { length, width, thickness } = part.finished;
  const { min, max } = recess.box;
  const through = min.z <= touching && max.z >= thickness - touching;
  const depth = side === 'face' ? max.z : thickness - min.z;
  const box = {
    minX: Math.max(0, min.x),
    minY: Math.max(0, min.y),
    maxX: Math.min(length, max.x),
    maxY: Math.min(width, max.y),
  };
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  // cut out already when the outline goes round it
  if (through && !isInside(middle, part.outline)) return { contours: [], findings: [] };
  const runOut = (at: PartEdge['edge'], open: boolean) => (open ? setup.cutter / 2 + leftOnAt(part, at) : 0);
  const open = {
    left: runOut('start', min.x <= touching),
    right: runOut('end', max.x >= length - touching),
    bottom: runOut('face-edge', min.y <= touching),
    top: runOut('far-edge', max.y >= width - touching),
  };
  const findings = checkPocket(recess, part, { box, open, depth, setup });
  if (findings.some((finding) => finding.code === 'router-recess-narrow')) return { contours: [], findings };
  const outline = makePocketContour(box, open, isRelieved(recess, setup) ? setup.cutter / 2 : 0);
  return { contours: [{ layer: layerName('pocket', through ? 'through' : depth), outline }], findings };
}

/** Grooves and rebates take no square corner at their ends; everything else does (joinery C19). */
function isRelieved(recess: Recess, setup: RouterSetup): boolean {
  return setup.corners !== 'plain' && recess.name !== 'groove' && recess.name !== 'rebate';
}

function checkPocket(
  recess: Recess,
  part: Part,
  pocket: {
    readonly box: {
      readonly minX: number;
      readonly minY: number;
      readonly maxX: number;
      readonly maxY: number;
    };
    readonly open: {
      readonly left: number;
      readonly right: number;
      readonly bottom: number;
      readonly top: number;
    };
    readonly depth: number;
    readonly setup: RouterSetup;
  },
): readonly Problem[] {
  const { box, open, depth, setup } = pocket;
  const across = open.left || open.right ? Infinity : box.maxX - box.minX;
  const upright = open.bottom || open.top ? Infinity : box.maxY - box.minY;
  const narrowest = Math.min(across, upright);
  const findings: Problem[] = [];
  if (narrowest < setup.cutter - touching) {
    findings.push({
      severity: 'warn',
      code: 'router-recess-narrow',
      about: part.id,
      message: `On ${part.id} the ${recess.name} is ${formatMm(narrowest)} mm wide, narrower than the ${formatMm(setup.cutter)} mm cutter; it is left out of the router file.`,
      remedy: `Set a cutter of ${formatMm(narrowest)} mm or less, or cut this ${recess.name} by saw or hand.`,
      source: 'joinery C19',
    });
  }
  // 4 diameters is the most that common practice allows
  if (depth > 4 * setup.cutter + touching) {
    findings.push({
      severity: 'warn',
      code: 'router-recess-deep',
      about: part.id,
      message: `On ${part.id} the ${recess.name} is ${formatMm(depth)} mm deep, more than four times the ${formatMm(setup.cutter)} mm cutter.`,
      remedy: 'Use a thicker or longer cutter, or finish the depth by hand.',
      source: 'joinery C19',
    });
  }
  return findings;
}

function drillWork(hole: Extract<Machining, { kind: 'hole' }>, part: Part): readonly Contour[] {
  const { depth } = hole;
  const size = depth === 'through' || depth >= part.finished.thickness - touching ? 'through' : depth;
  const circle = (layer: string, diameter: number): Contour => ({
    layer,
    outline: [],
    circle: { x: hole.x, y: hole.y, radius: diameter / 2 },
  });
  const sink = hole.countersink ? [circle(layerName('sink', hole.countersink), hole.countersink)] : [];
  return [circle(layerName('drill', size), hole.diameter), ...sink];
}

/** True when a groove worked from this side ends inside the part: the cutter leaves its end round where a panel is square. */
export function hasStoppedGroove(part: Part, side: RouterSide): boolean {
  const size = { x: part.finished.length, y: part.finished.width };
  return part.machining.some((machining) => {
    if (machining.kind !== 'recess' || machining.name !== 'groove') return false;
    if (sideOfRecess(machining, part) !== side) return false;
    const { min, max } = machining.box;
    const axis = max.x - min.x >= max.y - min.y ? 'x' : 'y';
    return min[axis] > touching || max[axis] < size[axis] - touching;
  });
}

/** A note for what needs another setting up than flat on the face or back; machinings alike in one note. */
export function listUnreachable(part: Part, units?: LengthSystem): readonly Problem[] {
  const work = part.machining.filter((machining) => !isReachable(machining, part));
  return joinAlike(work, part, units).map(({ text }) => ({
    severity: 'note',
    code: 'router-other-side',
    about: part.id,
    message: `Not in the router files of ${part.id}: ${text}.`,
    remedy: 'Work it by hand or on the saw, or set it up by itself after routing.',
  }));
}
