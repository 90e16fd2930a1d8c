import { parametersOf, type Material, type ParameterInfo } from '#core/joinery';
import { given, materialOf } from './given.ts';
import type { Ailing, Change } from './types.ts';

type Suggest = (ailing: Ailing) => readonly Change[];

const to =
  (...changes: readonly Change[]): Suggest =>
  () =>
    changes;

/** The changes that may clear a finding, by its code, the best first. None is offered before it was tried. */
const suggestions: Readonly<Record<string, Suggest>> = {
  'dovetail-in-sheet': to({ corner: 'box' }),
  'dovetail-too-thin': to({ corner: 'box' }),
  'screw-into-end': to({ corner: 'box' }, { joint: 'housing' }, { walls: 'box' }),
  'joint-weak': to({ joint: 'housing' }, { joint: 'loose-tenon' }, { walls: 'box' }),
  'wall-too-thin': (ailing) => [...smallerLock(ailing), { joint: 'housing' }, { joint: 'butt' }],
  'forend-too-wide': (ailing) => [
    ...toWorking(ailing, 'forendWidth', (value) => Math.floor(value('T')) - 3),
    ...otherLocks,
  ],
  'carcase-racks': to({ joint: 'housing' }, { joint: 'loose-tenon' }),
  'rebate-too-shallow': to({ walls: 'box' }),
  'rebates-in-flight': to({ joint: 'housing' }),
  'lap-in-sheet': to({ joint: 'loose-tenon' }),
  'segment-short-grain': to({ segments: 2 }, { segments: 3 }, { segments: 4 }, { joint: 'loose-tenon' }),
  'lap-too-long': to({ lapLength: 25 }, { lapLength: 20 }, { segments: 3 }, { joint: 'loose-tenon' }),
  'glue-not-for-wet': to({ glue: 'epoxy' }),
  'mitre-without-spline': to({ joint: 'spline' }),
  'screw-into-end-grain': to({ joint: 'loose-tenon' }),
  'too-big-at-back': to({ endBack: 'bevelled' }, { clearance: 12 }, { endBack: 'bevelled', clearance: 12 }),
  'gap-below-kerf': to({ continuous: 'tight' }),
  'mid-stile-wanted': to({ midStile: 'one' }),
  'mid-rail-wanted': to({ midRails: 1 }),
  'lock-at-rebate': to({ meeting: 'gap' }, { lock: 'rim-lock' }),
  'lock-meets-joint': to({ lockHeight: null }),
  'lock-off-door': to({ lockHeight: null }),
  'springing-too-steep': to({ springing: 'butt' }),
  'springing-flat': to({ springing: 'rebated' }, { springing: 'housed' }),
  'lining-too-narrow': to({ corner: 'rebate' }, { corner: 'tongue' }),
  'joint-askew': to({ mode: 'square' }, { corner: 'housing-between' }),
  'rebated-corner': to({ stop: 'planted' }),
  'stop-without-cover': to({ covers: 'both' }, { stop: 'planted' }),
  'hinge-lipping-thin': to({ hingeLipping: 8 }),
  'lipping-thin': (ailing) => toWorking(ailing, 'lipping', (value) => Math.ceil(value('T') / 3)),
  'groove-too-deep': (ailing) => toWorking(ailing, 'grooveDepth', (value) => Math.floor(value('ts')) / 2),
  'slats-swell': (ailing) => toWorking(ailing, 'gap', (value) => Math.ceil(value('g_least') * 2) / 2),
  'grain-across': turnGrain,
  'shelf-sags': (ailing) => [...raiseFiddle(ailing), ...otherSheets(ailing)],
  'lid-sags': otherSheets,
  'door-too-thin': otherSheets,
  'bottom-too-thin': otherSheets,
  'side-too-thin': otherSheets,
  'tread-thin': otherSheets,
  'top-unsupported': otherSheets,
  'solid-too-wide': otherSheets,
  'part-without-stock': otherSheets,
  'sheet-thickness': measuredThickness,
  'sheet-thickness-differs': measuredThickness,
  'stock-thickness-differs': measuredThickness,
  'parameter-below-limit': toLimit,
  'parameter-above-limit': toLimit,
  'parameter-unusable': toLimit,
  'door-size-missing': hangInOnlyOne,
};

/** What may clear the finding by its own rule, the best first. */
export function suggestChanges(ailing: Ailing): readonly Change[] {
  return suggestions[ailing.finding.code]?.(ailing) ?? [];
}

/** What holds a door shut without wood being taken from within it. */
const otherLocks: readonly Change[] = [{ lock: 'rim-lock' }, { lock: 'face-latch' }];

/** Less is not left beside a pocket, mm, nor less than a quarter of the wood (joinery C0.2). */
const leastWall = 5;

