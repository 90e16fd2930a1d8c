import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { railMember, railsOf } from './joinery.ts';
import type { RailPlace } from './joint-sizes.ts';
import type { FrontLayout } from './sizes.ts';
import { screwLimits } from '../joints/corner.ts';
import { checkWall, openFindings, type Say } from '../piece-findings.ts';

const show = markSize;

/** Findings on the joints of a face frame (joinery C0 to C6, G21). */
export function checkFrontJoints(layout: FrontLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { joint } = layout.choices;
  if (joint === 'loose-tenon' || joint === 'stub-tenon') checkTenons(say, layout);
  if (joint === 'half-lap') checkLaps(say, layout);
  if (joint === 'dowel') checkDowels(say, layout);
  if (joint === 'butt') checkButts(say, layout);
  if (joint !== 'half-lap' && joint !== 'butt') checkReach(say, layout);
  return all();
}

function checkTenons(say: Say, { choices, book }: FrontLayout): void {
  const v = book.value;
  checkWall(say, 'Beside the mortises', (v('T') - v('tenon_T')) / 2, v('T'));
  if (choices.joint !== 'stub-tenon' || v('reach_s') >= 3 * v('tenon_T')) return;
  say('warn', 'tenon-short', {
    message: `Stub tenons ${show(v('reach_s'))} long and ${show(v('tenon_T'))} thick; three times the thickness is the least that holds well.`,
    remedy: `Make them ${show(3 * v('tenon_T'))} long, or the stiles wider.`,
    source: 'joinery C4',
  });
}

/** What stays between the bottom of a mortise and the outer edge, or the mortise from the other edge. */
function checkReach(say: Say, { choices, book }: FrontLayout): void {
  const v = book.value;
  const well = choices.joint === 'loose-tenon' ? 0 : choices.joint === 'dowel' ? 1 : 1.5;
  checkWall(say, 'Stile behind the joint', v('ws') - v('reach_s') - well, v('T'));
  if (!book.has('reach_t')) return;
  checkWall(say, 'Top rail behind the joint', v('wt') - v('reach_t') - well, v('T'));
  checkWall(say, 'Bottom rail behind the joint', v('wb') - v('reach_b') - well, v('T'));
  if (!book.has('reach_m') || v('reach_m') >= 6) return;
  say('warn', 'joint-shallow', {
    message: `Inner stiles reach ${show(v('reach_m'))} into rails ${show(v('wm'))} wide: joints from both edges leave no more.`,
    remedy: 'Make the rails between wider, or choose half-laps.',
    source: 'joinery C4, C0.2',
  });
}

function checkLaps(say: Say, { choices, book }: FrontLayout): void {
  if (book.value('T') < 12) {
    say('warn', 'lap-thin', {
      message: `Half-laps in wood ${show(book.value('T'))} thick; under ${show(12)} the halves are weak.`,
      remedy: 'Take thicker wood or loose tenons.',
      source: 'joinery C6',
    });
  }
  if (choices.frame.kind !== 'sheet') return;
  say('warn', 'lap-in-sheet', {
    message: `A lap in ${choices.frame.name} loses half its plies.`,
    remedy: 'Back the joint, or make the frame of solid timber.',
    source: 'joinery C6, C0',
  });
}

function checkDowels(say: Say, layout: FrontLayout): void {
  const diameter = layout.book.value('dowel_D');
  const places: readonly RailPlace[] = [...new Set(railsOf(layout).map((rail) => rail.place))];
  for (const place of places) {
    const { width } = railMember(layout, place);
    if (width >= 4.5 * diameter) continue;
    say('warn', 'dowels-crowded', {
      message: `Two dowels of ${show(diameter)} in a rail ${show(width)} wide stand nearer than ${show(1.5 * diameter)} to its edges.`,
      remedy: 'Choose loose tenons, or a wider rail.',
      source: 'joinery C2',
    });
  }
}

function checkButts(say: Say, { choices }: FrontLayout): void {
  const screw = screwLimits(4, 0, { depth: 100, grain: 'end', hard: true });
  say('warn', 'screw-into-end', {
    message: `Weak joint: pocket screws in ${choices.frame.kind === 'sheet' ? 'sheet edges' : 'end grain'} hold three quarters or less; they want ${show(screw.least)} in the wood.`,
    remedy: 'Glue as well, or choose loose tenons.',
    source: 'joinery C0.1, C1, G21',
  });
}
