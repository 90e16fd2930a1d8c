import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import type { FrontCell } from './cells.ts';
import type { FrontSet } from './sets.ts';
import type { FrontLayout } from './sizes.ts';
import {
  checkCrossGrain,
  checkMoisture,
  checkSheetThickness,
  checkWideSolid,
  openFindings,
  type Say,
} from '../piece-findings.ts';
import { leastFinishedGap, scribe as scribeRule } from '../rules.ts';
import type { JoinerySettings } from '../piece-types.ts';
import type { Part } from '../types.ts';

const show = markSize;

/** Says which size came out at nothing; empty when the front can be made. */
export function checkFrontPossible({ book, choices }: FrontLayout): readonly Problem[] {
  const sizes = /^(W|H|wo|total|h\d+|g\d+|f\d+|front_w|rail_L|inner_L\d+|reach_.)$/;
  const bad = book
    .steps()
    .find((step) => sizes.test(step.name) && !(step.value > 0 && Number.isFinite(step.value)));
  if (!bad) return [];
  const size = Number.isFinite(bad.value) ? show(bad.value) : 'nothing';
  const overall = [book.value('W'), book.value('H')]
    .map((v) => (Number.isFinite(v) ? show(v) : '?'))
    .join(' × ');
  return [
    {
      severity: 'stop',
      code: 'front-impossible',
      message: `No front fits: ${bad.label} comes out at ${size} in ${overall} with ${choices.columns} × ${choices.rows} openings.`,
      remedy: 'Take fewer openings, narrower members or a smaller step.',
      source: 'joinery B6',
    },
  ];
}

/** Findings on the form of a cabinet front (joinery B6, 0.7, D3, G6, G16). */
export function checkFront(
  layout: FrontLayout,
  made: {
    readonly parts: readonly Part[];
    readonly cells: readonly FrontCell[];
    readonly sets: readonly FrontSet[];
  },
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  checkGaps(say, layout, settings);
  checkLift(say, layout, made.cells);
  checkHeights(say, layout);
  checkRoom(say, layout);
  checkSets(say, layout, made.sets);
  checkOpening(say, layout);
  checkSheetThickness(say, layout.choices.fronted, layout.book.value('tff'), 'Fronts');
  checkWideSolid(say, made.parts);
  checkCrossGrain(
    say,
    made.parts.filter(({ id, kind }) => kind === 'solid' && made.cells.some((cell) => cell.id === id)),
  );
  checkMoisture(
    say,
    settings,
    made.parts.some((part) => part.kind === 'solid'),
  );
  return all();
}

function checkGaps(say: Say, { choices, book }: FrontLayout, settings: JoinerySettings): void {
  const v = book.value;
  const film = 2 * settings.film;
  const apart = [
    ...(choices.rows > 1 ? [{ where: 'one above the other', gap: v('gap'), member: v('wm') }] : []),
    ...(choices.columns > 1 ? [{ where: 'side by side', gap: v('gap_row'), member: v('ws') }] : []),
  ];
  if (choices.fronts === 'inset') {
    if (v('g') - film < leastFinishedGap) noRoom(say, v('g'), film);
    return;
  }
  for (const { where, gap, member } of apart) {
    if (gap < choices.gap) {
      say('stop', 'overlay-too-wide', {
        message: `Fronts ${where} leave ${show(gap)} between them; ${show(choices.gap)} is the least. Member ${show(member)}, overlay ${show(v('o'))}.`,
        remedy: `Make the overlay ${show((member - choices.gap) / 2)} or less, or the member wider.`,
        source: 'joinery B6',
      });
    } else if (gap - film < leastFinishedGap) noRoom(say, gap, film);
  }
  const narrowest = Math.min(v('ws'), v('wt'), v('wb'));
  if (v('o') <= narrowest) return;
  say('warn', 'overlay-past-frame', {
    message: `Fronts overlay by ${show(v('o'))} and stand past the frame, whose narrowest outer member is ${show(narrowest)}.`,
    remedy: 'Make the overlay smaller.',
    source: 'joinery B6',
  });
}

/** An opening no hand goes through (common practice, no source). */
const handRoom = { width: 80, height: 40 } as const;

function checkRoom(say: Say, { choices, book }: FrontLayout): void {
  const low = Math.min(...Array.from({ length: choices.rows }, (_, i) => book.value(`h${i + 1}`)));
  const wide = book.value('wo');
  if (wide >= handRoom.width && low >= handRoom.height) return;
  say('warn', 'opening-too-small', {
    message: `Openings of ${show(wide)} × ${show(low)} are too small to reach through: a hand wants ${show(handRoom.width)} × ${show(handRoom.height)}.`,
    remedy: 'Take fewer openings, or check the width and height entered.',
    source: 'common practice',
  });
}

function noRoom(say: Say, gap: number, film: number): void {
  say('stop', 'no-room-once-finished', {
    message: `No room to open once varnished: gap ${show(gap)}, film ${show(film)}, left ${show(gap - film)} of ${show(leastFinishedGap)}.`,
    remedy: `Make the gap ${show(leastFinishedGap + film)} or more.`,
    source: 'joinery 0.7, G6',
  });
}

