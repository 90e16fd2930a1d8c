import type { Box, Point } from '#core/geometry';
import type { SurveyView } from './survey-view.ts';

/** The paper that a survey is being drawn on. */
export interface SurveySheet {
  readonly view: Pick<SurveyView, 'adjustment' | 'shape' | 'units'>;
  /** Points on paper. */
  readonly points: Readonly<Record<string, Point>>;
  readonly centre: Point;
  readonly scale: number;
  /** Boxes of texts already set; new texts move along their line to keep clear of them. */
  readonly taken: Box[];
}
