import type { Box3, Outline, Placement, Point, Shape } from '#core/geometry';
import type { Problem } from '#core/problems';
import type { LengthSystem } from '#core/units';
import type { MaterialId, PieceId } from './ids.ts';
import type { JoinerySettings, Material, PieceKind } from './piece-types.ts';

/** Address of a part, the same on screen, label, template and file: piece letter and number, as `C4`. */
export type PartId = string;
/** Length along the part's own X (the grain in solid timber), width along Y, thickness along Z; mm. */
export interface PartSize {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** The faces of a part in its own frame (joinery 0.2): face side z=0, back z=T, face edge y=0, far edge y=W, ends x=0 and x=L. */
export type PartFace = 'face' | 'back' | 'face-edge' | 'far-edge' | 'start' | 'end';

/** Machining on a part, in the part's own frame. */
export type Machining =
  | {
      /** Wood taken away in a box, as rebates, grooves, housings and tenon cheeks. */
      readonly kind: 'recess';
      readonly name:
        | 'rebate'
        | 'groove'
        | 'housing'
        | 'lap'
        | 'slot'
        | 'mortise'
        | 'shoulder'
        | 'notch'
        | 'finger'
        | 'pocket';
      /** The face it is worked from. */
      readonly from: PartFace;
      readonly box: Box3;
      readonly note?: string;
    }
  | {
      /** A prism through or into a face, for what a box cannot say (dovetails, sloping shoulders). */
      readonly kind: 'prism';
      readonly name: 'tail-socket' | 'pin-socket' | 'slope' | 'slot' | 'lap' | 'mortise' | 'shoulder';
      readonly from: PartFace;
      /** In the plane of the face: for `face` and `back` x along X, y along Y; for ends x along Y, y along Z; for edges x along X, y along Z. */
      readonly outline: Outline;
      /** How deep it ends; it begins at the face, or `below` it. */
      readonly depth: number;
      readonly below?: number;
      readonly note?: string;
    }
  | {
      readonly kind: 'hole';
      readonly from: PartFace;
      /** Centre in the plane of the face, as in `prism`. */
      readonly x: number;
      readonly y: number;
      readonly diameter: number;
      /** mm, or `through`. */
      readonly depth: number | 'through';
      readonly countersink?: number;
      readonly note?: string;
    }
  | {
      /** An end or edge sawn at an angle across the thickness; `degrees` off square, positive when the back is the longer side. */
      readonly kind: 'bevel';
      readonly edge: 'face-edge' | 'far-edge' | 'start' | 'end';
      readonly degrees: number;
      readonly note?: string;
    };

export interface PartEdge {
  readonly edge: 'face-edge' | 'far-edge' | 'start' | 'end';
  readonly treatment: 'bare' | 'lipped' | 'scribed' | 'rounded' | 'flushed';
  /** Width left on for scribing or to be flushed after gluing, or lipping thickness, or radius. */
  readonly amount?: number;
}

/** A step of the working: what a number is, the rule it follows, the numbers put in and what comes out. */
export interface WorkingStep {
  /** Name as used in formulas, unique in its piece: `Fw`. */
  readonly name: string;
  /** In words: `frame width outside`. */
  readonly label: string;
  /** The rule, as `down(xR - xL - 2*p, 0.5)`; absent for a number put in. */
  readonly formula?: string;
  /** The names in the formula with their values. */
  readonly inputs: readonly { readonly name: string; readonly value: number }[];
  readonly value: number;
  /** `mm` unless said. */
  readonly unit: 'mm' | 'degrees' | 'count' | 'ratio' | 'kg' | 'percent';
  /** Rule or origin: `joinery B1`, `shape Door opening`, `setting`, `you`. */
  readonly source: string;
  /** Key of the parameter of the piece that the number is, given or at its default. */
  readonly parameter?: string;
}

export interface Part {
  readonly id: PartId;
  readonly piece: PieceId;
  readonly name: string;
  readonly quantity: number;
  readonly hand: 'left' | 'right' | 'none';
  readonly material: MaterialId;
  readonly kind: 'solid' | 'sheet';
  readonly finished: PartSize;
  /** Leaving the saw: finished, scribe and trimming allowances. */
  readonly cut: PartSize;
  /** The blank asked from board or sheet. */
  readonly rough: PartSize;
  /** Finished outline in the part frame, seen from the face side; holes right through it. */
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly grain: 'along-length' | 'along-width' | 'any';
  /** May be turned across on a sheet. */
  readonly turn: boolean;
  /** Which face is seen when fitted, in words: `face side to the saloon`. */
  readonly faceSide: string;
  readonly edges: readonly PartEdge[];
  readonly machining: readonly Machining[];
  /** Fronts cut from one strip in this order so that the figure runs through. */
  readonly matched?: { readonly set: string; readonly index: number };
  /** Must lie flat: of flat-sawn solid timber no wider than the project allows from one board (joinery D3). */
  readonly flat?: true;
  /** It is glued up edge to edge of this many staves (joinery D4, C16): `rough` is then the blank of one stave, or of two leaves. */
  readonly staves?: {
    readonly count: number;
    readonly width: number;
    readonly leaves?: 2;
    /** Names of the working steps behind their number and the size of their blank. */
    readonly working: Part['working'] & { readonly count: string };
  };
  /** Its figure is to be opened like a book: staves are leaves of one board, mirrored (joinery D3). */
  readonly bookMatched?: true;
  /** Of parts like it in section the longest is made once more when spares are cut (joinery D3, as trim). */
  readonly oneMore?: true;
  /** Sawn as a flat strip and bent: its finished size and outline are as bent, and no router cuts it to them. */
  readonly bent?: true;
  /** Made and not fitted: to try the setting of a machine on, or to have one in hand (joinery D3). Why, in words. */
  readonly spare?: string;
  /** Wanted from the same board as this part, side by side (joinery D3). */
  readonly besideOf?: PartId;
  /** One per copy, in the frame of the piece. */
  readonly placements: readonly Placement[];
  /** Names of the working steps behind each size. */
  readonly working: { readonly length: string; readonly width: string; readonly thickness: string };
  readonly notes: readonly string[];
}

/** Fronts that come out of one strip in order (joinery B6). Sizes of the strip as cut, mm. */
export interface MatchedSet {
  readonly id: string;
  readonly parts: readonly PartId[];
  /** Direction in which the fronts follow each other, against the grain of the sheet. */
  readonly direction: 'along' | 'across';
  /** Distance thrown away between neighbours, in order; for `tight` the kerf. */
  readonly between: readonly number[];
  readonly trim: number;
}

/** A joint between two parts, for lists and steps; its geometry is the parts' machining. */
export interface Joint {
  readonly kind: string;
  readonly between: readonly [PartId, PartId];
  readonly count: number;
  readonly settings: readonly string[];
  /** What it has to take, where that is more than its own weight; `heavy`: it is stood on or racked. */
  readonly load?: 'light' | 'heavy';
}

export interface Fixing {
  /** What to buy, as `Screw 4.5 × 50, stainless A4`. */
  readonly item: string;
  readonly quantity: number;
  readonly use: string;
  readonly source?: string;
}

export interface AssemblyStep {
  readonly id: string;
  readonly text: string;
  readonly place: 'boat' | 'workshop' | 'shop';
  readonly minutes: number;
  readonly parts: readonly PartId[];
  /** Steps that must be done before. */
  readonly after: readonly string[];
  readonly take?: readonly string[];
  /** Steps of other pieces that must be done before, and those that wait for this one. */
  readonly elsewhere?: { readonly after: readonly StepAddress[]; readonly before: readonly StepAddress[] };
}

/** A step of a piece, by the ids of both. */
export interface StepAddress {
  readonly piece: PieceId;
  readonly step: string;
}

/** A board of a material as it can be used: its edges trimmed, mm. */
export interface Board {
  readonly material: MaterialId;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** What a piece is built from besides its own parameters. `shape` null: none measured yet, or none wanted. */
export interface BuildContext {
  readonly shape: Shape | null;
  readonly shapeName?: string;
  readonly materials: readonly Material[];
  readonly settings: JoinerySettings;
  /** What lengths in its texts are told in; left out: mm. */
  readonly units?: LengthSystem;
  /** Boards that can be had, edges trimmed; left out: of any size. */
  readonly boards?: readonly Board[];
  /** The pieces made before this one, for a piece that takes its size from another (`requiredPieces`). */
  readonly built?: readonly BuiltPiece[];
}

/** Everything a piece comes to. */
export interface BuiltPiece {
  readonly piece: PieceId;
  readonly letter: string;
  readonly name: string;
  readonly kind: PieceKind;
  readonly seenFrom: string;
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly matchedSets: readonly MatchedSet[];
  readonly fixings: readonly Fixing[];
  readonly steps: readonly AssemblyStep[];
  readonly working: readonly WorkingStep[];
  readonly envelope: Box3;
  /** What of it is carried as one, when that is not the whole; the largest first. */
  readonly loads?: readonly { readonly name: string; readonly box: Box3 }[];
  /** The pieces it is made of, when it is made of several, with the parts of each. */
  readonly members?: readonly { readonly name: string; readonly parts: readonly PartId[] }[];
  /** Corners of the opening it is fitted to, in the frame of the piece. */
  readonly opening?: Readonly<Record<string, Point>>;
  /** Turn from the frame of the shape to that of the piece about the shape's first corner, radians counter-clockwise. */
  readonly turn?: number;
  readonly findings: readonly Problem[];
}
