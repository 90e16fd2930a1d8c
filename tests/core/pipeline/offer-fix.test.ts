import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { newPiece, type Piece, type PieceKind } from '#core/joinery';
import { offerFix, understandProject } from '#core/pipeline';
import { applyCommand, type Project } from '#core/project';

const curlew = JSON.parse(readFileSync('static/projects/curlew.json', 'utf8')) as Project;

/** A project of one piece, made of what lies on the rack of the demo. */
function withPiece(kind: PieceKind, parameters: object, more: Partial<Project> = {}): Project {
  const base: Project = { ...curlew, pieces: [], ...more };
  const made = newPiece(kind, {
    ...{ id: 'p', letter: 'K', name: 'Piece', materials: base.materials, pieces: [] },
    ...(kind === 'door-frame' && { shape: 'saloon-door' }),
  });
  const piece = { ...made, parameters: { ...made.parameters, ...parameters } } as Piece;
  return { ...base, pieces: [...base.pieces, piece] };
}

function fixOf(project: Project, code: string) {
  const understanding = understandProject(project);
  const finding = understanding.findings.find((each) => each.code === code);
  if (!finding) throw new Error(`no finding ${code}: ${understanding.findings.map((each) => each.code)}`);
  return { finding, fix: offerFix(finding, { project, understanding }) };
}

describe('a fix offered for a finding', () => {
  test.each<[string, PieceKind, object, RegExp]>([
    ['dovetail-in-sheet', 'drawer', { corner: 'lapped-dovetail' }, /^Set "Corners" to "Box joint"$/],
    ['gap-below-kerf', 'cabinet-front', { continuous: 'true', kerf: 20 }, /^Set "Figure runs through" to /],
    ['lipping-thin', 'flat-door', { lipping: 5, width: 400, height: 600 }, /^Set "Lipping" to 6 mm$/],
    ['hinge-lipping-thin', 'flat-door', { hingeLipping: 7 }, /^Set "Lipping, hinge edge" to 8 mm$/],
    ['grain-across', 'free-panel', { width: 900, height: 300 }, /^Set "Grain" to /],
    ['mitre-without-spline', 'free-frame', { joint: 'mitre' }, /^Set "Corner joint" to /],
    ['screw-into-end', 'carcase', { joint: 'butt' }, /^Set "Shelves to the ends" to "Housing"$/],
    [
      'joint-weak',
      'step',
      { joint: 'dowel', boxRisers: 2 },
      /^Set "Treads and risers to the sides" to "Housing"$/,
    ],
    ['segment-short-grain', 'hatch-surround', { segments: 1 }, /^Set "Segments in each corner" to 2$/],
    ['segment-short-grain', 'hatch-surround', { segments: 2, joint: 'half-lap' }, /corner" to 3$/],
    ['glue-not-for-wet', 'step', { glue: 'pva', wet: 'wet' }, /^Set "Glue" to "Epoxy, slow hardener"$/],
    ['plies-few', 'curved-head', { plies: 4 }, /^Set "Plies" back to 5$/],
    ['panel-hold-small', 'access-panel', { lap: 9 }, /^Set "Lap on the surround" back to 15 mm$/],
    ['parameter-above-limit', 'drawer', { grooveUp: 60 }, /^Set "Groove above the lower edge" to 40 mm$/],
    ['stop-without-cover', 'door-frame', { stop: 'cover', covers: 'near' }, /^Set /],
    ['mid-rail-wanted', 'louvred-door', { height: 1400 }, /^Set "Mid rails" to 1$/],
    [
      'lock-meets-joint',
      'framed-door',
      { height: 900, stile: 70, midRails: 1, lock: 'mortise-lock', lockHeight: 460 },
      /above the lower edge/,
    ],
    [
      'lock-at-rebate',
      'framed-door',
      { width: 700, height: 900, stile: 70, lock: 'mortise-lock', leaf: 'first', meeting: 'rebate' },
      /^Set "Where they meet" to "A gap/,
    ],
    [
      'wall-too-thin',
      'flat-door',
      { width: 500, height: 900, lock: 'mortise-lock', lockCaseThickness: 11, lipping: 30, hingeLipping: 30 },
      /^Set "Case, thickness" to [5-9] mm$/,
    ],
    ['springing-flat', 'curved-head', { jambLength: 800 }, /^Set "Head and jambs" to /],
    [
      'lining-too-narrow',
      'door-frame',
      { corner: 'dowel', bulkheadMax: 18 },
      /^Set "Joint of jamb and head" /,
    ],
  ])('for %s clears it and brings nothing as bad', (code, kind, parameters, label) => {
    const project = withPiece(kind, parameters);
    const { finding, fix } = fixOf(project, code);
    if (fix?.kind !== 'act') throw new Error(`nothing offered for ${finding.message}`);
    expect(fix.label).toMatch(label);
    const next = applyCommand(project, fix.command);
    if (!next.ok) throw new Error('refused');
    const [before, after] = [understandProject(project).findings, understandProject(next.value).findings];
    const grave = (of: typeof before) => of.filter(({ severity }) => severity !== 'note').length;
    expect(after.filter((each) => each.code === code && each.about === finding.about)).toEqual([]);
    expect(grave(after)).toBeLessThanOrEqual(grave(before));
  });

  test('of a number that only the bulkhead knows asks for it', () => {
    const { fix } = fixOf(withPiece('door-frame', {}), 'bulkhead-not-measured');
    expect(fix).toMatchObject({ kind: 'ask', piece: 'p', keys: ['bulkheadMax', 'bulkheadMin'] });
  });

  test('of a choice left to the eye shows the choice', () => {
    const { fix } = fixOf(curlew, 'frame-leans');
    expect(fix).toMatchObject({ kind: 'ask', label: 'Choose "What counts as upright"', keys: ['datum'] });
  });

  test('takes no thinner sheet for a tread of solid wood that the rack does not hold', () => {
    const rack = curlew.materials.filter(({ id }) => id !== 'birch-18' && id !== 'birch-12');
    const project = withPiece(
      'step',
      { materials: { sides: 'birch-6', treads: 'oak-sawn' } },
      { materials: rack, stock: curlew.stock.filter(({ form }) => form !== 'board') },
    );
    expect(fixOf(project, 'part-without-stock').fix).toBeNull();
  });

  test('concerns pieces: a reading that contradicts the others is measured again, not set', () => {
    const understanding = understandProject(curlew);
    const suspect = understanding.findings.find(({ severity }) => severity === 'stop');
    expect(suspect?.about).toMatch(/^saloon-door/);
    expect(suspect && offerFix(suspect, { project: curlew, understanding })).toBeNull();
  });
});
