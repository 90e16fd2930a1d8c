/** Where things are carried through, on the way from the workshop to their place. mm, clear sizes. */
export type Gate =
  | {
      /** A hole in something thin: a companionway, a doorway, a locker door. */
      readonly kind: 'opening';
      readonly id: string;
      readonly name: string;
      readonly width: number;
      readonly height: number;
      readonly cornerRadius?: number;
    }
  | {
      /** A right-angled turn between two passages, as below a companionway. `depth` is the size square to the turn. */
      readonly kind: 'corner';
      readonly id: string;
      readonly name: string;
      readonly before: number;
      readonly after: number;
      readonly depth: number;
    }
  | {
      /** A room in which it is set down or stood up. */
      readonly kind: 'space';
      readonly id: string;
      readonly name: string;
      readonly length: number;
      readonly width: number;
      readonly height: number;
    };
