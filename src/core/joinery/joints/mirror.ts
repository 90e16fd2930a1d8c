import type { Outline } from '#core/geometry';
import type { Machining, PartFace, PartSize } from '../types.ts';

export type PartAxis = 'x' | 'y' | 'z';

const pairs: Readonly<Record<PartAxis, readonly [PartFace, PartFace]>> = {
  x: ['start', 'end'],
  y: ['face-edge', 'far-edge'],
  z: ['face', 'back'],
};

/** The same machining mirrored along one axis of the part: for the other end, the other edge, the other face. */
export function mirrorMachining(one: Machining, axis: PartAxis, size: PartSize): Machining {
  const extent = extentOf(axis, size);
  switch (one.kind) {
    case 'recess': {
      const { min, max } = one.box;
      return {
        ...one,
        from: otherFace(one.from, axis),
        box: {
          min: { ...min, [axis]: extent - max[axis] },
          max: { ...max, [axis]: extent - min[axis] },
        },
      };
    }
    case 'prism':
      return {
        ...one,
        from: otherFace(one.from, axis),
        outline: mirrorIn(one.from, one.outline, axis, extent),
      };
    case 'hole': {
      const [along, across] = axesOf(one.from);
      return {
        ...one,
        from: otherFace(one.from, axis),
        x: axis === along ? extent - one.x : one.x,
        y: axis === across ? extent - one.y : one.y,
      };
    }
    case 'bevel':
      return axis === 'z'
        ? { ...one, degrees: -one.degrees }
        : { ...one, edge: otherFace(one.edge, axis) as typeof one.edge };
  }
}

/** Several machinings mirrored along one axis. */
export function mirrorAll(cuts: readonly Machining[], axis: PartAxis, size: PartSize): readonly Machining[] {
  return cuts.map((one) => mirrorMachining(one, axis, size));
}

/** The axes of the part that lie in the plane of a face, in the order an outline on it uses them. */
export function axesOf(face: PartFace): readonly [PartAxis, PartAxis] {
  if (face === 'face' || face === 'back') return ['x', 'y'];
  return face === 'start' || face === 'end' ? ['y', 'z'] : ['x', 'z'];
}

function extentOf(axis: PartAxis, size: PartSize): number {
  return axis === 'x' ? size.length : axis === 'y' ? size.width : size.thickness;
}

function otherFace(face: PartFace, axis: PartAxis): PartFace {
  const [low, high] = pairs[axis];
  return face === low ? high : face === high ? low : face;
}

/**
 * Mirrored points run the other way round, so their order is turned to keep material on the left; an arc then begins at its
 * other end, and bends to the same side as both turn it over.
 */
function mirrorIn(face: PartFace, outline: Outline, axis: PartAxis, extent: number): Outline {
  const [along, across] = axesOf(face);
  if (axis !== along && axis !== across) return outline;
  const mirrored = outline.map(({ x, y }, i) => {
    const bulge = outline[(i + outline.length - 1) % outline.length]?.bulge;
    const at = axis === along ? { x: extent - x, y } : { x, y: extent - y };
    return bulge ? { ...at, bulge } : at;
  });
  return mirrored.reverse();
}