/** A mortise lock that leaves its wood: a thinner case, a shallower one, more stile; then a lock that is not let in. */
function smallerLock({ piece, built }: Ailing): readonly Change[] {
  if (given(piece, 'lock') !== 'mortise-lock') return [];
  const value = (name: string): number => built.working.find((step) => step.name === name)?.value ?? NaN;
  const [thickness, depth] = [value('T'), value('case_D')];
  const wall = Math.max(leastWall, thickness / 4);
  const stile = Number(
    given(piece, 'stile') ?? parametersOf(piece.kind).find(({ key }) => key === 'stile')?.default,
  );
  const reckoned: readonly Change[] = [
    { lockCaseThickness: Math.floor(thickness - 2 * wall) },
    { lockDepth: Math.floor(stile - wall) },
    { stile: Math.ceil(depth + wall) },
  ];
  const sound = reckoned.filter((change) => Object.values(change).every((each) => Number(each) > 0));
  return [...sound, ...otherLocks];
}

/** One parameter to a value reckoned from the working; none where the working lacks what it needs. */
function toWorking(
  { built }: Ailing,
  key: string,
  reckon: (value: (name: string) => number) => number,
): readonly Change[] {
  const found = reckon((name) => built.working.find((step) => step.name === name)?.value ?? NaN);
  return Number.isFinite(found) ? [{ [key]: found }] : [];
}

function turnGrain({ piece }: Ailing): readonly Change[] {
  if (piece.kind !== 'free-panel') return [];
  return [{ grain: given(piece, 'grain') === 'across' ? 'up' : 'across' }];
}

/** Heights of a fiddle, mm; the least that clears it is taken. */
const fiddleHeights = [40, 50, 60, 75, 90] as const;

function raiseFiddle({ piece }: Ailing): readonly Change[] {
  if (piece.kind !== 'shelf') return [];
  const now = Number(given(piece, 'fiddleHeight') ?? 0);
  return fiddleHeights.filter((height) => height > now).map((fiddleHeight) => ({ fiddleHeight }));
}

/** A sheet in place of each material, the next thicker first, never one thinner than what it replaces. */
function otherSheets({ finding, piece, built, project }: Ailing): readonly Change[] {
  const part = built.parts.find(({ id }) => id === finding.about);
  return materialInfos(piece.kind).flatMap((info) => {
    const now = materialOf(piece, info.key, project.materials);
    if (part && part.material !== now?.id) return [];
    const least = part?.finished.thickness ?? (now ? thicknessOf(now) : 0);
    return project.materials
      .filter((each) => each.kind === 'sheet' && info.materialKind !== 'solid' && each.id !== now?.id)
      .filter((each) => thicknessOf(each) > least - nominal)
      .sort((a, b) => thicknessOf(a) - thicknessOf(b))
      .slice(0, 3)
      .map((sheet) => ({ [info.key]: sheet.id }));
  });
}

/** How much thinner than its name a sheet may measure and still stand for it, mm. */
const nominal = 0.5;

function thicknessOf(material: Material): number {
  return material.kind === 'sheet' ? material.thickness : 0;
}

/** Every thickness the user entered: left out, or that of a sheet the piece is made of. */
function measuredThickness({ piece, project }: Ailing): readonly Change[] {
  const entered = parametersOf(piece.kind).filter(
    (info) => /thickness$/i.test(info.key) && given(piece, info.key) !== undefined,
  );
  const sheets = materialInfos(piece.kind)
    .map((info) => materialOf(piece, info.key, project.materials))
    .filter((material) => material?.kind === 'sheet');
  const measured = [...new Set(sheets.map((sheet) => (sheet ? thicknessOf(sheet) : 0)))];
  return entered.flatMap(({ key }) => [{ [key]: null }, ...measured.map((value) => ({ [key]: value }))]);
}

/** A number outside its limits to the limit it went past; which one, the sentence says by its label. */
function toLimit({ piece, finding }: Ailing): readonly Change[] {
  const info = parametersOf(piece.kind).find(
    (each) => finding.message.startsWith(`${each.label}: `) && typeof given(piece, each.key) === 'number',
  );
  if (!info) return [];
  const value = Number(given(piece, info.key));
  if (info.min !== undefined && value < info.min) return [{ [info.key]: info.min }];
  return info.max !== undefined && value > info.max ? [{ [info.key]: info.max }] : [];
}

/** A door without a size hangs in the frame of the project, when there is just one. */
function hangInOnlyOne({ piece, project }: Ailing): readonly Change[] {
  const frames = project.pieces.filter(({ kind }) => kind === 'door-frame');
  const hasFrame = parametersOf(piece.kind).some(({ key }) => key === 'frame');
  return hasFrame && frames.length === 1 && frames[0] ? [{ frame: frames[0].id }] : [];
}

function materialInfos(kind: Ailing['piece']['kind']): readonly ParameterInfo[] {
  return parametersOf(kind).filter(({ type }) => type === 'material');
}
