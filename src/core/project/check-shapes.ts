import type { Problem } from '#core/problems';

import { checkOrder } from './check-order.ts';
import { checkOutline } from './check-outline.ts';
import { checkPhoto } from './check-photo.ts';
import { findRepeats } from './find-repeats.ts';
import type { HullSection, MeasuredShape, Obstruction } from './shape-types.ts';

/**
 * What is wrong with measured shapes as entered, whatever they come to: names given twice, curves between corners that are
 * no neighbours, ordinates out of order. What is only missing yet is not asked here.
 */
export function checkShapes(shapes: readonly MeasuredShape[]): readonly Problem[] {
  return shapes.flatMap((shape, index) => {
    const path = `shapes[${index}]`;
    return [
      ...findRepeats(shape.readings, `${path}.readings`, `reading of shape "${shape.name}"`),
      ...findRepeats(shape.photos ?? [], `${path}.photos`, `photo of shape "${shape.name}"`),
      ...(shape.photos ?? []).flatMap((photo, place) => checkPhoto(photo, `${path}.photos[${place}]`)),
      ...checkKind(shape, path),
    ];
  });
}

function checkKind(shape: MeasuredShape, path: string): readonly Problem[] {
  switch (shape.kind) {
    case 'opening':
      return checkObstructions(shape, path, []);
    case 'outline':
      return [...checkObstructions(shape, path, []), ...checkOutline(shape, path)];
    case 'sections':
      return [
        ...checkObstructions(shape, path, shape.sections),
        ...findRepeats(shape.sections, `${path}.sections`, `section of shape "${shape.name}"`),
        ...shape.sections.flatMap((section, at) =>
          checkSection(section, `${path}.sections[${at}]`, shape.sections.slice(0, at)),
        ),
      ];
    case 'walls':
      return findRepeats(shape.walls, `${path}.walls`, `wall of shape "${shape.name}"`);
  }
}

function checkSection(
  section: HullSection,
  path: string,
  before: readonly HullSection[],
): readonly Problem[] {
  const name = `Section "${section.name}"`;
  const same = before.find((other) => other.at === section.at);
  return [
    ...(same
      ? [
          stop(
            'sections-alike',
            `${path}.at`,
            `${name} stands at ${section.at}, as does section "${same.name}".`,
            'Say how far from each other they were taken.',
          ),
        ]
      : []),
    ...checkOrder(
      section.ordinates.map(({ height }) => height),
      `${path}.ordinates`,
      name,
    ),
    ...checkOrder(
      (section.bevels ?? []).map(({ height }) => height),
      `${path}.bevels`,
      `The list of bevels of ${name.toLowerCase()}`,
    ),
  ];
}

function checkObstructions(
  shape: { readonly name: string; readonly obstructions?: readonly Obstruction[] },
  path: string,
  sections: readonly HullSection[],
): readonly Problem[] {
  const list = shape.obstructions ?? [];
  return [
    ...findRepeats(list, `${path}.obstructions`, `obstruction of shape "${shape.name}"`),
    ...list.flatMap(({ name, section }, at): Problem[] => {
      if (section === undefined || sections.some((each) => each.id === section)) return [];
      const choice =
        sections.length > 0 ? `There are: ${sections.map(({ id }) => id).join(', ')}.` : 'There is none.';
      return [
        stop(
          'section-missing',
          `${path}.obstructions[${at}].section`,
          `Obstruction "${name}" names the section "${section}", which does not exist.`,
          `${choice} Choose one or leave it out.`,
        ),
      ];
    }),
  ];
}

function stop(code: string, about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, about, message, remedy };
}
