import type { MaterialId } from '../ids.ts';

/**
 * Parameters of a lining of slats with gaps over cleats, on a ceiling, a side or the hull (joinery B4). Its size comes from
 * a measured shape when there is one: of an opening the smaller sides, of hull sections length and girth. mm.
 */
export interface SlatLiningParameters {
  /** Along the slats, and across them; on a curve measured round it. */
  readonly run?: number;
  readonly span?: number;
  readonly direction?: 'across' | 'upright';
  readonly slatWidth?: number;
  readonly gap?: number;
  /** What gives way so that the slats come out even. */
  readonly adjust?: 'gap' | 'slat';
  readonly endGaps?: boolean;
  readonly slatThickness?: number;
  readonly cleatWidth?: number;
  readonly cleatThickness?: number;
  readonly cleatSpacing?: number;
  readonly materials: { readonly slats: MaterialId; readonly cleats: MaterialId };
}
