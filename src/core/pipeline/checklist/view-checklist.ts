import { drawReadingSketch, type ChecklistBlock, type ChecklistRow, type Drawing } from '#core/drawing';
import { methods, type Method } from '#core/measuring';
import { formatLength, formatNumber, type LengthSystem } from '#core/units';

import type { VisitBlock, VisitChecklist, VisitLine } from './types.ts';

/** Height of a sketch beside its line, mm: its letters stay as large as they are. */
const printedSketch = 13;

/** A checklist as it is printed: every line with its sketch, its blanks and what is known already. */
export function viewChecklist(list: VisitChecklist, units: LengthSystem = 'mm'): readonly ChecklistBlock[] {
  return list.blocks.map((block) => ({
    title: block.title,
    subtitle: subtitleOf(block),
    rows: block.lines.map((line) => viewLine(line, block, units)),
  }));
}

function subtitleOf({ seenFrom, lines }: VisitBlock): string {
  const open = lines.filter(({ status }) => status !== 'done').length;
  const left = open === 0 ? 'all done' : `${open} of ${lines.length} left`;
  return seenFrom === undefined ? left : `seen ${seenFrom} · ${left}`;
}

function viewLine(line: VisitLine, block: VisitBlock, units: LengthSystem): ChecklistRow {
  const { text, where, blanks, unit, method, status, values } = line;
  return {
    text,
    where,
    note: [unitWord(unit, units), wordMethod(method)].filter((word) => word !== '').join(' · '),
    blanks,
    again: line.reading !== undefined || blanks > 1,
    isDone: status === 'done',
    values: values.map((value) =>
      unit === 'mm' && units === 'inch'
        ? formatLength(value, { system: 'inch', step: 1 / 32 })
        : formatNumber(value, 1),
    ),
    sketch: sketchLine(line, block, printedSketch),
  };
}

function unitWord(unit: VisitLine['unit'], units: LengthSystem): string {
  return unit === 'mm' && units === 'inch' ? 'inches' : unit;
}

function wordMethod(method: Method | undefined): string {
  return method === undefined ? '' : methods[method].words;
}

/** A sketch of where the reading of a line is taken, mm high; null for a line without one. */
export function sketchLine({ reading }: VisitLine, { ring }: VisitBlock, height = 34): Drawing | null {
  return reading ? drawReadingSketch(reading, height, ring) : null;
}
