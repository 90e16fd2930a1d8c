import { checkCarrying, type Carrying } from '#core/pipeline';
import type { BuiltPiece, Gate } from '#core/joinery';

/** A piece to be looked into, and what was found, by number. */
export interface CarryRequest {
  readonly number: number;
  readonly built: BuiltPiece;
  readonly route: readonly Gate[];
}

export interface CarryAnswer {
  readonly number: number;
  readonly carrying: Carrying;
}

self.addEventListener('message', ({ data: { number, built, route } }: MessageEvent<CarryRequest>) => {
  const answer: CarryAnswer = { number, carrying: checkCarrying(built, route) };
  self.postMessage(answer);
});
