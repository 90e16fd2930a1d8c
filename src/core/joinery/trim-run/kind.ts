import { formatNumber, markSize } from '#core/units';
import type { KindOfPiece } from '../kind.ts';
import { buildFrom } from '../recipe.ts';
import { chainSteps } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { checkTrim, refuseTrim } from './checks.ts';
import { trimRunParameters } from './parameters.ts';
import { sizePosts, trimParts, trimSets } from './parts.ts';
import { chooseTrim, workOutTrim, type TrimLayout } from './sizes.ts';

const show = markSize;
type TrimRun = Extract<Piece, { kind: 'trim-run' }>;

function build(piece: TrimRun, context: BuildContext): BuiltPiece {
  const { choices, findings, lacking } = chooseTrim(piece.parameters, context, piece.name);
  return buildFrom<TrimLayout>({
    piece,
    what: 'trim',
    seenFrom: context.shape?.seenFrom ?? 'standing in the room, facing the first wall',
    table: trimRunParameters,
    found: findings,
    lacking,
    workOut: () => sizePosts(workOutTrim(choices)),
    positive: { names: ['w', 't', 'D'], source: 'joinery B11' },
    refuse: refuseTrim,
    parts: (layout) => trimParts(piece, layout),
    finish: (layout, parts) => ({
      joints: joints(layout, parts),
      matchedSets: trimSets(layout, parts),
      fixings: fixings(layout, parts),
      steps: steps(layout, parts),
      findings: checkTrim(layout, parts, context.settings),
    }),
  });
}

/** Corners and scarfs: each between two neighbours in the order of the run. */
function joints(layout: TrimLayout, parts: readonly Part[]): readonly Joint[] {
  const { pieces, ends, choices } = layout;
  const starts = pieces.map((_, i) => pieces.slice(0, i).reduce((sum, count) => sum + count, 0));
  const scarfs = pieces.flatMap((count, i) =>
    Array.from({ length: count - 1 }, (_, n) =>
      joinOf(parts, (starts[i] ?? 0) + n, 'scarf', ['45° across the thickness, over a fixing, glued.']),
    ),
  );
  const corners = ends.flatMap(({ right }, i) => {
    if (right.kind === 'square') return [];
    const here = (starts[i] ?? 0) + (pieces[i] ?? 1) - 1;
    const next = starts[(i + 1) % choices.run.walls.length] ?? 0;
    const [one, other] = [parts[here], parts[next]];
    if (!one || !other || one === other) return [];
    const kind = right.kind === 'post' ? 'corner-post' : 'mitre';
    return [
      {
        kind,
        between: [one.id, other.id] as const,
        count: 1,
        settings: cornerSettings(layout, right.corner),
      },
    ];
  });
  return [...corners, ...scarfs.flat()];
}

function joinOf(
  parts: readonly Part[],
  at: number,
  kind: string,
  settings: readonly string[],
): readonly Joint[] {
  const [one, other] = [parts[at], parts[at + 1]];
  return one && other ? [{ kind, between: [one.id, other.id], count: 1, settings }] : [];
}

function cornerSettings({ book }: TrimLayout, corner: number): readonly string[] {
  const v = (name: string) => show(book.value(`${name}_${corner}`), 2);
  if (book.has(`tangent_${corner}`)) {
    return [
      `Both trims end square ${v('tangent')} before the outer point; round ${v('arc')} long, radius ${show(book.value('R'))}.`,
    ];
  }
  const angleOf = (name: string) => formatNumber(book.value(`${name}_${corner}`), 2);
  const angle = `Corner ${angleOf('theta')}°`;
  if (book.has(`X_${corner}`))
    return [`${angle}: trim flat on the saw, mitre ${angleOf('X')}°, bevel ${angleOf('Y')}°.`];
  return [
    `${angle}: saw ${angleOf('set')}° off square, trim standing against the fence as against its wall.`,
  ];
}

const pinSpacing = 300; // mm (joinery B11)

function fixings({ choices }: TrimLayout, parts: readonly Part[]): readonly Fixing[] {
  const quantity = parts.reduce((sum, { finished }) => sum + Math.ceil(finished.length / pinSpacing) + 1, 0);
  const thick = choices.thickness > 12;
  return [
    thick
      ? {
          item: `Screw 3.5 × ${Math.ceil((choices.thickness + 20) / 5) * 5}, countersunk, stainless A4, with plug`,
          quantity,
          use: 'trim',
          source: 'joinery B11',
        }
      : {
          item: `Panel pin ${Math.ceil((2.5 * choices.thickness) / 5) * 5}, bronze or stainless`,
          quantity,
          use: 'trim',
          source: 'joinery B11',
        },
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'mitres and scarfs', source: 'joinery B11' },
  ];
}

function steps(layout: TrimLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const { choices } = layout;
  const posts = { parts: parts.filter(({ name }) => name.startsWith('Corner post')) };
  const corners = choices.run.angles.length;
  const post = `Make the posts: block square to the corner, cut over the wall, then rounded to ${show(choices.postRadius)}.`;
  return chainSteps([
    aboard(
      'angles',
      10 + 5 * corners,
      'Take every corner with the bevel gauge again and every length at the height of the trim.',
      { take: ['bevel gauge', 'tape', 'pencil'] },
    ),
    inWorkshop(
      'stock',
      30,
      'Plane all sticks in one setting, one spare of the longest; mark which end follows which.',
      { parts },
    ),
    ...(posts.parts.length > 0 ? [inWorkshop('posts', 45 * posts.parts.length, post, posts)] : []),
    inWorkshop(
      'cut',
      10 * parts.length,
      'Cut from the stick in the order of the list, longest first among equals; inside corners before outside.',
      { parts },
    ),
    inWorkshop('finish', 60, 'Finish faces and cut ends, leave the glue faces bare.', { parts }),
    aboard(
      'fix',
      12 * parts.length,
      'Fix the longest first; inside corners tight before outside; cut the last piece to the measured length. Glue the mitres.',
      { parts, take: ['pins or screws', 'glue', 'fine saw', 'bag'] },
    ),
  ]);
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const trim = materials.find(({ kind }) => kind === 'solid') ?? materials[0];
  return {
    kind: 'trim-run',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: { ...(!shape && { wallLengths: [900, 600] }), materials: { trim: trim?.id ?? '' } },
  };
}

export const trimRunKind: KindOfPiece<'trim-run'> = {
  words: {
    name: 'Trim run',
    purpose: 'Mouldings or lining along walls that meet at any angle',
    help: [
      'Trim follows the walls from left to right as you stand in the room; every corner has its own angle, measured on the side of the room.',
      'It may stand against the wall or be sprung across a corner; then mitre and bevel are both in the joint list, with the trim flat on the saw.',
      'Outside corners are mitred or get a quarter-round post. An end may be returned to the wall.',
      'The pieces come from the stick in the order of the run, so the grain goes round the corners. Longer walls are scarfed over a fixing.',
    ],
  },
  inParts: true,
  parameters: trimRunParameters,
  shape: { kinds: ['walls'], required: false },
  seen: { across: ['L_1', 'Lb_1'], up: ['w'] },
  build,
  make,
};
