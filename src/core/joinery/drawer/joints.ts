import { formatNumber, markSize } from '#core/units';
import type { DrawerCorners } from './boards.ts';
import type { CornerCuts, DrawerEnd } from './corners.ts';
import { drawerNumbers } from './parts.ts';
import type { DrawerLayout } from './sizes.ts';
import { partAddress } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Joint } from '../types.ts';

const show = markSize;

/** The joints of a drawer with the settings for them (joinery C20). */
export function drawerJoints(piece: Piece, layout: DrawerLayout, corners: DrawerCorners): readonly Joint[] {
  const address = (key: keyof typeof drawerNumbers) => partAddress(piece, drawerNumbers[key]);
  const sides = ['left', 'right'] as const;
  const ends = ['front', 'back'] as const;
  const joint = (kind: string, between: Joint['between'], settings: readonly string[]): Joint => ({
    kind,
    between,
    count: layout.choices.count,
    settings,
  });
  const grooved = layout.choices.bottomStyle === 'captured' ? ends : (['front'] as const);
  return [
    ...ends.flatMap((end) =>
      sides.map((side) =>
        joint(corners[end].kind, [address(side), address(end)], settingsOf(layout, corners[end], end)),
      ),
    ),
    ...[...sides, ...grooved].map((key) =>
      joint('groove', [address(key), address('bottom')], grooveSettings(layout)),
    ),
  ];
}

function grooveSettings({ book }: DrawerLayout): readonly string[] {
  const v = book.value;
  const fromTop = v('h') - v('yg') - v('groove_W');
  return [
    `Face edge (upper edge) to the fence on sides, front and back alike: first fence ${show(fromTop)}, last fence ${show(fromTop + v('groove_W'))} less the kerf, blade ${show(v('gdr'))} high; inside face down.`,
    'Try the bottom itself in a groove cut in an offcut.',
  ];
}

function settingsOf({ book }: DrawerLayout, corner: CornerCuts, end: DrawerEnd): readonly string[] {
  const v = book.value;
  const tf = v(end === 'front' ? 'tf' : 'tback');
  switch (corner.kind) {
    case 'box':
      return [
        `${formatNumber(v(`finger_n_${end}`))} fingers at a pitch of ${show(v(`finger_f_${end}`), 2)}, side begins with a finger at the upper edge.`,
        `Blade or cutter ${show(tf + 0.3)} high for the sides, ${show(v('ts') + 0.3)} for the ${end}; flush the ${show(0.3)} off after gluing.`,
        'Cut two test corners first.',
      ];
    case 'through-dovetail':
    case 'lapped-dovetail':
      return [
        `${formatNumber(v(`dove_n_${end}`))} tails on the side, ${show(v(`tail_end_${end}`))} at the end, ${show(v(`dove_D_${end}`))} deep; half pins ${show(v(`half_pin_${end}`))}, pins ${show(v(`pin_${end}`))}.`,
        `Saw ${formatNumber(v(`dove_angle_${end}`), 2)} degrees off square.`,
        ...(corner.set > 0 ? [`Sockets stop ${show(corner.set)} short of the outer face.`] : []),
      ];
    case 'rebate':
      return [
        `Inner face down: blade ${show(tf - corner.set)} high, fence ${show(v('ts'))} less the kerf to the near side of the blade.`,
        `On end, outer face to the fence: blade ${show(v('ts'))} high, fence ${show(corner.set)}; the waste falls on the free side.`,
      ];
    case 'housing':
      return [
        `Sides paired: trench ${show(tf + 0.2)} wide, ${show(v('housing'))} deep, ${show(v('behind'))} from the back end.`,
      ];
    case 'lock-rebate':
      return lockSettings(tf, v('trench'), v(end === 'front' ? 'tongue' : 'tongue_b'));
    case 'butt':
      return [`Clearance holes ${show(3.8)}, pilot ${show(2.1)} into hard wood, ${show(1.6)} into soft.`];
  }
}

function lockSettings(thickness: number, depth: number, tongue: number): readonly string[] {
  return [
    `Side, inner face down: trench ${show(tongue)} wide, ${show(depth)} deep, its near edge ${show(thickness - tongue)} from the end.`,
    `Front or back, outer face down: shoulder ${show(depth)} (stop to the far side of the blade), blade ${show(thickness - tongue)} high.`,
  ];
}
