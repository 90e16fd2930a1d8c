import { glues, type Glue, type GlueKind } from '#core/materials';
import type { Problem } from '#core/problems';
import type { GlueParameters } from './glue-types.ts';
import type { JoinerySettings, ParameterInfo } from './piece-types.ts';
import type { BuiltPiece, Fixing } from './types.ts';

/** The rows of the parameter table that all glued pieces share. */
export const glueRows: readonly ParameterInfo[] = [
  {
    ...{ key: 'glue', label: 'Glue', type: 'choice', group: 'Glue', default: 'project' },
    choices: [
      { value: 'project', label: 'As the project' },
      ...glues.map(({ kind, name }) => ({ value: kind, label: name })),
    ],
    help: 'The joints get the gap this glue fills; epoxy wants more than white glue.',
    source: 'joinery C',
  },
  {
    ...{ key: 'wet', label: 'Where it stands', type: 'choice', group: 'Glue', default: 'project' },
    choices: [
      { value: 'project', label: 'As the project' },
      { value: 'dry', label: 'Dry' },
      { value: 'wet', label: 'In the wet' },
    ],
    help: 'In the wet some joints and glues do not hold.',
    source: 'joinery C0',
  },
];

/** The settings of the project as they hold for one piece; the very same when it says nothing of its own. */
export function settingsFor(parameters: GlueParameters, settings: JoinerySettings): JoinerySettings {
  const { glue = 'project', wet = 'project' } = parameters;
  if (glue === 'project' && wet === 'project') return settings;
  return {
    ...settings,
    ...(glue !== 'project' && { glue }),
    ...(wet !== 'project' && { wet: wet === 'wet' }),
  };
}

/** The glue chosen; undefined when each piece takes what is usual for it. */
export function glueOf({ glue }: JoinerySettings): Glue | undefined {
  return glues.find(({ kind }) => kind === glue);
}

/** The glue a piece is glued up with: that chosen, else that on its list, else white glue (joinery C, F7). */
export function glueUsed(built: BuiltPiece, settings: JoinerySettings): Glue {
  const [listed] = built.fixings.flatMap(({ item }) => packed(item) ?? []);
  const glue = glueOf(settings) ?? listed ?? glues.find(({ kind }) => kind === 'pva');
  if (!glue) throw new Error('no glue is known');
  return glue;
}

/** Its list of fixings with glue for panels glued up; the same when there is glue on it already (common practice, no source). */
export function withPanelGlue(built: BuiltPiece, glue: Glue): readonly Fixing[] {
  if (built.fixings.some(isGlue)) return built.fixings;
  return [...built.fixings, { item: glue.pack, quantity: 1, use: 'panels glued up', source: 'joinery C16' }];
}

/** A built piece whose list of fixings names the glue chosen, and what is to be said of that glue (joinery C0, F7). */
export function withGlue(built: BuiltPiece, settings: JoinerySettings): BuiltPiece {
  const glued = built.fixings.some(isGlue);
  const glue = glueOf(settings);
  if (!glued || (!glue && settings.wet !== true)) return built;
  const fixings = glue
    ? built.fixings.map((one) => (isGlue(one) ? { ...one, item: glue.pack } : one))
    : built.fixings;
  const isEpoxy = fixings.filter(isGlue).every(({ item }) => packed(item)?.water === 'bilge');
  if (settings.wet !== true || isEpoxy) return { ...built, fixings };
  return { ...built, fixings, findings: [...built.findings, notForWet(built, fixings)] };
}

const packed = (item: string) => glues.find(({ pack }) => pack === item);
const isGlue = ({ item }: Fixing) => packed(item) !== undefined;

function notForWet(built: BuiltPiece, fixings: readonly Fixing[]): Problem {
  const name = fixings.flatMap(({ item }) => packed(item) ?? []).find(({ water }) => water !== 'bilge')?.name;
  return {
    severity: 'warn',
    code: 'glue-not-for-wet',
    about: built.letter,
    message: `It stands in the wet, and ${name ?? 'its glue'} takes splashes only.`,
    remedy: 'Take epoxy, and seal all end grain.',
    source: 'joinery C0, F7',
  };
}

/** The kind of glue chosen, for a joint to be worked out with; undefined when each piece takes what is usual for it. */
export function gluedWith(settings: JoinerySettings): GlueKind | undefined {
  return glueOf(settings)?.kind;
}
