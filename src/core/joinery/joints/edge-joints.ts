import { markSize } from '#core/units';
import { makeRecess, type Range } from '../parts.ts';
import type { FrameMember } from './frame.ts';
import { grooveFences } from './saw-settings.ts';
import { checkWall, findings, type WorkedJoint } from './worked-joint.ts';

const show = markSize;

/** A panel (male) in a groove along the far edge of the other (joinery C9); the panel itself is not cut. */
export function workOutGroove(
  { panel, other }: { readonly panel: number; readonly other: FrameMember },
  wish: {
    readonly depth?: number;
    readonly offset?: number;
    readonly film?: number;
    readonly kerf?: number;
  } = {},
): WorkedJoint {
  const width = panel + 0.2 + 4 * (wish.film ?? 0);
  const depth = wish.depth ?? 8;
  const offset = wish.offset ?? (other.thickness - width) / 2;
  const z: Range = [offset, offset + width];
  const fences = grooveFences(offset, width, wish.kerf ?? 3);
  return {
    cuts: {
      male: [],
      other: [
        makeRecess('groove', 'far-edge', { x: [0, other.length], y: [other.width - depth, other.width], z }),
      ],
    },
    figures: [
      { name: 'width', value: width },
      { name: 'depth', value: depth },
      { name: 'offset', value: offset },
      { name: 'first fence', value: fences.first },
      { name: 'last fence', value: fences.last },
      { name: 'passes', value: fences.passes, unit: 'count' },
    ],
    settings: [
      `Fence ${show(fences.first)}, then ${show(fences.last)}; ${fences.passes} passes, blade ${show(depth)} high, face side to the fence.`,
    ],
    findings: findings((say) => {
      checkWall(
        say,
        'Beside the groove',
        Math.min(offset, other.thickness - offset - width),
        other.thickness,
      );
      if (depth > other.width / 2)
        say('stop', 'groove-too-deep', {
          message: `A groove ${show(depth)} deep takes more than half of a member ${show(other.width)} wide.`,
          remedy: `Make it ${show(6)} to ${show(10)} deep.`,
          source: 'joinery C9',
        });
    }),
  };
}

/** Tongue on the face edge of one board, groove in the far edge of the next (joinery C10). */
export function workOutTongueGroove(
  { male, other }: { readonly male: FrameMember; readonly other: FrameMember },
  wish: { readonly tongue?: number; readonly movement?: number } = {},
): WorkedJoint {
  const T = male.thickness;
  const tongue = wish.tongue ?? 7;
  const t = T / 3;
  const z: Range = [(T - t) / 2, (T + t) / 2];
  const x: Range = [0, male.length];
  const gap = wish.movement ?? 0;
  return {
    cuts: {
      male: [
        makeRecess('shoulder', 'face', { x, y: [0, tongue], z: [0, z[0]] }),
        makeRecess('shoulder', 'back', { x, y: [0, tongue], z: [z[1], T] }),
      ],
      other: [
        makeRecess('groove', 'far-edge', {
          x: [0, other.length],
          y: [other.width - tongue - 0.5, other.width],
          z: [z[0] - 0.05, z[1] + 0.05],
        }),
      ],
    },
    figures: [
      { name: 'tongue thickness', value: t },
      { name: 'tongue length', value: tongue },
      { name: 'cover width', value: male.width - tongue + gap },
      { name: 'visible gap', value: gap },
    ],
    settings: [
      `Tongue: blade ${show(z[0])} high from both faces, ${show(tongue)} in; groove ${show(tongue + 0.5)} deep. One fixing to a board, through the tongue.`,
    ],
    findings: findings((say) => {
      checkWall(say, 'Beside the groove', z[0] - 0.05, T);
      if (gap >= tongue)
        say('stop', 'tongue-leaves-groove', {
          message: `The boards shrink ${show(gap)} apart, and the tongues are ${show(tongue)} long.`,
          remedy: 'Take longer tongues or narrower boards.',
          source: 'joinery C10',
        });
    }),
  };
}

/** Boards edge to edge for a panel (joinery C16): what their widths must add up to, rough; each 120 wide at the most. */
export function workOutEdgeJoint(panel: number, boards: number): WorkedJoint {
  const rough = panel + 6 + 2 * (boards - 1);
  return {
    cuts: { male: [], other: [] },
    figures: [
      { name: 'widths together, rough', value: rough },
      { name: 'each', value: rough / boards },
    ],
    settings: [
      `Planed straight, sprung hollow by ${show(0.1)} over ${show(300)}; rings alternate or figure matched.`,
    ],
    findings: findings((say) => {
      if (panel / boards <= 120) return;
      say('warn', 'solid-too-wide', {
        message: `${boards} boards make a panel of ${show(panel)}: each is ${show(panel / boards)} wide, and over ${show(120)} it does not stay flat.`,
        remedy: `Take ${Math.ceil(panel / 120)} or more.`,
        source: 'joinery C16, D3',
      });
    }),
  };
}

/** Solid edge on a sheet (joinery C17): what the core loses, and the strip as it is glued on. */
export function workOutLipping(
  size: number,
  wish: {
    readonly thickness: number;
    readonly lipping: number;
    readonly sides: 1 | 2;
    readonly door?: boolean;
  },
): WorkedJoint {
  const { thickness: T, lipping: a, sides, door = false } = wish;
  return {
    cuts: { male: [], other: [] },
    figures: [
      { name: 'core', value: size - sides * a },
      { name: 'strip, rough thickness', value: a + 0.5 },
      { name: 'strip, rough width', value: T + 2 },
    ],
    settings: [
      `Glue the strip ${show(1)} proud of each face and flush it with the router${a > 15 ? '; a loose tongue keeps it level' : ''}.`,
    ],
    findings: findings((say) => {
      if (a >= 5 && a <= 15 && !(door && a < T / 3)) return;
      say('warn', 'lipping-unusual', {
        message: `A lipping of ${show(a)}: ${show(5)} to ${show(15)} is usual${door ? `, on a door ${show(T / 3)} at least` : ''}.`,
        remedy: a > 15 ? 'Add a loose tongue.' : 'Take a wider one.',
        source: 'joinery C17',
      });
    }),
  };
}
