import { describe, expect, test } from 'vitest';
import { sigmaOfSize } from '#core/measuring';
import { sizeDeviations, understandProject } from '#core/pipeline';
import { readFileSync } from 'node:fs';
import { readProject } from '#formats/json';

const read = readProject(
  readFileSync(new URL('../../../static/projects/curlew.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('the demo cannot be read');
const project = read.value;
const understanding = understandProject(project);
const frame = project.pieces.find(({ kind }) => kind === 'door-frame');
const door = project.pieces.find(({ kind }) => kind === 'flat-door');

describe('how well sizes are known from the survey', () => {
  test('the width of a frame is known about as well as the width of its opening, its length of a jamb as the height', () => {
    const shape = understanding.shapes[0]?.adjusted;
    if (!frame || !shape) throw new Error('no frame');
    const known = sizeDeviations(project, understanding, frame.id);
    const width = sigmaOfSize(shape, ({ BL, BR }) => (BR?.x ?? 0) - (BL?.x ?? 0));
    expect(known.get('Fw')).toBeGreaterThan(width / 2);
    expect(known.get('Fw')).toBeLessThan(width * 4);
    expect(known.get('Fh')).toBeGreaterThan(0.1);
    expect(known.get('Fh')).toBeLessThan(3);
  });
  test('what the user chose does not depend on it', () => {
    const known = sizeDeviations(project, understanding, frame?.id ?? '');
    expect(known.has('tj')).toBe(false);
    expect(known.has('a')).toBe(false);
  });
  test('a door carries on what its frame is uncertain by', () => {
    const known = sizeDeviations(project, understanding, door?.id ?? '');
    const ofFrame = sizeDeviations(project, understanding, frame?.id ?? '');
    expect(known.get('Wd')).toBeCloseTo(ofFrame.get('Wc') ?? NaN, 1);
  });
  test('a piece that is fitted to nothing has none', () => {
    const drawer = project.pieces.find(({ kind }) => kind === 'drawer');
    expect([...sizeDeviations(project, understanding, drawer?.id ?? '')]).toEqual([]);
  });
});
