import type { Machining, Part } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { MadePart } from '#core/project';
import { formatNumber } from '#core/units';

/** Near enough to say where a difference comes from, mm. */
const likely = 1;

/**
 * A made part that is too short by just what its tenons or tongues are long: it was cut to its shoulder length (joinery
 * G9). Null when that does not explain it.
 */
export function findShoulderLength(made: MadePart, part: Part): Problem | null {
  const short = part.finished.length - made.finished.length;
  const [start, end] = [reachAt(part, 'start'), reachAt(part, 'end')];
  const reach = start + end;
  if (reach === 0 || short <= 0 || Math.abs(short - reach) > likely) return null;
  const sum =
    start === end
      ? `2 × ${show(start)}`
      : [start, end]
          .filter((one) => one > 0)
          .map(show)
          .join(' + ');
  return {
    severity: 'stop',
    code: 'made-without-tenons',
    about: part.id,
    message: `${part.id} ${part.name} is short by ${sum}: it was cut ${show(made.finished.length)} long, which is its length between the shoulders; with what goes into the joints it is ${show(part.finished.length)}.`,
    remedy: 'Slot it for loose tenons if both members can take them, else make it anew and untick it here.',
    source: 'joinery G9',
  };
}

/** How far what stands on an end reaches past its shoulders, mm. */
function reachAt({ machining, finished }: Part, end: 'start' | 'end'): number {
  const reaches = machining.flatMap((one) => {
    const span = spanOf(one);
    if (!span) return [];
    const atEnd = end === 'start' ? span[0] < likely / 2 : span[1] > finished.length - likely / 2;
    return atEnd ? [span[1] - span[0]] : [];
  });
  return Math.max(0, ...reaches);
}

/** Where a shoulder is cut along the part. */
function spanOf(one: Machining): readonly [number, number] | null {
  if (one.kind === 'recess' && one.name === 'shoulder') return [one.box.min.x, one.box.max.x];
  if (one.kind !== 'prism' || one.name !== 'shoulder' || (one.from !== 'face' && one.from !== 'back'))
    return null;
  const xs = one.outline.map(({ x }) => x);
  return [Math.min(...xs), Math.max(...xs)];
}

/** More of one hand are cut than wanted, while the other hand of the same size is not cut: both were cut alike (joinery G11). */
export function findSameHand(
  made: MadePart,
  part: Part,
  others: readonly Part[],
  all: readonly MadePart[],
): Problem | null {
  if (part.hand === 'none' || made.count <= part.quantity) return null;
  const mate = others.find(
    (other) =>
      other.hand !== 'none' &&
      other.hand !== part.hand &&
      other.piece === part.piece &&
      (['length', 'width', 'thickness'] as const).every(
        (size) => Math.abs(other.finished[size] - part.finished[size]) < likely / 2,
      ),
  );
  if (!mate || all.some(({ part: id, count }) => id === mate.id && count >= mate.quantity)) return null;
  return {
    severity: 'warn',
    code: 'made-same-hand',
    about: part.id,
    message: `You have ${made.count} ${part.hand}-hand ${nounOf(part)}s: ${made.count} of ${part.id} ${part.name} are cut and ${part.quantity} wanted, while its mirror image ${mate.id} ${mate.name} is missing.`,
    remedy: `Make ${mate.id} by its own drawing: a copy turned round has its joints on the wrong side.`,
    source: 'joinery G11',
  };
}

/** What a part is, without where: `stile`. */
function nounOf({ name }: Part): string {
  return (name.split(',')[0] ?? name).toLowerCase();
}

function show(value: number): string {
  return formatNumber(value, 1);
}
