import type { GlueKind } from '#core/materials';
import { gluedWith } from '../glue.ts';
import type { JoinerySettings } from '../piece-types.ts';
import { doorFrameParameters } from './parameters.ts';
import type { DoorFrameParameters } from './types.ts';

/** Every parameter of a door frame with its default filled in, and what follows from the choices alone. */
export type FrameChoices = Required<Omit<DoorFrameParameters, 'materials'>> & {
  readonly materials: DoorFrameParameters['materials'];
  /** Members lie flat and are seen from the front: half-lap, bridle, mitre. */
  readonly flat: boolean;
  /** The head runs over the jambs: rebate, tongue, housing over. */
  readonly over: boolean;
  /** Keys the user gave, for the origin of each number. */
  readonly given: ReadonlySet<string>;
  readonly glue: GlueKind | undefined;
};

const usualCover = 45; // on a lining 20 thick; wider by what the members are thicker
const usualDepth = { housing: 7, share: 0.5 } as const;

/**
 * Fills in the defaults (joinery B1): those of the table, and those that hang on another choice. A panel above the head
 * takes housings between the jambs, and a rebated lining a head that runs over; `checkChoices` says so where it was asked otherwise.
 */
export function chooseFrame(parameters: DoorFrameParameters, settings: JoinerySettings): FrameChoices {
  const table = Object.fromEntries(
    doorFrameParameters.filter((info) => info.default !== undefined).map((info) => [info.key, info.default]),
  );
  const given = Object.fromEntries(
    Object.entries(parameters).filter(([, value]) => value !== undefined),
  ) as DoorFrameParameters;
  const infill = given.infill ?? false;
  const corner = infill ? 'housing-between' : (given.corner ?? 'rebate');
  const over = corner === 'rebate' || corner === 'tongue' || corner === 'housing-over';
  const stop = given.stop === 'rebated' && !over ? 'planted' : (given.stop ?? 'planted');
  const jamb = given.jambThickness ?? 20;
  const head = given.headThickness ?? 20;
  const all = {
    infillOrdinates: [],
    ...table,
    bulkheadMin: given.bulkheadMax ?? 18,
    jointDepth: corner === 'rebate' ? usualDepth.share * head : usualDepth.housing,
    tongueThickness: 0.4 * jamb,
    coverWidth:
      usualCover +
      Math.max(0, Math.max(jamb, head) + (stop === 'rebated' ? (given.stopRebate ?? 12) : 0) - 20),
    doorGapBottom: given.sill ? 3 : 10,
    ...given,
    corner,
    stop,
  } as unknown as Required<DoorFrameParameters>;
  return {
    ...all,
    materials: given.materials,
    flat: corner === 'half-lap' || corner === 'bridle' || corner === 'mitre',
    over,
    given: new Set(Object.keys(given)),
    glue: gluedWith(settings),
  };
}
