import type { HungDoorParameters } from '../hung-door/types.ts';
import type { MaterialId } from '../ids.ts';

/** Parameters of a louvred door: slanting slats housed in the stiles (joinery B4). mm; the angle in degrees. */
export interface LouvredDoorParameters extends HungDoorParameters {
  readonly thickness?: number;
  readonly stile?: number;
  readonly topRail?: number;
  readonly bottomRail?: number;
  /** Rails between fields of slats, evenly spaced. */
  readonly midRails?: number;
  readonly midRail?: number;
  readonly joint?: 'stub-tenon' | 'loose-tenon';
  readonly tenon?: number;
  /** Edges of the slats square, or bevelled flush with both faces of the door. */
  readonly section?: 'square' | 'flush';
  /** From the plane of the door to the slat, degrees. */
  readonly angleDegrees?: number;
  readonly slatThickness?: number;
  /** Of square-edged slats; as wide as the thickness of the door allows when left out. */
  readonly slatWidth?: number;
  /** Slats behind each face of the door. */
  readonly setback?: number;
  /** How far a slat comes down over the one below, at least. */
  readonly overlap?: number;
  /** Number of slats in each field; as many as the overlap asks for when left out. */
  readonly slats?: number;
  readonly housing?: number;
  readonly materials: { readonly frame: MaterialId; readonly slats: MaterialId };
}
