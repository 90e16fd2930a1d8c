import type { Problem } from '#core/problems';
import type { PieceId } from '../ids.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

/** What a door takes from the frame it hangs in. mm. */
export interface FrameForDoor {
  readonly built: BuiltPiece;
  /** As the door's own parameters. */
  readonly sizes: {
    readonly width: number;
    readonly height: number;
    readonly gapSide: number;
    readonly gapTop: number;
    readonly gapBottom: number;
  };
  /** Thickness of door the frame reckons with. */
  readonly thickness: number;
  /** How far a corner of the frame is from square over the height of the door; 0 for a square frame. */
  readonly skew: number;
}

const names = { width: 'Wd', height: 'Hd', gapSide: 'gs', gapTop: 'gt', gapBottom: 'gb' } as const;

/** The frame a door hangs in, read from its working (joinery B1); a `stop` when it is not there or gives no size. */
export function readFrame(
  id: PieceId | undefined,
  context: BuildContext,
): { readonly frame: FrameForDoor | null; readonly findings: readonly Problem[] } {
  if (id === undefined) return { frame: null, findings: [] };
  const built = context.built?.find((one) => one.piece === id);
  if (!built) return refuse('frame-missing', `The door frame ${id}, in which it hangs, is not there.`);
  const title = `${built.letter} ${built.name}`;
  if (built.kind !== 'door-frame') return refuse('frame-unfit', `${title} is no door frame.`);
  const values = new Map(built.working.map((step) => [step.name, step.value]));
  const sizes = Object.fromEntries(Object.entries(names).map(([key, name]) => [key, values.get(name)]));
  if (built.parts.length === 0 || Object.values(sizes).some((value) => value === undefined)) {
    return refuse('frame-unbuilt', `${title} cannot be made as it stands, so it gives the door no size.`);
  }
  const corners = ['BL', 'BR', 'TR', 'TL'].map((corner) => values.get(`alpha_${corner}`) ?? 90);
  const off = Math.max(...corners.map((degrees) => Math.abs(degrees - 90)));
  return {
    frame: {
      built,
      sizes: sizes as FrameForDoor['sizes'],
      thickness: values.get('td') ?? 0,
      skew: (values.get('Hd') ?? 0) * Math.tan((off * Math.PI) / 180),
    },
    findings: [],
  };
}

function refuse(code: string, message: string) {
  const finding: Problem = {
    severity: 'stop',
    code,
    message,
    remedy: 'Choose a door frame of this project that can be built, or enter width and height.',
    source: 'joinery B1',
  };
  return { frame: null, findings: [finding] };
}
