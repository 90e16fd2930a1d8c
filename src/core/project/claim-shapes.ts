import type { Reading } from '#core/measuring';

import { claim, type Claim } from './claims.ts';
import type { HullSection, MeasuredOutline, MeasuredShape, Obstruction, Wall } from './shape-types.ts';

/** What the numbers of a measured shape must be. */
export function claimShape(shape: MeasuredShape, path: string): readonly Claim[] {
  const readings = shape.readings.flatMap((reading, place) =>
    claimReading(reading, `${path}.readings[${place}]`, `reading "${reading.id}" of "${shape.name}"`),
  );
  switch (shape.kind) {
    case 'opening':
      return [...readings, ...claimObstructions(shape, path)];
    case 'outline':
      return [...readings, ...claimObstructions(shape, path), ...claimOutline(shape, path)];
    case 'sections':
      return [
        ...readings,
        ...claimObstructions(shape, path),
        ...shape.sections.flatMap((section, at) => claimSection(section, `${path}.sections[${at}]`)),
      ];
    case 'walls':
      return [...readings, ...shape.walls.flatMap((wall, at) => claimWall(wall, `${path}.walls[${at}]`))];
  }
}

function claimReading(reading: Reading, path: string, label: string): readonly Claim[] {
  const isLength = ['distance', 'width', 'thickness'].includes(reading.kind);
  return [
    ...(isLength ? [claim(`${path}.value`, label, reading.value, 'above zero')] : []),
    ...(reading.sigma === undefined
      ? []
      : [claim(`${path}.sigma`, `sigma of ${label}`, reading.sigma, 'above zero')]),
    ...(reading.kind === 'width'
      ? [claim(`${path}.at`, `place of ${label}`, reading.at, 'between 0 and 1')]
      : []),
  ];
}

function claimSigma(sigma: number | undefined, path: string, label: string): readonly Claim[] {
  return sigma === undefined ? [] : [claim(`${path}.sigma`, `sigma of ${label}`, sigma, 'above zero')];
}

function claimOutline(shape: MeasuredOutline, path: string): readonly Claim[] {
  const bars = Object.entries(shape.traced?.bars ?? {});
  return [
    ...(shape.curves ?? []).flatMap((curve, at) => [
      ...claimSigma(curve.sigma, `${path}.curves[${at}]`, `curve ${curve.from}–${curve.to}`),
      ...curve.ordinates.map((ordinate, place) =>
        claim(
          `${path}.curves[${at}].ordinates[${place}].at`,
          `station ${place + 1} of curve ${curve.from}–${curve.to}`,
          ordinate.at,
          'zero or more',
        ),
      ),
    ]),
    ...claimSigma(shape.traced?.sigma, `${path}.traced`, `the drawing of "${shape.name}"`),
    ...bars.flatMap(([way, bar]) =>
      (['drawn', 'real'] as const).map((key) =>
        claim(
          `${path}.traced.bars.${way}.${key}`,
          `${key} length of the check bar of "${shape.name}"`,
          bar[key],
          'above zero',
        ),
      ),
    ),
  ];
}

function claimSection(section: HullSection, path: string): readonly Claim[] {
  return [
    ...claimSigma(section.sigma, path, `section "${section.name}"`),
    ...(section.bevels ?? []).map(({ degrees }, at) =>
      claim(
        `${path}.bevels[${at}].degrees`,
        `bevel ${at + 1} of section "${section.name}"`,
        degrees,
        'between -89 and 89',
      ),
    ),
  ];
}

function claimWall(wall: Wall, path: string): readonly Claim[] {
  const label = `wall "${wall.name}"`;
  return [
    claim(`${path}.length`, `length of ${label}`, wall.length, 'above zero'),
    ...claimSigma(wall.sigma, path, label),
    ...(wall.corner === undefined
      ? []
      : [
          claim(
            `${path}.corner.degrees`,
            `corner after ${label}`,
            wall.corner.degrees,
            'more than 0 and less than 360',
          ),
          ...claimSigma(wall.corner.sigma, `${path}.corner`, `the corner after ${label}`),
        ]),
  ];
}

function claimObstructions(
  shape: { readonly obstructions?: readonly Obstruction[] },
  path: string,
): readonly Claim[] {
  return (shape.obstructions ?? []).flatMap((each, at) =>
    (['width', 'height'] as const).map((size) =>
      claim(`${path}.obstructions[${at}].${size}`, `${size} of ${each.name}`, each[size], 'above zero'),
    ),
  );
}
