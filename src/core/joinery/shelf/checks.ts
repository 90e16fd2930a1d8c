import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import { heightRange } from '../hull/hull.ts';
import {
  checkMoisture,
  checkSheetThickness,
  checkWideSolid,
  openFindings,
  type Say,
} from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';
import type { Part } from '../types.ts';
import { fiddleRebate } from './fiddle.ts';
import type { ShelfLayout } from './sizes.ts';

const show = markSize;
const liftRoom = 15; // mm above an item to lift it over the fiddle (joinery B8.3)

/** Why no shelf can be made; empty when one can. */
export function refuseShelf({ outline, choices }: ShelfLayout): readonly Problem[] {
  const { say, all } = openFindings();
  if (outline.length === 0)
    say('stop', 'clearance-leaves-nothing', {
      message: `A clearance of ${show(choices.clearance)} and the fiddle leave nothing of the shelf at one of its sides.`,
      remedy: 'Take less clearance.',
      source: 'joinery B8',
    });
  const { plan, height, thickness } = choices;
  if (plan.kind !== 'hull') return all();
  const [low, high] = heightRange(plan.hull);
  if (height < low - 30 || height + thickness > high + 30)
    say('stop', 'hull-not-measured-there', {
      message: `The shelf lies at ${show(height)}, but the hull was measured from ${show(low)} to ${show(high)}.`,
      remedy: 'Measure the hull at its height, or set it lower.',
      source: 'joinery A10, B8',
    });
  return all();
}

/** Findings on the form of a shelf (joinery B8, D3). */
export function checkShelf(
  layout: ShelfLayout,
  parts: readonly Part[],
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  const { choices, book } = layout;
  checkSag(say, layout);
  checkTipping(say, layout);
  const { itemHeight, room, plan } = choices;
  const lift = (itemHeight ?? 0) + (choices.fiddle === 'none' ? 0 : book.value('f')) + liftRoom;
  if (itemHeight !== undefined && room !== undefined && room < lift)
    say('warn', 'item-cannot-be-lifted', {
      message: `Above the shelf there are ${show(room)}; an item ${show(itemHeight)} high lifted over the fiddle wants ${show(lift)}.`,
      remedy: 'Set the shelf lower, or make the fiddle lower or loose.',
      source: 'joinery B8.3',
    });
  if (plan.kind !== 'size' && choices.backHeld === 'cleat')
    say('note', 'back-on-tabs', {
      message: 'A straight cleat does not follow its back: it is held by bonded tabs there.',
      remedy: `Bond two tabs or more, ${show(300)} apart at the most.`,
      source: 'joinery B7, common practice',
    });
  if (plan.kind === 'outline' && choices.endFiddles !== 'none')
    say('note', 'no-end-fiddles', {
      message: 'The ends of an outline are walls: no fiddles are made there.',
      remedy: 'Enter length and depth instead where an end is open.',
      source: 'joinery B8',
    });
  checkSheetThickness(say, choices.stock.shelf, choices.thickness, 'Shelf');
  checkWideSolid(say, parts);
  checkMoisture(
    say,
    settings,
    parts.some(({ kind }) => kind === 'solid'),
  );
  return [...all(), ...(fiddleRebate(layout)?.findings ?? [])];
}

/** B8.1: the front half on its fiddle and the rear half held; else all of it on its ends. */
function checkSag(say: Say, { choices, book }: ShelfLayout): void {
  const v = book.value;
  const carried = choices.fiddle !== 'none' && choices.backHeld !== 'no';
  const sag = carried ? 1.5 * v('sag_front') : v('long_term');
  const limit = v('limit');
  if (sag <= limit) return;
  const thicker = v('T') * Math.cbrt(v('long_term') / limit);
  const higher = carried ? Math.cbrt(sag / limit) * v('fiddle_W') : 0;
  say('warn', 'shelf-sags', {
    message: `The shelf will sag ${show(sag)} in time under ${formatNumber(choices.load)} kg; the eye sees ${show(limit)}.`,
    remedy: carried
      ? `Make the fiddle ${show(Math.ceil(higher - (choices.fiddle === 'top' ? 0 : v('T'))))} high, or divide the span.`
      : `Take it ${show(Math.ceil(thicker))} thick, or glue a fiddle to its front and hold its back.`,
    source: 'joinery B8.1, G14',
  });
}

/** B8.2: an item tips over a fiddle that is too low. */
function checkTipping(say: Say, { choices, book }: ShelfLayout): void {
  if (!book.has('f_needed')) return;
  const height = choices.fiddle === 'none' ? 0 : book.value('f');
  const needed = book.value('f_needed');
  if (height >= needed) return;
  say('warn', 'fiddle-too-low', {
    message: `An item ${show(choices.itemWidth ?? 0)} wide with its weight ${show(choices.itemCentre ?? 0)} up tips over a fiddle of ${show(height)} at ${formatNumber(choices.angle)}°; it takes ${show(needed)}.`,
    remedy: `Make the fiddle ${show(Math.ceil(needed))} high, or add a bar above it.`,
    source: 'joinery B8.2, G15',
  });
}
