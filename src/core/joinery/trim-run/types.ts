import type { MaterialId } from '../ids.ts';

/**
 * Parameters of a trim run: mouldings or lining along walls that meet at any angle. The walls are those of its shape, or
 * entered from left to right as one stands in the room; angles on the side of the room. mm; angles in degrees.
 */
export interface TrimRunParameters {
  readonly wallLengths?: readonly number[];
  /** Between each wall and the next; 90 where left out. */
  readonly cornerAngles?: readonly number[];
  readonly leftEnd?: 'square' | 'return';
  readonly rightEnd?: 'square' | 'return';
  readonly width?: number;
  readonly thickness?: number;
  /** Of the trim from the level: 90 stands against the wall. */
  readonly tiltDegrees?: number;
  /** The edge of a sprung trim that touches the wall. */
  readonly touches?: 'lower' | 'upper';
  readonly outside?: 'mitre' | 'post';
  readonly postRadius?: number;
  /** Longest stick to be had. */
  readonly stick?: number;
  readonly materials: { readonly trim: MaterialId };
}
