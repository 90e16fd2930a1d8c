import { adjustSurvey } from '#core/measuring';
import type { MeasuredOpening, MeasuredShape } from '#core/project';

import type { ShapeOutcome } from '../types.ts';
import { adjustOutline } from './adjust-outline.ts';
import { adjustSections } from './adjust-sections.ts';
import { adjustTraced } from './adjust-traced.ts';
import { adjustWalls } from './adjust-walls.ts';
import { asidesOf, obstructionsOf, withUncertainty } from './shape-parts.ts';

/** What a measured shape of any kind comes to: its adjustment, with all that is to be said of it, and the shape for the pieces. */
export function adjustShape(shape: MeasuredShape): ShapeOutcome {
  switch (shape.kind) {
    case 'opening':
      return adjustOpening(shape);
    case 'outline':
      return shape.traced ? adjustTraced(shape, shape.traced) : adjustOutline(shape);
    case 'sections':
      return adjustSections(shape);
    case 'walls':
      return adjustWalls(shape);
  }
}

function adjustOpening(shape: MeasuredOpening): ShapeOutcome {
  const { seenFrom, readings } = shape;
  const { adjustment, shape: adjusted } = adjustSurvey({ seenFrom, readings });
  if (!adjusted) return { shape, adjustment, adjusted };
  return {
    shape,
    adjustment,
    adjusted: {
      ...withUncertainty(adjusted),
      kind: 'opening',
      ...asidesOf(adjustment),
      ...obstructionsOf(shape.obstructions),
    },
  };
}
