import { carcaseKind } from '../carcase/kind.ts';
import { drawerKind } from '../drawer/kind.ts';
import type { DrawerParameters } from '../drawer/types.ts';
import { flatDoorKind } from '../flat-door/kind.ts';
import { countertopKind } from '../countertop/kind.ts';
import { leastDepth } from '../hull/back-edge.ts';
import { makeMember, type Member } from './members.ts';
import { packersOf } from './packers.ts';
import {
  addPut,
  addWork,
  freeBehind,
  frontPlace,
  hasStrips,
  liftOf,
  openingAt,
  sizeBay,
  type RunPlan,
} from './plan.ts';

/** Strips under and over a drawer, high, mm: the drawer's own runners (joinery B5, common practice). */
export const stripHeight = 20;

const sheetOf = ({ context }: RunPlan, id: string, usual: number): number => {
  const material = context.materials.find((one) => one.id === id);
  return material?.kind === 'sheet' ? material.thickness : usual;
};

/** A carcase behind each bay, its shelves under doors and open places. */
export function makeCarcases(plan: RunPlan): readonly Member[] {
  const { choices, hullShape, piece, context } = plan;
  return Array.from({ length: choices.columns }, (_, c) => {
    const n = c + 1;
    const { left, width } = sizeBay(plan, c);
    const column = plan.cells.map((row) => row[c]);
    const parameters = {
      ...{ width, height: plan.of('H'), foot: choices.foot, start: choices.start + left },
      ...{ clearance: choices.clearance, frontThickness: plan.of('T'), load: choices.load },
      obstacles: choices.obstacles,
      shelves: shelvesOf(plan, c),
      cleats: !column.includes('drawer'),
      materials: { panel: choices.materials.panel, cleats: choices.materials.frame },
    };
    const links = { W: `bay_W_${n}`, H: 'front_H', Tfr: 'front_T' };
    const words = { group: 'carcase', title: `Bay ${n}`, prefix: `bay${n}_` };
    return makeMember(
      { piece, context },
      {
        ...{ kind: 'carcase', of: carcaseKind, parameters, ...words, links },
        at: { x: left, y: 0, z: 0 },
        own: ['foot', 'clearance', 'load', 'obstacles'],
        shape: hullShape,
      },
    );
  });
}

/** Undersides of the shelves of a bay, rising: a floor in each door or open place, and a shelf half way up behind a door. */
function shelvesOf(plan: RunPlan, c: number): readonly number[] {
  const { cells, choices } = plan;
  const thick = sheetOf(plan, choices.materials.panel, 12);
  const found = cells.flatMap((row, r) => {
    if (row[c] === 'drawer') return [];
    const { at, height } = openingAt(plan, r, c);
    const overDrawer = cells[r + 1]?.[c] === 'drawer';
    // over a drawer the floor lies on its kickers
    const floor =
      overDrawer && hasStrips(choices)
        ? Math.max(at.y - thick, at.y - plan.of('wm') + stripHeight)
        : at.y - thick;
    const wanted = choices.doorShelf && row[c] === 'door' && height > 300;
    return [floor, ...(wanted ? [at.y + height / 2 - thick / 2] : [])];
  });
  return found.sort((a, b) => a - b).map((y) => Math.round(y * 2) / 2);
}

/** A drawer in each opening meant for one; where another runs above it, that one's runners keep it down. */
export function makeDrawers(plan: RunPlan): readonly Member[] {
  const { choices, cells, piece, context } = plan;
  return cells.flatMap((row, r) =>
    row.flatMap((cell, c): readonly Member[] => {
      if (cell !== 'drawer') return [];
      const { at, width, height } = openingAt(plan, r, c);
      const name = `${r + 1}_${c + 1}`;
      const free = freeBehind(plan, at.x, width, [at.y - Math.max(0, liftOf(choices)), at.y + height]);
      const title = `Drawer ${r + 1}.${c + 1}`;
      addPut(plan, `free_${name}`, free, [
        `clear depth behind opening ${r + 1}.${c + 1}`,
        `joinery B5.7, ${plan.hull.source}`,
      ]);
      const clearDepth = addWork(plan, `deep_${name}`, `down(free_${name}, 1)`, [
        `${title}, clear depth`,
        'joinery B5.7',
      ]);
      const under = cells[r - 1]?.[c] === 'drawer' && hasStrips(choices);
      const parameters = drawerOf(plan, { width, height, clearDepth: Math.max(clearDepth, 1) });
      const links = {
        Wo: 'front_wo',
        Ho: `front_h${r + 1}`,
        tr: 'front_T',
        ...(choices.fronts === 'inset' && { setback: 'front_tff' }),
        ...(clearDepth >= 1 && { Do: `deep_${name}` }),
      };
      const words = { group: 'drawer', title, prefix: `d${name}_` };
      const drawer = makeMember(
        { piece, context },
        {
          ...{ kind: 'drawer', of: drawerKind, parameters, ...words, at, links },
          ...{ own: ['notch', 'corner', 'runner', 'bottomStyle'], ...(under && { without: ['Kicker'] }) },
        },
      );
      return drawer.built.parts.length > 0 ? [...packersOf(plan, r, c), drawer] : [drawer];
    }),
  );
}

