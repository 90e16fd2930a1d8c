import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { listTasks, understandProject } from '#core/pipeline';
import type { Project } from '#core/project';
import { readProject } from '#formats/json';

const read = readProject(readFileSync('static/projects/curlew.json', 'utf8'));
if (!read.ok) throw new Error('the demo cannot be read');
const demo = read.value;
const blanksOf = (project: Project) => understandProject(project).groups.flatMap((group) => group.blanks);

describe('the jambs of a door frame', () => {
  test('lie side by side in one blank, a kerf apart (joinery D3)', () => {
    const blank = blanksOf(demo).find((each) => each.id === 'A1+A2');
    const [left, right] = blank?.parts ?? [];
    expect([left?.part, right?.part]).toEqual(['A1', 'A2']);
    expect(right?.y).toBeCloseTo((left?.width ?? 0) + demo.tools.boardSaw.kerf, 9);
  });

  test('are cut singly where no board is wide enough, and a note says so', () => {
    const narrow: Project = {
      ...demo,
      stock: demo.stock.map((line) => (line.form === 'board' ? { ...line, width: 80 } : line)),
    };
    const ids = blanksOf(narrow).map((blank) => blank.id);
    expect(ids).toContain('A1');
    expect(ids).toContain('A2');
    const notes = understandProject(narrow).findings.filter(({ code }) => code === 'pair-not-from-one-board');
    expect(notes[0]?.message).toContain('A1 and A2');
  });
});

describe('hollow boards', () => {
  test('the cutting task says to rip them first, and what that saves (joinery D4)', () => {
    const understanding = understandProject(demo);
    const task = listTasks(demo, understanding).find(({ id }) => id === 'cut:oak-sawn-27');
    // 109 wide from a board 180 wide and hollow by 4: 4 × (109 / 180)²
    expect(task?.text).toContain('180 wide and hollow by 4, one loses 4 whole, and 1.5 ripped to 109');
  });
});
