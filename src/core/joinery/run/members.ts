import type { Point3, Shape } from '#core/geometry';
import type { KindOfPiece } from '../kind.ts';
import type { PieceId } from '../ids.ts';
import type { Piece, PieceKind } from '../piece-types.ts';
import type { BuildContext, BuiltPiece, WorkingStep } from '../types.ts';

/** A piece within a piece: how it is called, where it stands in the frame of the whole, and with whose work it goes. */
export interface Member {
  readonly piece: PieceId;
  readonly group: string;
  /** Before the names of its parts; empty for none. */
  readonly title: string;
  readonly at: Point3;
  readonly built: BuiltPiece;
}

/** What to make a member of. */
export interface MemberOrder<Kind extends PieceKind> {
  readonly kind: Kind;
  readonly of: KindOfPiece<Kind>;
  readonly parameters: Extract<Piece, { kind: Kind }>['parameters'];
  readonly group: string;
  readonly title: string;
  /** Before the names of its working: `d1_2_`. */
  readonly prefix: string;
  readonly at: Point3;
  /** Numbers of its working that are others of the whole, by name. */
  readonly links?: Readonly<Record<string, string>>;
  /** Parameters of the member that are the whole's own, under the same key. */
  readonly own?: readonly string[];
  /** Names of parts that another member makes. */
  readonly without?: readonly string[];
  readonly shape?: Shape;
}

const mostKept = 500;
const noShape = {};

/** A member built, or the one built before of the very same parameters, materials, settings and shape. */
export function makeMember<Kind extends PieceKind>(
  whole: { readonly piece: Piece; readonly context: BuildContext },
  order: MemberOrder<Kind>,
): Member {
  const { piece, context } = whole;
  const { kind, parameters, group, title, prefix, at, links, own } = order;
  const built = keep(
    [context.materials, context.settings, order.shape ?? noShape],
    JSON.stringify([kind, parameters, prefix, links, own, order.without]),
    () => prepare(context, order),
  );
  return { piece: piece.id, group, title, at, built };
}

interface Store {
  readonly built: Map<string, BuiltPiece>;
  readonly next: WeakMap<object, Store>;
}

/** Members as built before, by what they were built from: those whose inputs did not change are not built again. */
const openStore = (): Store => ({ built: new Map(), next: new WeakMap() });

const kept = openStore();

function keep(grounds: readonly object[], key: string, make: () => BuiltPiece): BuiltPiece {
  const { built } = grounds.reduce<Store>((store, ground) => {
    const known = store.next.get(ground) ?? openStore();
    store.next.set(ground, known);
    return known;
  }, kept);
  const before = built.get(key);
  if (before) return before;
  if (built.size >= mostKept) built.clear();
  const made = make();
  built.set(key, made);
  return made;
}

function prepare<Kind extends PieceKind>(context: BuildContext, order: MemberOrder<Kind>): BuiltPiece {
  const { kind, of, parameters, prefix, shape, without } = order;
  // a letter that stands in no other text, so that addresses can be found in words and replaced
  const letter = `«${prefix}»`;
  const member = { kind, id: prefix, letter, name: order.title, parameters } as unknown as Extract<
    Piece,
    { kind: Kind }
  >;
  const built = of.build(member, {
    ...{ materials: context.materials, settings: context.settings, shape: shape ?? null },
    ...(shape && { shapeName: context.shapeName ?? 'the hull' }),
  });
  const parts = built.parts.filter(({ name }) => !without?.includes(name));
  const rename = (name: string) => `${prefix}${name}`;
  return {
    ...built,
    parts: parts.map((part) => ({
      ...part,
      working: {
        length: rename(part.working.length),
        width: rename(part.working.width),
        thickness: rename(part.working.thickness),
      },
    })),
    working: built.working.map((step) => renameStep(step, order, rename)),
  };
}

function renameStep<Kind extends PieceKind>(
  step: WorkingStep,
  { links, own }: MemberOrder<Kind>,
  rename: (name: string) => string,
): WorkingStep {
  const { parameter, ...rest } = step;
  const link = links?.[step.name];
  const named = { ...rest, name: rename(step.name) };
  if (link !== undefined)
    return {
      ...named,
      formula: link,
      inputs: [{ name: link, value: step.value }],
      source: 'shared in the run',
    };
  const asked = parameter !== undefined && own?.includes(parameter) ? { parameter } : {};
  if (step.formula === undefined) return { ...named, ...asked };
  const known = new Set(step.inputs.map(({ name }) => name));
  return {
    ...named,
    ...asked,
    formula: step.formula.replace(/[A-Za-z_]\w*/g, (word) => (known.has(word) ? rename(word) : word)),
    inputs: step.inputs.map(({ name, value }) => ({ name: rename(name), value })),
  };
}
