import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import type { DrawerCorners } from './boards.ts';
import type { DrawerEnd } from './corners.ts';
import type { DrawerLayout } from './sizes.ts';
import { screwLimits } from '../joints/corner.ts';
import { checkWall, openFindings, type Say } from '../piece-findings.ts';

const show = markSize;
const ends: readonly DrawerEnd[] = ['front', 'back'];

/** Findings on the joints of a drawer (joinery B5.8, C0.1 to C0.3, C11, C12, G21). */
export function checkDrawerJoints(layout: DrawerLayout, corners: DrawerCorners): readonly Problem[] {
  const { say, all } = openFindings();
  checkWalls(say, layout);
  for (const end of ends) {
    checkGroove(say, layout, corners, end);
    if (layout.book.has(`tail_base_${end}`)) checkDovetails(say, layout, end);
    if (layout.book.has(`finger_f_${end}`)) checkFingers(say, layout, end);
  }
  if (layout.choices.corner.endsWith('dovetail')) checkDovetailStock(say, layout);
  if (layout.choices.corner === 'butt') checkButt(say, layout);
  return all();
}

function checkWalls(say: Say, { choices, book }: DrawerLayout): void {
  const v = book.value;
  const wall = (where: string, cut: string, of: string) => {
    if (book.has(cut)) checkWall(say, where, v(of) - v(cut), v(of));
  };
  wall('Groove for the bottom in the sides', 'gdr', 'ts');
  wall('Groove for the bottom in the box front', 'gdr', 'tf');
  if (choices.bottomStyle === 'captured') wall('Groove for the bottom in the back', 'gdr', 'tback');
  wall('Groove for the side rail', 'rail_groove_D', 'ts');
  wall('Housing for the back', 'housing', 'ts');
  wall('Trench for the front', 'trench', 'ts');
  if (v('gdr') <= v('ts') / 2 + 1e-9) return;
  say('warn', 'groove-too-deep', {
    message: `The groove is ${show(v('gdr'))} deep in a side ${show(v('ts'))} thick; half is the most.`,
    remedy: `Make it ${show(v('ts') / 2)} or less.`,
    source: 'joinery B5',
  });
}

function checkGroove(say: Say, { book }: DrawerLayout, corners: DrawerCorners, end: DrawerEnd): void {
  if (!corners[end].clash) return;
  const kind = corners[end].kind === 'box' ? 'finger' : 'tail';
  say('warn', 'groove-across-joint', {
    message: `At the ${end} the bottom's groove, ${show(book.value('yg'))} above the lower edge, does not lie inside one ${kind}: stop it in both pieces, or it shows.`,
    remedy: `Move the groove, so that it lies inside one ${kind}; the drawings show it stopped.`,
    source: kind === 'finger' ? 'joinery C11' : 'joinery C13',
  });
}

function checkDovetails(say: Say, { book }: DrawerLayout, end: DrawerEnd): void {
  const base = book.value(`tail_base_${end}`);
  if (base >= 6) return;
  say('stop', 'tail-too-narrow', {
    message: `The tails at the ${end} are ${show(base)} wide at their base; under ${show(6)} they break off.`,
    remedy: 'Take fewer tails, or a box joint.',
    source: 'joinery C12',
  });
}

function checkFingers(say: Say, { book, choices }: DrawerLayout, end: DrawerEnd): void {
  const pitch = book.value(`finger_f_${end}`);
  const thickness = Math.max(book.value('ts'), book.value(end === 'front' ? 'tf' : 'tback'));
  if (pitch < 4) {
    say('stop', 'fingers-too-narrow', {
      message: `Fingers at the ${end} would be ${show(pitch)} wide; no cutter for joints is narrower than ${show(4)}.`,
      remedy: 'Take another corner joint, or a higher drawer.',
      source: 'joinery C11, C19',
    });
    return;
  }
  if (choices.stock.box.kind === 'sheet' || thickness <= 2 * pitch) return;
  say('stop', 'finger-short-grain', {
    message: `Fingers at the ${end} are ${show(pitch)} wide in wood ${show(thickness)} thick.`,
    remedy: 'Take thinner wood or another corner joint.',
    source: 'joinery C0.3, C11',
  });
}

function checkDovetailStock(say: Say, { choices, book }: DrawerLayout): void {
  const { box } = choices.stock;
  if (box.kind === 'sheet') {
    say('stop', 'dovetail-in-sheet', {
      message: `Dovetails in ${box.name}: the edges of the plies crumble.`,
      remedy: 'Use a box joint.',
      source: 'joinery B5.8, C12, G21',
    });
  }
  const thinnest = Math.min(book.value('ts'), book.value('tf'), book.value('tback'));
  if (thinnest >= 8) return;
  say('warn', 'dovetail-too-thin', {
    message: `Dovetails in wood ${show(thinnest)} thick; under ${show(8)} they have no hold.`,
    remedy: 'Take thicker wood or a box joint.',
    source: 'joinery C12',
  });
}

function checkButt(say: Say, { choices, book }: DrawerLayout): void {
  const sheet = choices.stock.box.kind === 'sheet';
  const thinnest = Math.min(book.value('tf'), book.value('tback'));
  const screw = screwLimits(3.5, book.value('ts'), { depth: 100, grain: 'end', hard: true });
  if (sheet && thinnest >= 15) return;
  say('warn', 'screw-into-end', {
    message: sheet
      ? `Weak joint: screws into the edge of a sheet ${show(thinnest)} thick; under ${show(15)} they split it.`
      : `Weak joint: screws into end grain hold three quarters or less; they want ${show(screw.least - book.value('ts'))} in it.`,
    remedy: 'Glue with epoxy and count the screws as clamps, or use a box joint or lock rebate.',
    source: 'joinery C0.1, C1, G21',
  });
}
