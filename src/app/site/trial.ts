import { adjustShape, type ShapeOutcome } from '#core/pipeline';
import { applyCommand, type Command, type Project } from '#core/project';

/**
 * What a shape would come to with a value that is still being typed. One figure of three says nothing yet: as long as the
 * value cannot be meant, the shape stays as it was and only the number is shown.
 */
export function tryCommand(project: Project, outcome: ShapeOutcome, command: Command): ShapeOutcome {
  const next = applyCommand(project, command);
  const shape = next.ok ? next.value.shapes.find(({ id }) => id === outcome.shape.id) : undefined;
  if (!shape) return outcome;
  const tried = adjustShape(shape);
  return outcome.adjusted && isUnfinished(tried, outcome) ? { ...outcome, shape } : tried;
}

/** A slip of more than this share of what the others say is a number half typed. */
const halfTyped = 0.4;

function isUnfinished({ adjusted, adjustment, shape }: ShapeOutcome, before: ShapeOutcome): boolean {
  if (!adjusted) return true;
  const known = new Set(before.shape.readings);
  return shape.readings
    .filter((reading) => !known.has(reading))
    .some(({ id, value }) => {
      const slip = adjustment.suspects.find((suspect) => suspect.id === id)?.slip ?? 0;
      return Math.abs(slip) > halfTyped * Math.abs(value - slip) && Math.abs(slip) > 30;
    });
}

/** The outcome without the sight of one reading, which a fresh look must not follow. */
export function hideReading(outcome: ShapeOutcome, id: string | null): ShapeOutcome {
  const readings = outcome.shape.readings.filter((reading) => reading.id !== id);
  return id === null ? outcome : { ...outcome, shape: { ...outcome.shape, readings } };
}
