import type { DrawnFile, DrawnPath } from '#core/pipeline';
import { fail, succeed, type Problem, type Result } from '#core/problems';
import DxfParser, { type IDxf } from 'dxf-parser';

import { readDrawnEntity, type Placing } from './drawn-entity.ts';
import { readGroups } from './read.ts';

/** Larger files than this are no outline, characters. */
const largest = 20_000_000;

/** mm for one unit, by the code of $INSUNITS. Source: published DXF reference, header variables. */
const unitCodes: Readonly<Record<number, number>> = { 1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000, 14: 100 };

const atHome: Placing = { scaleX: 1, scaleY: 1, turn: 0, at: { x: 0, y: 0 }, depth: 0 };

/**
 * The lines of a DXF text with their layers, in its own unit, blocks placed; splines and ellipses as chords within 0.02 mm.
 * Fails when it is no DXF text.
 */
export function readDxfDrawing(text: string): Result<DrawnFile> {
  if (text.length > largest)
    return fail(
      broken(`The file is ${Math.round(text.length / 1e6)} MB large, more than can be an outline.`),
    );
  const { broken: line } = readGroups(text);
  if (line !== null)
    return fail(
      broken(`Line ${line} of the DXF file is no pair of code and value: it is damaged, or binary.`),
    );
  const file = parse(text);
  if (file === null) return fail(broken('The DXF file is damaged, or of a kind that cannot be read.'));
  const code = file.header?.['$INSUNITS'];
  const unit = typeof code === 'number' ? (unitCodes[code] ?? null) : null;
  const skipped = new Map<string, number>();
  const context = { blocks: file.blocks ?? {}, tolerance: 0.02 / (unit ?? 1), skipped };
  const paths = (file.entities ?? []).flatMap((entity) => readDrawnEntity(entity, atHome, context));
  return succeed({ paths: paths.filter(isFinitePath), unit, findings: tellSkipped(skipped) });
}

/** The reader throws on what it does not understand; null then. */
function parse(text: string): Partial<IDxf> | null {
  try {
    return new DxfParser().parseSync(text);
  } catch {
    return null;
  }
}

function isFinitePath({ points }: DrawnPath): boolean {
  return points.length > 1 && points.every(({ x, y, bulge = 0 }) => Number.isFinite(x + y + bulge));
}

/** Texts and sizes are no lines; what else was left out is told. */
function tellSkipped(skipped: ReadonlyMap<string, number>): readonly Problem[] {
  return [...skipped].map(([type, count]) => ({
    severity: 'note',
    code: 'dxf-entity-skipped',
    message: `${count} of the kind ${type} in the DXF file ${count === 1 ? 'was' : 'were'} left out.`,
    remedy: 'Draw the outline with lines, arcs, polylines, circles, ellipses or splines.',
  }));
}

function broken(message: string): Problem {
  return {
    severity: 'stop',
    code: 'dxf-unreadable',
    message,
    remedy: 'Save the drawing again as a text DXF file.',
  };
}