/** A drawer for an opening of the run; its front is made with the frame. */
function drawerOf(
  { choices, of }: RunPlan,
  opening: { readonly width: number; readonly height: number; readonly clearDepth: number },
): DrawerParameters {
  const { materials, runner, notch, corner, bottomStyle, fronts } = choices;
  return {
    ...{ openingWidth: opening.width, openingHeight: opening.height, clearDepth: opening.clearDepth },
    ...{ railDepth: of('T'), front: 'none', runner, corner, bottomStyle },
    ...(runner === 'bottom-notch' && { notch }),
    ...(fronts === 'inset' && { setback: of('tff') }),
    materials: { box: materials.box, bottom: materials.bottom, runners: materials.frame },
  };
}

/** Doors with solid lippings over the openings meant for one. */
export function makeDoors(plan: RunPlan): readonly Member[] {
  const { choices, cells, piece, context } = plan;
  if (choices.doors !== 'lipped') return [];
  const { materials } = choices;
  const { out, beyond } = frontPlace(plan);
  return cells.flatMap((row, r) =>
    row.flatMap((cell, c): readonly Member[] => {
      if (cell !== 'door') return [];
      const { at } = openingAt(plan, r, c);
      const parameters = {
        ...({
          width: plan.of('front_w'),
          height: plan.of(`f${r + 1}`),
          hinged: c % 2 === 0 ? 'left' : 'right',
        } as const),
        ...({ lipping: 8, slots: 0, battens: 'none' } as const),
        materials: { core: materials.fronts, lipping: materials.frame },
      };
      const words = { group: 'door', title: `Door ${r + 1}.${c + 1}`, prefix: `door${r + 1}_${c + 1}_` };
      return [
        makeMember(
          { piece, context },
          {
            ...{ kind: 'flat-door', of: flatDoorKind, parameters, ...words },
            links: { Wd: 'front_front_w', Hd: `front_f${r + 1}` },
            at: { x: at.x - beyond, y: at.y - beyond, z: out },
          },
        ),
      ];
    }),
  );
}

/** The top over front and carcases, its back to the hull; none when not wanted. */
export function makeTop(plan: RunPlan, carcases: readonly Member[]): readonly Member[] {
  const { choices, hull, piece, context } = plan;
  if (!choices.top) return [];
  const { width, start, overhang, materials } = choices;
  const level = choices.foot + plan.of('H');
  const thick = sheetOf(plan, materials.top ?? materials.fronts, 18);
  const straight = hull.stations.length < 3;
  const shares = straight ? [1, 0] : [1, 0.75, 0.5, 0.25, 0];
  const reach = { hull, clearance: choices.clearance, before: 0 };
  const back = shares.map((share) => ({
    x: share * plan.of('W'),
    y: Math.floor(leastDepth(reach, start + share * plan.of('W'), [level, level + thick])),
  }));
  const sides = back.length + 2;
  const [left, right] = [
    ['left', 'both'].includes(choices.openEnds),
    ['right', 'both'].includes(choices.openEnds),
  ];
  const wall = 2;
  const from = left ? -overhang : wall;
  const ends = carcases.flatMap(({ at, built }) => [at.x, at.x + built.envelope.max.x]);
  const parameters = {
    corners: [0, 0, plan.of('W'), 0, ...back.flatMap(({ x, y }) => [x, y])],
    openSides: [1, ...(right ? [2] : []), ...(left ? [sides] : [])],
    ...{
      overhang,
      wallGap: wall,
      radius: choices.radius,
      lipping: choices.lipping,
      fiddleHeight: choices.fiddleHeight,
    },
    ...{ cutouts: choices.cutouts, cutoutRadius: choices.cutoutRadius, bodyDepth: choices.bodyDepth },
    supports: [...new Set(ends.map((x) => Math.max(0, Math.min(x - from, width))))].sort((a, b) => a - b),
    railed: true,
    materials: { top: materials.top ?? materials.fronts, lipping: materials.frame },
  };
  return [
    makeMember(
      { piece, context },
      {
        ...{ kind: 'countertop', of: countertopKind, parameters, group: 'top', title: 'Top', prefix: 'top_' },
        at: { x: from, y: level, z: overhang },
        own: ['overhang', 'radius', 'lipping', 'fiddleHeight', 'cutouts', 'cutoutRadius', 'bodyDepth'],
      },
    ),
  ];
}
