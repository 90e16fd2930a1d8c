import type { Problem } from '#core/problems';
import type { PieceId } from '../ids.ts';
import type { PieceKind } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

/** What a door takes from the frame it hangs in. mm. */
export interface FrameForDoor {
  readonly built: BuiltPiece;
  /** As the door's own parameters; a free frame leaves the gaps to the door. Of two doors the width of both. */
  readonly sizes: {
    readonly width: number;
    readonly height: number;
    readonly gapSide?: number;
    readonly gapTop?: number;
    readonly gapBottom?: number;
  };
  /** Thickness of door the frame reckons with; null when with none. */
  readonly thickness: number | null;
  /** How far a corner of the frame is from square over the height of the door; 0 for a square frame. */
  readonly skew: number;
}

const names = { width: 'Wd', height: 'Hd', gapSide: 'gs', gapTop: 'gt', gapBottom: 'gb' } as const;

/** The kinds of piece a door can hang in. */
export const hangingKinds = ['door-frame', 'free-frame'] as const satisfies readonly PieceKind[];

/**
 * The frame a door hangs in, read from its working (joinery B1); a `stop` when it is not there or gives no size. A free
 * frame has no gaps of its own: those of the door, in `own`, are taken off its clear opening.
 */
export function readFrame(
  id: PieceId | undefined,
  context: BuildContext,
  own: Readonly<Record<string, unknown>>,
): { readonly frame: FrameForDoor | null; readonly findings: readonly Problem[] } {
  if (id === undefined) return { frame: null, findings: [] };
  const built = context.built?.find((one) => one.piece === id);
  if (!built) return refuse('frame-missing', `The door frame ${id}, in which it hangs, is not there.`);
  const title = `${built.letter} ${built.name}`;
  if (built.kind === 'free-frame') return readFreeFrame(built, own);
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

/** A free frame of four members whose opening is as good as a rectangle. */
function readFreeFrame(built: BuiltPiece, own: Readonly<Record<string, unknown>>) {
  const title = `${built.letter} ${built.name}`;
  const values = new Map(built.working.map((step) => [step.name, step.value]));
  const [across, up] = [values.get('Wc'), values.get('Hc')];
  if (built.parts.length === 0 || across === undefined || up === undefined) {
    return refuse('frame-unfit', `${title} has no opening of four nearly square corners for a door.`);
  }
  const off = Math.max(...[1, 2, 3, 4].map((i) => Math.abs((values.get(`alpha_${i}`) ?? 90) - 90)));
  const gap = (key: string) => Number(own[key] ?? 0);
  const height = up - gap('gapTop') - gap('gapBottom');
  return {
    frame: {
      built,
      sizes: { width: across - 2 * gap('gapSide'), height },
      thickness: null,
      skew: height * Math.tan((off * Math.PI) / 180),
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
