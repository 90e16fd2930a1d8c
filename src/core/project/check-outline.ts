import type { Problem } from '#core/problems';

import { checkOrder } from './check-order.ts';
import { findRepeats } from './find-repeats.ts';
import type { MeasuredCurve, MeasuredOutline } from './shape-types.ts';

/** What is wrong with the corners, the curves and the drawing of an outline. */
export function checkOutline(shape: MeasuredOutline, path: string): readonly Problem[] {
  const twice = shape.corners.filter((corner, at) => shape.corners.indexOf(corner) !== at);
  return [
    ...twice.map((corner) =>
      stop(
        'corner-twice',
        `${path}.corners`,
        `Two corners of "${shape.name}" are called "${corner}".`,
        'Give one of them another name.',
      ),
    ),
    ...findRepeats(shape.curves ?? [], `${path}.curves`, `curve of shape "${shape.name}"`),
    ...(shape.curves ?? []).flatMap((curve, at) =>
      checkCurve(curve, `${path}.curves[${at}]`, shape, (shape.curves ?? []).slice(0, at)),
    ),
    ...checkTraced(shape, path),
  ];
}

function checkCurve(
  curve: MeasuredCurve,
  path: string,
  shape: MeasuredOutline,
  before: readonly MeasuredCurve[],
): readonly Problem[] {
  const { corners } = shape;
  const name = `The curve ${curve.from}–${curve.to} of "${shape.name}"`;
  const [from, to] = [corners.indexOf(curve.from), corners.indexOf(curve.to)];
  const isEdge = from >= 0 && to >= 0 && (from + 1) % corners.length === to;
  return [
    ...(isEdge
      ? []
      : [
          stop(
            'curve-corners',
            path,
            `${name} does not run from one corner to the next: they are ${corners.join(', ') || 'not named yet'}.`,
            'Name two neighbouring corners, in the order round the outline.',
          ),
        ]),
    ...(before.some((other) => other.from === curve.from && other.to === curve.to)
      ? [stop('curve-twice', path, `${name} is there twice.`, 'Keep one of them.')]
      : []),
    ...checkOrder(
      curve.ordinates.map(({ at }) => at),
      `${path}.ordinates`,
      name,
    ),
  ];
}

function checkTraced({ name, corners, traced }: MeasuredOutline, path: string): readonly Problem[] {
  if (!traced) return [];
  const fits =
    traced.cornersAt.length === corners.length &&
    traced.cornersAt.every(
      (at, place) =>
        Number.isInteger(at) &&
        at > (place === 0 ? -1 : (traced.cornersAt[place - 1] ?? at)) &&
        at < traced.points.length,
    );
  if (fits) return [];
  return [
    stop(
      'traced-corners',
      `${path}.traced.cornersAt`,
      `The drawing of "${name}" has ${traced.points.length} points; its ${corners.length} corners are said to be numbers ${traced.cornersAt.join(', ')} of them.`,
      'Give one number for each corner, rising from 0; or import the drawing anew.',
    ),
  ];
}

function stop(code: string, about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, about, message, remedy };
}
