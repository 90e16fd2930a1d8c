import type { Reading } from '#core/measuring';
import type { Command } from '#core/project';
import type { Draft } from './draft.ts';

/** What the hand is doing on the Site page; nothing of it is kept. */
export class Desk {
  /** The pad lies open on a phone. */
  isOpen = $state(false);
  /** Every reading once more, from the other end. */
  isSecondRound = $state(false);
  /** What is being typed, as if it were entered. */
  trial = $state.raw<Command | null>(null);
  /** The curve or section whose ordinates are being taken: the next one of it comes before others. */
  item = $state<string | null>(null);
  /** A reading of the user's own while it is said where it goes. */
  draft = $state.raw<Draft | null>(null);

  begin(kind: Reading['kind']): void {
    this.draft = { kind, points: [], at: null, name: '' };
  }

  /** A point was tapped, on the drawing or by its name. */
  point(name: string): void {
    if (this.draft) this.draft = { ...this.draft, points: [...this.draft.points, name] };
  }

  change(part: Partial<Draft>): void {
    if (this.draft) this.draft = { ...this.draft, ...part };
  }

  leave(): void {
    this.draft = null;
    this.trial = null;
  }
}
