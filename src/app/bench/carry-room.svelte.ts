import type { BuiltPiece, Gate } from '#core/joinery';
import type { Carrying } from '#core/pipeline';
import type { CarryAnswer, CarryRequest } from './carry-worker.ts';
import { startCarryWorker } from './start-carry-worker.ts';

interface Carried {
  readonly built: BuiltPiece;
  readonly route: readonly Gate[];
  readonly carrying: Carrying;
}

const noRoute: readonly Gate[] = [];

/** How pieces go together and to their place, looked into in a worker: one after the other, the same piece never twice. */
export class CarryRoom {
  #known = $state.raw<readonly Carried[]>([]);
  #wanted: readonly BuiltPiece[] = [];
  #route: readonly Gate[] = noRoute;
  #asked: { readonly number: number; readonly built: BuiltPiece; readonly route: readonly Gate[] } | null =
    null;
  #number = 0;
  #worker: Worker | null = null;

  /** How a piece goes together, once that has been looked into. */
  carryingOf(built: BuiltPiece): Carrying | null {
    return this.#known.find((each) => each.built === built)?.carrying ?? null;
  }

  /** Looks into these pieces on this route, as far as that is not known yet. */
  look(pieces: readonly BuiltPiece[], route: readonly Gate[] = noRoute): void {
    this.#wanted = pieces;
    this.#route = route;
    this.#known = this.#known.filter(({ built }) => pieces.includes(built));
    this.#next();
  }

  /** Asks for one at a time, so that what has changed meanwhile is not waited for. */
  #next(): void {
    if (this.#asked) return;
    const route = this.#route;
    const built = this.#wanted.find((each) => !this.#isKnown(each));
    if (!built) return;
    this.#number += 1;
    this.#asked = { number: this.#number, built, route };
    const request: CarryRequest = { number: this.#number, built, route };
    this.#bench().postMessage(request);
  }

  #isKnown(built: BuiltPiece): boolean {
    return this.#known.some((each) => each.built === built && each.route === this.#route);
  }

  #take({ number, carrying }: CarryAnswer): void {
    const asked = this.#asked;
    if (asked?.number !== number) return;
    this.#asked = null;
    const { built, route } = asked;
    if (this.#wanted.includes(built) && route === this.#route)
      this.#known = [...this.#known.filter((each) => each.built !== built), { built, route, carrying }];
    this.#next();
  }

  #bench(): Worker {
    if (this.#worker) return this.#worker;
    const worker = startCarryWorker();
    worker.addEventListener('message', (event: MessageEvent<CarryAnswer>) => this.#take(event.data));
    worker.addEventListener('error', (event) => {
      throw new Error(`the worker for carrying failed: ${event.message}`);
    });
    this.#worker = worker;
    return worker;
  }
}
