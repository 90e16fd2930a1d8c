import { markSize } from '#core/units';
import type { Problem } from '#core/problems';
import { openFindings, type Say } from '../piece-findings.ts';
import { hasStrips } from './parts.ts';
import type { DividersLayout } from './sizes.ts';
import { hasWalls, wallFindings } from './walls.ts';

const show = markSize;
const leastCell = 15; // mm; a shorter tongue between two slots breaks off (joinery B1.10, C0.3)
const toLift = 40; // above a bin, and
const toPull = 50; // in front of it (joinery B15)

/** Why no dividers can be made; empty when they can. */
export function refuseDividers(layout: DividersLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { book, choices, columns, rows, atX, atZ } = layout;
  const v = book.value;
  const stop = (code: string, message: string, remedy: string) =>
    say('stop', code, { message, remedy, source: 'joinery B15' });
  const inside = `${show(v('in_x'))} × ${show(v('in_z'))}`;
  if (columns * rows === 0) {
    stop(
      'bin-does-not-fit',
      `A bin ${show(v('bl'))} × ${show(v('bs'))} with ${show(v('c'))} of room does not go into ${inside}.`,
      'Take smaller bins, or turn them.',
    );
    return all();
  }
  if (atX.length + atZ.length === 0 && !hasStrips(layout) && !hasWalls(layout)) {
    stop('nothing-to-divide', `One cell fills ${inside}: there is nothing to divide.`, 'Ask for more cells.');
  }
  const least = Math.min(v('cell_x'), v('cell_z'));
  if (choices.form === 'cells' && least < leastCell) {
    stop(
      'cell-too-small',
      `Cells of ${show(v('cell_x'))} × ${show(v('cell_z'))} leave too little wood between the slots; ${leastCell} is the least.`,
      'Ask for fewer cells.',
    );
  }
  return all();
}

/** Findings on dividers that can be made (joinery B15). */
export function checkDividers(layout: DividersLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { book, choices } = layout;
  if (choices.form === 'bins') checkBins(say, layout);
  if (book.value('t') < 5 || book.value('t') > 9) {
    say('note', 'divider-thickness', {
      message: `Dividers ${show(book.value('t'))} thick; ${show(5)} to ${show(9)} is usual.`,
      remedy: 'Thinner ones bulge, thicker ones eat room.',
      source: 'joinery B15',
    });
  }
  if (choices.walls === 'rebate' && book.value('t') - book.value('lip') < book.value('t') / 3)
    say('warn', 'rebate-too-shallow', {
      message: `A lip of ${show(book.value('lip'))} leaves a rebate ${show(book.value('t') - book.value('lip'))} deep in walls ${show(book.value('t'))} thick: little to glue.`,
      remedy: 'Take box joints, or a thicker sheet.',
      source: 'joinery C8',
    });
  return [...all(), ...wallFindings(layout)];
}

function checkBins(say: Say, layout: DividersLayout): void {
  const { book, choices, columns, rows } = layout;
  const v = book.value;
  const left = [v('left_x'), v('left_z')].map((each) => show(each));
  say('note', 'bins-and-rest', {
    message: `${columns * rows} bins go in, ${columns} across and ${rows} deep; ${left[0]} are left over across, ${left[1]} front to back.`,
    remedy: 'Try the other modules, or use the rest for long things.',
    source: 'joinery B15',
  });
  if (!choices.given.has('binLength') || !choices.given.has('binWidth')) {
    say('warn', 'bin-not-measured', {
      message: `The bin is reckoned at ${show(v('bl'))} × ${show(v('bs'))}; real rims are up to ${show(3)} off their module.`,
      remedy: 'Measure the rim of the bins you have and enter it.',
      source: 'joinery B15',
    });
  }
  if (choices.strips && !hasStrips(layout)) {
    say('warn', 'strip-no-room', {
      message: `Strips of ${show(v('strip'))} find ${show(v('strip_room'))} of room beside the base of a bin; they are left out.`,
      remedy: 'Glue thinner ones in, or leave more room for the bins.',
      source: 'joinery B15',
    });
  }
  const { headroom, frontRoom } = choices;
  const liftable = headroom === undefined || headroom >= v('bh') + toLift;
  const pullable = frontRoom === undefined || frontRoom >= v('bz') + toPull;
  const checked = headroom !== undefined || frontRoom !== undefined;
  if (!checked || (headroom !== undefined && liftable) || (frontRoom !== undefined && pullable)) return;
  say('stop', 'bin-does-not-come-out', {
    message: `A bin does not come out: lifting it wants ${show(v('bh') + toLift)} of height${headroom === undefined ? '' : `, ${show(headroom)} is free`}; pulling it wants ${show(v('bz') + toPull)} in front${frontRoom === undefined ? '' : `, ${show(frontRoom)} is free`}.`,
    remedy: 'Take lower or shorter bins, or a front that drops.',
    source: 'joinery B15',
  });
}
