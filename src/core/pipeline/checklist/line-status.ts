import { openingKeyOf, type Reading } from '#core/measuring';
import type { Piece } from '#core/joinery';
import type { MeasuredShape, Project } from '#core/project';

import type { AskedLine, ReadingToTake, VisitLine } from './types.ts';

type Status = VisitLine['status'];

/** A line with its status: by the readings of its shape, by its own entries, by the piece, or ticked off by hand. */
export function answerLine(
  line: AskedLine,
  project: Project,
  { block, shape, piece }: { readonly block: string; readonly shape?: MeasuredShape; readonly piece?: Piece },
): VisitLine {
  const mark = `look:${block}/${line.key}`;
  const values = valuesOf(line, shape, piece);
  const isTicked = project.done.includes(mark);
  const isTwice = values.length >= 2 * Math.max(1, line.reading ? 1 : line.blanks);
  const status: Status = isTicked || isTwice ? 'done' : values.length === 0 ? 'open' : stateOnce(line);
  return { ...line, mark, status, values };
}

/** Readings want a second look; lists of ordinates and chosen sizes stand as they are. */
function stateOnce({ reading }: AskedLine): Status {
  return reading === undefined ? 'done' : 'once';
}

function valuesOf(
  line: AskedLine,
  shape: MeasuredShape | undefined,
  piece: Piece | undefined,
): readonly number[] {
  const { reading, parameters = [] } = line;
  const found = reading ? shape?.readings.find((each) => isSamePlace(each, reading)) : undefined;
  if (found) return [found.value, ...(found.repeats ?? [])];
  const entered = shape ? entriesOf(line.key, shape) : [];
  if (entered.length > 0 || !piece) return entered;
  const known = piece.parameters as unknown as Readonly<Record<string, unknown>>;
  return parameters.flatMap((key) => {
    const value = known[key];
    return typeof value === 'number' ? [value] : [];
  });
}

/** What is entered in the lists of a shape for one of its lines. */
function entriesOf(key: string, shape: MeasuredShape): readonly number[] {
  const of = (prefix: string): string | null => (key.startsWith(prefix) ? key.slice(prefix.length) : null);
  switch (shape.kind) {
    case 'outline': {
      const curve = shape.curves?.find(({ id }) => id === of('curve-'));
      const bar = shape.traced?.bars?.[key === 'bar-x' ? 'x' : 'y'];
      if (of('bar-') !== null) return bar ? [bar.real] : [];
      return (curve?.ordinates ?? []).map(({ value }) => value);
    }
    case 'sections': {
      const section = shape.sections.find(({ id }) => id === of('ordinates-'));
      const bevels = shape.sections.find(({ id }) => id === of('bevels-'))?.bevels ?? [];
      if (key === 'apart') return shape.sections.slice(1).map(({ at }) => at);
      return [
        ...(section?.ordinates ?? []).map(({ depth }) => depth),
        ...bevels.map(({ degrees }) => degrees),
      ];
    }
    case 'walls': {
      const length = shape.walls.find(({ id }) => id === of('length-'))?.length;
      const bow = shape.walls.find(({ id }) => id === of('bow-'))?.bow;
      const corner = shape.walls.find(({ id }) => id === of('corner-'))?.corner?.degrees;
      return [length, bow, corner].filter((value) => value !== undefined);
    }
    case 'opening':
      return [];
  }
}

/** True when a reading is taken at the place that a line asks for, whichever way the tape ran. */
function isSamePlace(reading: Reading, wanted: ReadingToTake): boolean {
  if (reading.kind !== wanted.kind) return false;
  const key = openingKeyOf(reading);
  if (key !== null) return key === openingKeyOf({ ...wanted, value: 1 } as Reading);
  const points = (each: Reading | ReadingToTake): string =>
    Object.entries(each)
      .filter(([name]) => placeKeys.includes(name))
      .map(([, value]: [string, unknown]) => JSON.stringify(Array.isArray(value) ? [...value].sort() : value))
      .sort()
      .join();
  return points(reading) === points(wanted);
}

const placeKeys = ['from', 'to', 'left', 'right', 'at', 'first', 'second', 'place', 'point', 'station'];
