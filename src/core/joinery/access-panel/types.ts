import type { MaterialId } from '../ids.ts';

/**
 * Parameters of a removable access panel with turn buttons: lapped on the surround, or inset on cleats (joinery B14). The
 * hole is a rectangle as entered, or a measured opening. mm.
 */
export interface AccessPanelParameters {
  readonly width?: number;
  readonly height?: number;
  readonly mount?: 'lap' | 'inset';
  readonly lap?: number;
  readonly gap?: number;
  readonly cleatWidth?: number;
  readonly cleatThickness?: number;
  /** By the perimeter when left out. */
  readonly buttons?: number;
  readonly buttonWidth?: number;
  readonly buttonThickness?: number;
  /** Pivot from the edge of the panel, on the surround; worked out when left out. */
  readonly pivot?: number;
  readonly arm?: number;
  readonly notch?: 'hole' | 'ring' | 'none';
  /** Room square to the panel to pull it out; not checked when left out. */
  readonly pullRoom?: number;
  readonly materials: { readonly panel: MaterialId; readonly solid: MaterialId };
}
