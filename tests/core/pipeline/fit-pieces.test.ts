import { readFileSync } from 'node:fs';

import { describe, expect, test } from 'vitest';

import { newPiece, type Piece } from '#core/joinery';
import { makeOpeningReading, type OpeningKey, type Reading } from '#core/measuring';
import { describeFit, understandProject, type PieceFit } from '#core/pipeline';
import { newProject, type Project } from '#core/project';
import { readProject } from '#formats/json';

const materials = [
  { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn' },
  { id: 'ply', kind: 'sheet', name: 'Plywood', thickness: 12 },
] as const;

/** Readings of a rectangle 640 by 1750 (joinery A3), tape and plumb of the given sigma. */
function readings(sigma: number, bow = 0): readonly Reading[] {
  const diagonal = Math.hypot(640, 1750);
  const values: Readonly<Record<OpeningKey, number>> = {
    ...{ wb: 640, w13: 640, w23: 640, wt: 640, hl: 1750, hr: 1750, d1: diagonal, d2: diagonal },
    ...{ pl: 0, pr: 0, ls: 0, lh: 0 },
  };
  const twelve = Object.entries(values).map(([key, value]) =>
    makeOpeningReading(key as OpeningKey, value, { sigma }),
  );
  return bow === 0
    ? twelve
    : [...twelve, { id: 'b', kind: 'bow', from: 'TL', to: 'BL', value: bow, sigma: 0.3 }];
}

function projectWith(taken: readonly Reading[], kind: Piece['kind'] = 'door-frame'): Project {
  const piece = newPiece(kind, { id: 'p', letter: 'A', name: 'Piece', shape: 'door', materials });
  const shape = {
    id: 'door',
    name: 'Door',
    kind: 'opening',
    seenFrom: 'from the saloon',
    readings: taken,
  } as const;
  return { ...newProject('Curlew'), materials, shapes: [shape], pieces: [piece] };
}

function fitOf(project: Project): PieceFit {
  const [fit] = understandProject(project).fits;
  if (!fit) throw new Error('nothing is fitted');
  return fit;
}

describe('the fit of a piece to its shape', () => {
  test('a frame in a well-measured opening is cut now', () => {
    const fit = fitOf(projectWith(readings(0.5)));
    expect(fit.edges.map(({ name, kind }) => [name, kind])).toEqual([
      ['right jamb', 'cut-now'],
      ['head', 'cut-now'],
      ['left jamb', 'cut-now'],
    ]); // it stands on the sill
    expect(fit.chance).toBeGreaterThan(0.99);
    expect(fit.extra).toBeNull();
    expect(describeFit(fit)).toEqual([
      'All 3 edges fit as planned with a chance of 99 % or more.',
      'Every edge can be cut to size now.',
    ]);
  });

  test('the worse the tape, the smaller the chance; then wood is left on', () => {
    const sigmas = [0.5, 2, 4, 8, 16];
    const fits = sigmas.map((sigma) => fitOf(projectWith(readings(sigma))));
    const chances = fits.map(({ chance }) => chance);
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
    expect(chances.at(-1)).toBeLessThan(0.7);
    const worst = fits.at(-1);
    expect(worst?.edges.some(({ kind }) => kind !== 'cut-now')).toBe(true);
  });

  test('with five rough readings the one that helps most is named', () => {
    const five = readings(4).filter(({ id }) => ['wb', 'wt', 'hl', 'hr', 'd1'].includes(id));
    const { extra } = fitOf(projectWith(five));
    expect(extra?.words).toContain('Measure the');
    expect(extra?.then).toBeGreaterThan(extra?.chance ?? 1);
  });

  test('a jamb that bulges inwards narrows its gap, one that is hollow widens it', () => {
    const plain = fitOf(projectWith(readings(2)));
    const at = (fit: PieceFit) => fit.edges.find(({ name }) => name === 'left jamb')?.chance ?? NaN;
    const bulging = fitOf(projectWith(readings(2, -20)));
    expect(at(bulging)).toBeLessThanOrEqual(at(plain));
    expect(bulging.edges.map(({ name }) => name)).toContain('head');
  });

  test('a suspected slip is said before the chance', () => {
    const text = readFileSync(new URL('../../../static/projects/curlew.json', import.meta.url), 'utf8');
    const demo = readProject(text);
    if (!demo.ok) throw new Error('the demo cannot be read');
    const fit = fitOf(demo.value);
    expect(fit.doubts).toEqual(['w23']);
    expect(describeFit(fit)[0]).toContain('Take w23 again first');
  });

  test('a piece without a shape has no fit, and one whose shape is not fixed neither', () => {
    const project = projectWith(readings(0.5));
    const { shape, ...alone } = project.pieces[0] as Piece & { shape: string };
    expect(shape).toBe('door');
    expect(understandProject({ ...project, pieces: [alone as Piece] }).fits).toEqual([]);
    expect(understandProject(projectWith(readings(0.5).slice(0, 2))).fits).toEqual([]);
  });

  test('a front keeps its own gap on all four sides', () => {
    const fit = fitOf(projectWith(readings(0.5), 'cabinet-front'));
    expect(fit.edges.length).toBeGreaterThan(0);
    for (const { chance } of fit.edges) expect(chance).toBeGreaterThan(0.8);
  });

  test.each(['slat-lining', 'infill'] as const)(
    '%s does not follow its edges, and nothing is said of them',
    (kind) => {
      // the gap between slats, and the reveal of a filler scribed to the boat, are no gaps to the sides of the opening
      expect(understandProject(projectWith(readings(0.5), kind)).fits).toEqual([]);
    },
  );

  test('a run is fitted to the hull by its clearance, not by the gaps of its fronts', () => {
    const text = readFileSync(
      new URL('../../../static/projects/curlew-galley.json', import.meta.url),
      'utf8',
    );
    const read = readProject(text);
    if (!read.ok) throw new Error('the example cannot be read');
    const pieces = read.value.pieces.map((piece) =>
      piece.kind === 'run'
        ? { ...piece, parameters: { ...piece.parameters, clearance: 12, fronts: 'inset' as const, gap: 2 } }
        : piece,
    );
    const fit = understandProject({ ...read.value, pieces }).fits.find(({ letter }) => letter === 'A');
    // 12 from a hull known to 1.4 (95 %) is as good as sure; 2 of it would be 99.8 %
    for (const { words } of fit?.edges ?? []) expect(words).toContain('between 0 and 24 mm');
    expect(fit?.edges.length).toBe(3);
  });
});
