/** Fence for a strip between it and the blade, and where the strip falls outside (joinery C20). mm. */
export function ripFences(
  board: number,
  width: number,
  kerf: number,
): { readonly inside: number; readonly outside: number } {
  return { inside: width, outside: board - width - kerf };
}

/** First and last fence of a groove of a width at an offset from the fence edge, and the passes (joinery C9, C20). mm. */
export function grooveFences(
  offset: number,
  width: number,
  kerf: number,
): { readonly first: number; readonly last: number; readonly passes: number } {
  const last = offset + width - kerf;
  const between = width > 2 * kerf ? Math.max(0, Math.ceil((width - 2 * kerf) / (0.9 * kerf))) : 0;
  return { first: offset, last, passes: width <= kerf ? 1 : 2 + between };
}

/** Passes that clear a notch of a length with the blade (joinery C6). */
export function notchPasses(length: number, kerf: number): number {
  return Math.ceil((length - kerf) / (0.9 * kerf) - 1e-9) + 1;
}

/** A rebate `width` by `height` in wood of a thickness, in two cuts (joinery C20): blade height and fence of each. mm. */
export function rebateSettings(
  rebate: { readonly width: number; readonly height: number },
  thickness: number,
  kerf: number,
): {
  readonly flat: { readonly blade: number; readonly fence: number };
  readonly onEdge: { readonly blade: number; readonly fence: number };
} {
  return {
    flat: { blade: rebate.height, fence: rebate.width - kerf },
    onEdge: { blade: rebate.width, fence: thickness - rebate.height },
  };
}

/** How far a square corner is overcut by a cutter of radius r that passes through it, or stays unfilled (joinery C19). mm. */
export function dogBone(radius: number, degrees = 90): { readonly overcut: number; readonly fillet: number } {
  const half = (degrees * Math.PI) / 360;
  return { overcut: radius * (1 - Math.sin(half)), fillet: radius * (1 / Math.sin(half) - 1) };
}

/** Fence at the table for a bevelled rip, long face up (joinery C20). mm. */
export function bevelFence(longWidth: number, thickness: number, degrees: number): number {
  return longWidth - thickness * Math.tan((degrees * Math.PI) / 180);
}

/** Saw kerfs for a bend of an outer radius through an angle, a skin left (joinery C20): count and spacing on the outer face. */
export function kerfBend(
  thickness: number,
  kerf: number,
  bend: { readonly radius: number; readonly degrees: number; readonly skin: number },
): { readonly depth: number; readonly count: number; readonly spacing: number } {
  const turn = (bend.degrees * Math.PI) / 180;
  const depth = thickness - bend.skin;
  const count = Math.ceil((turn * depth) / kerf - 1e-9);
  return { depth, count, spacing: (bend.radius * turn) / count };
}
