import { readFileSync } from 'node:fs';

import { describe, expect, test } from 'vitest';

import { arrangePages, boxOfMark, drawChecklist, roomOnPage } from '#core/drawing';
import { newPiece, pieceKinds } from '#core/joinery';
import { makeOpeningReading } from '#core/measuring';
import { viewChecklist, visitChecklist, type VisitLine } from '#core/pipeline';
import { applyCommand, newProject, type MeasuredOpening, type Project } from '#core/project';
import { readProject } from '#formats/json';

import { samplePhoto, sampleShapes } from '../../support/sample-shapes.ts';

const door: MeasuredOpening = {
  id: 'door',
  name: 'Door opening',
  kind: 'opening',
  seenFrom: 'from the saloon, looking forward',
  readings: [],
};
const oak = { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn' } as const;
const ply = { id: 'ply', kind: 'sheet', name: 'Plywood', thickness: 12 } as const;
const materials = [oak, ply];
const frame = newPiece('door-frame', { id: 'frame', letter: 'A', name: 'Frame', shape: 'door', materials });
const fresh: Project = { ...newProject('Curlew'), materials, shapes: [door], pieces: [frame] };

function linesOf(project: Project, block = 'door'): readonly VisitLine[] {
  return visitChecklist(project).blocks.find(({ id }) => id === block)?.lines ?? [];
}

const keysOf = (project: Project, block = 'door') => linesOf(project, block).map(({ key }) => key);

describe('what is to be measured', () => {
  test('for a door frame it is all that joinery A10 row 1 says, before there is any reading', () => {
    const keys = keysOf(fresh);
    // source: joinery A10, row 1
    const readings = ['wb', 'w13', 'w23', 'wt', 'hl', 'hr', 'd1', 'd2', 'pl', 'pr', 'ls', 'lh'];
    const strings = ['bow-sill', 'bow-right', 'bow-head', 'bow-left', 'twist'];
    const places = ['t1', 't2', 't3', 't4', 't5', 't6'];
    const beside = ['faces', 'clear-depth', 'headroom', 'swing', 'photo'];
    for (const key of [...readings, ...strings, ...places, ...beside]) expect(keys).toContain(key);
    expect(linesOf(fresh).every(({ status }) => status === 'open')).toBe(true);
    const common = visitChecklist(fresh).blocks.filter(({ kind }) => kind === 'begin' || kind === 'leave');
    expect(common.flatMap(({ lines }) => lines.map(({ key }) => key))).toEqual([
      ...['trim', 'datum', 'companionway', 'doorways', 'route-headroom', 'moisture', 'temperature', 'solve'],
    ]);
  });

  test('lines come in the order of one visit: clear, photograph, read, strings', () => {
    const stages = linesOf(fresh).map(({ stage }) => stage);
    // source: joinery A11b
    const order = ['clear', 'photo', 'readings', 'strings'];
    expect([...new Set(stages)]).toEqual(order);
    expect(stages.map((stage) => order.indexOf(stage))).toEqual(
      stages.map((stage) => order.indexOf(stage)).toSorted((a, b) => a - b),
    );
  });

  test('every kind of piece asks for something, in blocks of its own when it has no shape', () => {
    for (const kind of pieceKinds) {
      const piece = newPiece(kind, { id: 'p', letter: 'B', name: 'Piece', materials });
      expect(keysOf({ ...fresh, pieces: [piece] }, 'p').length, kind).toBeGreaterThan(0);
    }
  });

  test('an outline asks for all sides and its short diagonals, walls for lengths, bows and corners', () => {
    const project = { ...fresh, pieces: [], shapes: sampleShapes };
    expect(keysOf(project, 'bow')).toEqual([
      ...['photo', 'aft port-stem', 'stem-aft starboard', 'aft starboard-aft port', 'obstructions'],
      'curve-port',
    ]);
    const walls = keysOf(project, 'walls');
    for (const wall of ['w1', 'w2', 'w3'])
      for (const key of ['length', 'bow']) expect(walls).toContain(`${key}-${wall}`);
    expect(walls.filter((key) => key.startsWith('corner-'))).toEqual(['corner-w1', 'corner-w2']);
    expect(walls).toContain('A-C');
    expect(keysOf(project, 'hull')).toContain('ordinates-left');
    expect(keysOf(project, 'hatch')).toContain('bar-x');
  });
});

describe('what is done', () => {
  test('a reading is read once, and done with its repeat, whichever way the tape ran', () => {
    const wb = makeOpeningReading('wb', 641, { id: 'sill' });
    const once = { ...fresh, shapes: [{ ...door, readings: [wb] }] };
    const line = (project: Project, key = 'wb') => linesOf(project).find((each) => each.key === key);
    expect(line(once)).toMatchObject({ status: 'once', values: [641] });
    const twice = { ...fresh, shapes: [{ ...door, readings: [{ ...wb, repeats: [641.5] }] }] };
    expect(line(twice)).toMatchObject({ status: 'done', values: [641, 641.5] });
    const bow = { id: 'b', kind: 'bow', from: 'TL', to: 'TR', value: 2 } as const;
    const turned = { ...fresh, shapes: [{ ...door, readings: [bow] }] };
    expect(line(turned, 'bow-head')).toMatchObject({ status: 'once', values: [2] });
    expect(visitChecklist(twice).open).toBe(visitChecklist(fresh).open - 1);
  });

  test('what no reading holds is ticked off, a photograph by being there', () => {
    const mark = linesOf(fresh).find(({ key }) => key === 'headroom')?.mark ?? '';
    const ticked = applyCommand(fresh, { kind: 'set-done', mark, done: true });
    if (!ticked.ok) throw new Error('refused');
    expect(linesOf(ticked.value).find(({ key }) => key === 'headroom')?.status).toBe('done');
    const seen = { ...fresh, shapes: [{ ...door, photos: [samplePhoto] }] };
    expect(linesOf(seen).find(({ key }) => key === 'photo')?.status).toBe('done');
  });

  test('what walls, sections and curves hold counts', () => {
    const project = { ...fresh, pieces: [], shapes: sampleShapes };
    const status = (block: string, key: string) =>
      linesOf(project, block).find((line) => line.key === key)?.status;
    expect(status('walls', 'length-w1')).toBe('done');
    expect(status('walls', 'bow-w1')).toBe('open');
    expect(status('walls', 'corner-w2')).toBe('done');
    expect(status('hull', 'ordinates-left')).toBe('done');
    expect(status('hull', 'bevels-right')).toBe('open');
    expect(status('bow', 'curve-port')).toBe('done');
    expect(status('hatch', 'bar-y')).toBe('open');
  });
});

describe('on paper', () => {
  const text = readFileSync(new URL('../../../static/projects/curlew.json', import.meta.url), 'utf8');
  const demo = readProject(text);
  if (!demo.ok) throw new Error('the demo cannot be read');
  const project = { ...demo.value, shapes: [...demo.value.shapes, ...sampleShapes] };

  test.each(['A4', 'Letter'] as const)(
    '%s: every line stays within its width and no page is empty',
    (paper) => {
      const { width } = roomOnPage(paper, false);
      const rows = viewChecklist(visitChecklist(project)).flatMap((block) => drawChecklist(block, width));
      expect(rows).toHaveLength(visitChecklist(project).lines);
      for (const { bounds, marks } of rows)
        for (const box of marks.map(boxOfMark)) {
          expect(box.minX).toBeGreaterThanOrEqual(bounds.minX - 0.5);
          expect(box.maxX).toBeLessThanOrEqual(bounds.maxX + 0.5);
          expect(box.minY).toBeGreaterThanOrEqual(bounds.minY - 0.5);
          expect(box.maxY).toBeLessThanOrEqual(bounds.maxY + 1.5);
        }
      const pages = arrangePages(rows, paper, 'Curlew');
      expect(pages.every(({ items }) => items.length > 1)).toBe(true);
    },
  );

  test('boxes are as large as a thumb, and readings have room for the repeat', () => {
    const [block] = viewChecklist(visitChecklist(fresh)).filter(({ title }) => title.startsWith('Door'));
    const [row] = (block?.rows ?? []).filter(({ text: words }) => words === 'Bottom width');
    expect(row).toMatchObject({ blanks: 1, again: true, isDone: false, values: [] });
    expect(row?.sketch).not.toBeNull();
    const [drawing] = drawChecklist({ title: '', subtitle: '', rows: row ? [row] : [] }, 180);
    const boxes = (drawing?.marks ?? []).filter((mark) => mark.kind === 'path' && mark.closed).map(boxOfMark);
    const [tick] = boxes;
    expect((tick?.maxX ?? 0) - (tick?.minX ?? 0)).toBeGreaterThanOrEqual(10); // common practice, no source
  });

  test('an inch project asks for inches', () => {
    const blocks = viewChecklist(visitChecklist({ ...project, units: 'inch' }), 'inch');
    const [row] = blocks.flatMap(({ rows }) => rows).filter(({ text: words }) => words === 'Bottom width');
    expect(row?.note).toMatch(/^inches/);
    expect(row?.values[0]).toBe('24 23/32'); // 628 mm
  });
});