function checkLift(say: Say, { choices, book }: FrontLayout, cells: readonly FrontCell[]): void {
  const v = book.value;
  const drawers = cells.filter((cell) => cell.cell === 'drawer');
  if (choices.notch <= 0 || drawers.length === 0) return;
  const needed = v('clear_above_needed');
  const inset = choices.fronts === 'inset';
  const blocked = drawers.filter(
    (drawer) => inset || cells.some((cell) => cell.row === drawer.row - 1 && cell.column === drawer.column),
  );
  const room = inset ? v('g') : choices.rows > 1 ? v('gap') : Infinity;
  if (blocked.length > 0 && room < needed) {
    say('stop', 'lift-blocked', {
      about: blocked[0]?.id ?? '',
      message: `Drawer cannot be lifted ${show(choices.notch)}: ${inset ? 'the frame' : 'the front'} above is in the way, ${show(room)} clear of ${show(needed)}. It concerns ${blocked.map((cell) => cell.id).join(', ')}.`,
      remedy: inset
        ? 'Let the fronts lie over the frame, or hold the drawers with latches (lift 0).'
        : 'Make the overlay smaller or the rails wider, or hold the drawers with latches (lift 0).',
      source: 'joinery B5.1, B6, G16',
    });
  }
  if (inset || !drawers.some((drawer) => drawer.row === 1)) return;
  say('note', 'lift-needs-room', {
    message: `The top drawer fronts rise when lifted: keep ${show(needed)} clear above them.`,
    remedy: 'Check the lip of the counter.',
    source: 'joinery B5.1, G16',
  });
}

function checkHeights(say: Say, { choices, book }: FrontLayout): void {
  const { rows, heights } = choices;
  if (choices.grading !== 'given') return;
  if (heights.length < rows - 1) {
    say('stop', 'heights-missing', {
      message: `${heights.length} heights were entered for ${rows} openings; the bottom one takes what is left, so ${rows - 1} are needed.`,
      remedy: 'Enter the heights from the top.',
      source: 'joinery B6',
    });
    return;
  }
  const last = heights[rows - 1];
  const left = book.value(`h${rows}`);
  if (heights.length > rows || (last !== undefined && Math.abs(last - left) > 0.5)) {
    say('warn', 'heights-do-not-add', {
      message: `The heights entered come to ${show(heights.reduce((sum, h) => sum + h, 0))} in ${heights.length}; ${rows} openings share ${show(book.value('total'))}. The bottom one becomes ${show(left)}.`,
      remedy: 'Change a height, or accept what is left for the bottom one.',
      source: 'joinery B6, G10',
    });
  }
}

function checkSets(say: Say, { choices, book }: FrontLayout, sets: readonly FrontSet[]): void {
  if (choices.continuous === 'none') return;
  if (sets.length === 0) {
    say('warn', 'no-set', {
      message: 'The figure is to run through, but no two fronts follow each other along a strip.',
      remedy: 'Close more openings, or leave the figure out.',
      source: 'joinery B6',
    });
  }
  for (const set of sets) {
    const apart = book.value(set.run === 'stack' ? 'gap' : 'gap_row');
    if (choices.continuous === 'true' && apart < choices.kerf) {
      say('stop', 'gap-below-kerf', {
        message: `${set.id}: the fronts are ${show(apart)} apart, less than the kerf of ${show(choices.kerf)}: no saw cuts them out of one strip truly.`,
        remedy: 'Choose the close cut, or a thinner blade.',
        source: 'joinery B6',
      });
    }
    if (choices.continuous !== 'tight' || apart - choices.kerf <= 6) continue;
    say('note', 'figure-slips', {
      message: `${set.id}: cut close, the figure slips by ${show(apart - choices.kerf)} at each joint.`,
      remedy: 'With strong figure cut the strip truly.',
      source: 'joinery B6',
    });
  }
}

function checkOpening(say: Say, { book, choices, opening }: FrontLayout): void {
  if (!opening) return;
  const v = book.value;
  const off = Math.abs(v('diagonals'));
  if (off > 1) {
    say('warn', 'opening-out-of-square', {
      message: `The diagonals of ${opening.name} differ by ${show(off)}: the frame is made square and upright within it.`,
      remedy: 'Fit the frame first, then measure each of its openings and cut every front to its own.',
      source: 'joinery B6',
    });
  }
  const left = v('taper') + scribeRule.margin;
  if (choices.scribe > 0 && choices.scribe < left) {
    say('warn', 'scribe-too-small', {
      message: `${show(choices.scribe)} is left for scribing, but the sides of ${opening.name} stray by ${show(v('taper'))}.`,
      remedy:
        left > scribeRule.most
          ? `It would take ${show(left)}: make a template first.`
          : `Leave ${show(Math.max(scribeRule.least, Math.ceil(left)))}.`,
      source: 'joinery A11, G25',
    });
  }
  if (choices.scribe > 0 || v('taper') <= 2) return;
  say('note', 'gap-tapers', {
    message: `Beside the frame the gap grows from ${show(choices.fittingGap)} to ${show(choices.fittingGap + v('taper'))}.`,
    remedy: 'Leave wood on for scribing, or cover the gap.',
    source: 'joinery A11, B6',
  });
}
