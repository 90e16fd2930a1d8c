import { formatNumber, markSize } from '#core/units';
import type { Problem } from '#core/problems';
import { checkMoisture, checkSheetThickness, checkWall, openFindings, type Say } from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';
import { ringPieces, slotFits } from './ring.ts';
import type { SurroundLayout } from './sizes.ts';

const show = markSize;
const widestSegment = 45; // degrees; the grain then runs out at 22.5 (joinery B16)
const depthSlack = 2; // mm of difference in depth that bedding swallows (joinery B1.7)
const thinnestPly = 1; // mm; thinner is veneer
const thinnestVeneer = 0.5; // mm; 0.6 is the usual veneer (both common practice, no source)
const leastTenon = 12; // mm along the joint (joinery B16)

/** Why no surround can be made; empty when one can. */
export function refuseSurround(layout: SurroundLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { book, choices } = layout;
  const v = book.value;
  const stop = (code: string, message: string, remedy: string) =>
    say('stop', code, { message, remedy, source: 'joinery B16' });
  const short = Math.min(v('straight_A'), v('straight_B'));
  if (short <= 0) {
    stop(
      'radius-too-large',
      `Corners of radius ${show(v('r'))} leave ${show(Math.max(0, short))} straight in an aperture ${show(v('A'))} × ${show(v('B'))}.`,
      'Check radius and size of the aperture; a round one needs a ring turned or routed from a sheet.',
    );
    return all();
  }
  if (choices.lining === 'solid') {
    if (choices.depths.length === 0) {
      stop(
        'depth-missing',
        'The depth through deck and lining has not been entered.',
        'Measure it at eight places, or leave the lining out.',
      );
    }
    if (v('r') - v('tl') < 10) {
      stop(
        'lining-does-not-bend',
        `A lining ${show(v('tl'))} thick does not go round a corner of radius ${show(v('r'))}.`,
        'Take a thinner lining, or corner posts of solid timber.',
      );
    }
  }
  if (choices.form !== 'segments') return all();
  const turns = 2 * v('run_out');
  if (turns > widestSegment + 1e-9) {
    const needed = Math.ceil(90 / (widestSegment - (turns - v('alpha'))) - 1e-9);
    stop(
      'segment-short-grain',
      `A segment of ${formatNumber(turns)}°${choices.joint === 'half-lap' ? ' with its lap' : ''} lets the grain run out at ${formatNumber(v('run_out'))}° at its ends: it breaks there.`,
      needed > 0 && Number.isFinite(needed)
        ? `Take ${needed} segments or more in each corner.`
        : 'Make the laps shorter.',
    );
  }
  const cramped = choices.joint === 'half-lap' ? lapsCramped(layout) : slotsCramped(layout);
  if (cramped) stop(...cramped);
  return all();
}

type Stopped = readonly [code: string, message: string, remedy: string];

function slotsCramped(layout: SurroundLayout): Stopped | null {
  const v = layout.book.value;
  const cramped = v('tenon_W') < leastTenon || ringPieces(layout).some((piece) => !slotFits(layout, piece));
  if (!cramped) return null;
  return [
    'tenon-no-room',
    `Tenons ${show(Math.max(0, v('tenon_W')))} wide and ${show(v('d'))} deep find no room in a ring ${show(v('w'))} wide with segments of ${formatNumber(v('alpha'))}°.`,
    'Take a smaller depth, a wider ring, fewer segments, or a ring in one piece.',
  ];
}

/** A lap from both ends must leave whole wood between them. */
function lapsCramped({ book }: SurroundLayout): Stopped | null {
  const v = book.value;
  const short = Math.min(v('straight_A'), v('straight_B'));
  if (v('lambda') < v('alpha') - 5 && 2 * v('lap') < short - 10) return null;
  return [
    'lap-too-long',
    `Laps ${show(v('lap'))} long find no room in segments of ${formatNumber(v('alpha'))}° and straights of ${show(short)}.`,
    'Take shorter laps, or fewer segments.',
  ];
}

/** Findings on a surround that can be made (joinery B16, C0). */
export function checkSurround(
  { book, choices }: SurroundLayout,
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  const v = book.value;
  if (choices.form === 'segments') {
    if (choices.joint === 'half-lap') checkLaps(say, v('T'), choices.stock.ring.kind === 'sheet');
    else {
      const what = choices.joint === 'loose-tenon' ? 'Beside the loose tenons' : 'Beside the splines';
      checkWall(say, what, (v('T') - v('t')) / 2, v('T'));
    }
    if (choices.stock.ring.kind === 'sheet') {
      say('note', 'ring-segments-of-sheet', {
        message: `Segments of ${choices.stock.ring.name} show their plies all round.`,
        remedy: 'Take solid timber, or the ring in one piece.',
        source: 'joinery B16',
      });
    }
  } else {
    say('note', 'ring-wastes-blank', {
      message: `A ring in one piece wastes ${formatNumber(100 * v('waste_share'), 0)} % of its blank ${show(v('ring_W'))} × ${show(v('ring_H'))}.`,
      remedy: 'Lay smaller parts inside it, or build it of straights and segments.',
      source: 'joinery B16',
    });
  }
  checkLining(say, { book, choices });
  checkSheetThickness(say, choices.stock.ring, v('T'), 'Ring');
  checkMoisture(say, settings, choices.stock.ring.kind === 'solid');
  return all();
}

function checkLining(say: Say, { book, choices }: SurroundLayout): void {
  const v = book.value;
  if (choices.lining !== 'solid') return;
  const { depths } = choices;
  const spread = depths.length > 0 ? Math.max(...depths) - Math.min(...depths) : 0;
  if (spread > depthSlack) {
    say('warn', 'depth-varies', {
      message: `The depth varies by ${show(spread)} (${show(Math.min(...depths))} to ${show(Math.max(...depths))}): the lining stands proud where it is least.`,
      remedy: 'Scribe the back edge of the lining to the deck, camber included, after a dry fit.',
      source: 'joinery B16, A11',
    });
  }
  if (depths.length > 0 && depths.length < 8) {
    say('note', 'depth-at-few-places', {
      message: `The depth was measured at ${depths.length} places; eight find the camber.`,
      remedy: 'Measure at the middle of each side and at each corner.',
      source: 'joinery A10, B16',
    });
  }
  if (v('ply_T') < thinnestPly) {
    const veneer = v('ply_T') >= thinnestVeneer;
    say(veneer ? 'note' : 'warn', 'lining-plies-thin', {
      message: `A lining ${show(v('tl'))} thick bends round a radius of ${show(v('r'))} only in ${v('plies')} plies of ${show(v('ply_T'), 2)}${veneer ? ': veneer, glued in one go' : ''}.`,
      remedy: veneer
        ? 'Buy veneer of that thickness, or take solid corners cut from the block.'
        : 'Take a thinner lining, or solid corners cut from the block.',
      source: 'joinery B17',
    });
  }
}

const leastLapped = 12; // mm (joinery C6)

function checkLaps(say: Say, T: number, sheet: boolean): void {
  if (T < leastLapped)
    say('warn', 'lap-thin', {
      message: `Half-laps leave ${show(T / 2)} of a ring ${show(T)} thick; ${show(leastLapped)} is the least thickness for them.`,
      remedy: 'Take a thicker ring, or loose tenons.',
      source: 'joinery C6',
    });
  if (sheet)
    say('warn', 'lap-in-sheet', {
      message: 'A half-lap in plywood loses half its plies.',
      remedy: 'Take solid timber, or loose tenons.',
      source: 'joinery C6',
    });
}
