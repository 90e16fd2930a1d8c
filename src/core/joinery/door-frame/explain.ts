import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import type { FrameLayout } from './layout.ts';

const show = markSize;

/** What was chosen where the choice was left open, and what it asks of the bulkhead and the door. */
export function explainFit({ book, mode, choices }: FrameLayout): readonly Problem[] {
  const findings: Problem[] = [];
  const [gap, hidden] = [book.value(mode === 'square' ? 'G_max' : 'G_max_square'), book.value('capacity')];
  if (choices.mode === 'auto') {
    const square = `The frame is square: its largest gap, ${show(gap)}, is within the ${show(hidden)} that the covers hide.`;
    const fitted = `The frame follows the opening: square it would leave a gap of ${show(gap)}, the covers hide ${show(hidden)}.`;
    findings.push({
      severity: 'note',
      code: 'fit-chosen',
      message: mode === 'square' ? square : fitted,
      remedy: 'Choose square or fitted yourself to have it otherwise.',
      source: 'joinery B1, mode',
    });
  }
  const corners = (['BL', 'BR', 'TR', 'TL'] as const).map((at) => ({ at, angle: angleAt(book, at) }));
  const off =
    Math.max(...corners.map(({ angle }) => Math.abs(Math.cos((angle * Math.PI) / 180)))) * book.value('Hc');
  if (mode === 'fitted' && off > 1) {
    const angles = corners.map(({ at, angle }) => `${at} ${formatNumber(angle)}`).join(', ');
    findings.push({
      severity: 'warn',
      code: 'door-not-square',
      message: `The clear opening is no rectangle: ${show(book.value('Wc_head'))} wide at the head, ${show(book.value('Wc_foot'))} at the foot, ${show(book.value('Hc_left'))} high on the left, ${show(book.value('Hc_right'))} on the right; corners ${angles} degrees.`,
      remedy: 'Cut the door to the opening as it stands.',
      source: 'joinery B1, F12',
    });
  }
  if (choices.corner === 'housing-over') {
    findings.push({
      severity: 'warn',
      code: 'bulkhead-to-notch',
      message: `The head runs ${show(choices.horn)} past each jamb: ${show(book.value('head_L'))} in all, wider than the opening.`,
      remedy: 'Notch the bulkhead for it where that is allowed; else take the rebate or the tongue.',
      source: 'joinery B1, housing over',
    });
  }
  return findings;
}

function angleAt(book: FrameLayout['book'], corner: string): number {
  return book.has(`alpha_${corner}`) ? book.value(`alpha_${corner}`) : 90;
}
