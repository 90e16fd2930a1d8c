import type { ShapeEdge } from '#core/geometry';
import { adjustSurvey, hangShape, type Reading } from '#core/measuring';
import type { Problem } from '#core/problems';
import type { MeasuredWalls, Wall } from '#core/project';

import type { ShapeOutcome } from '../types.ts';
import { shapeFinding } from './shape-findings.ts';
import { asidesOf, plainAdjustment, pointsOf, withUncertainty } from './shape-parts.ts';

/**
 * Walls in plan: lengths and corner angles are readings like any other, so that a closed room and measured diagonals check
 * them. The first wall runs along x, the room lies below it.
 */
export function adjustWalls(shape: MeasuredWalls): ShapeOutcome {
  const { seenFrom, walls } = shape;
  const missing = findMissing(shape);
  if (walls.length === 0) return { shape, adjustment: plainAdjustment(seenFrom, missing), adjusted: null };
  const readings = [...wallReadings(shape), ...shape.readings];
  const { adjustment, shape: found } = adjustSurvey({ seenFrom, readings });
  const told = { ...adjustment, findings: [...missing, ...wordFindings(adjustment.findings, shape)] };
  if (!found) return { shape, adjustment: told, adjusted: null };
  const hung = hangShape(found, wallPoint(0), wallPoint(1));
  const edges = walls.map((wall, at): ShapeEdge => edgeOf(wall, at, shape));
  return {
    shape,
    adjustment: { ...told, ...pointsOf(hung, adjustment) },
    adjusted: { ...withUncertainty({ ...hung, edges }), kind: 'walls', ...asidesOf(adjustment) },
  };
}

/** The ends of the walls from left to right: A, B, …, Z, A1, B1, … */
export function wallPoint(at: number): string {
  const letter = String.fromCharCode(65 + (at % 26));
  return at < 26 ? letter : `${letter}${Math.floor(at / 26)}`;
}

/** The point at the right end of a wall: in a closed room the last leads back to the first. */
function endOf(at: number, { walls, closed }: MeasuredWalls): string {
  return closed === true && at === walls.length - 1 ? wallPoint(0) : wallPoint(at + 1);
}

function edgeOf(wall: Wall, at: number, shape: MeasuredWalls): ShapeEdge {
  return {
    ...{ name: wall.name, from: wallPoint(at), to: endOf(at, shape) },
    ...(wall.bow !== undefined && { bow: wall.bow }),
  };
}

/** Lengths and corners as readings; that of a corner is called `left/right` after its walls. */
export function wallReadings(shape: MeasuredWalls): readonly Reading[] {
  const { walls, closed } = shape;
  return walls.flatMap((wall, at): readonly Reading[] => {
    const [from, to] = [wallPoint(at), endOf(at, shape)];
    const length: Reading = {
      id: wall.id,
      kind: 'distance',
      from,
      to,
      value: wall.length,
      ...(wall.sigma !== undefined && { sigma: wall.sigma }),
      ...(wall.method && { method: wall.method }),
    };
    const isLast = at === walls.length - 1;
    const next = isLast ? walls[0] : walls[at + 1];
    if (!wall.corner || !next || (isLast && closed !== true)) return [length];
    const { degrees, sigma } = wall.corner;
    const beyond = isLast ? wallPoint(1) : endOf(at + 1, shape);
    // the room lies to the right of the way along its walls: its angle is counted from the wall before to the one after
    const corner: Reading = {
      id: cornerId(wall, next),
      kind: 'angle',
      at: to,
      from,
      to: beyond,
      value: degrees,
      ...(sigma !== undefined && { sigma }),
    };
    return [length, corner];
  });
}

function cornerId(wall: Wall, next: Wall): string {
  return `${wall.id}/${next.id}`;
}

function findMissing({ name, walls, closed }: MeasuredWalls): readonly Problem[] {
  if (walls.length === 0)
    return [
      shapeFinding('warn', 'walls-none', undefined, {
        message: `${name} has no wall yet.`,
        remedy: 'Measure the walls at the height of the piece, from left to right as you face them.',
        source: 'joinery A10',
      }),
    ];
  if (closed === true && walls.length < 3)
    return [
      shapeFinding('stop', 'walls-not-closed', undefined, {
        message: `${name} is said to be closed, but ${walls.length === 1 ? 'one wall makes' : 'two walls make'} no room.`,
        remedy: 'Enter the other walls, or say that the run is open.',
      }),
    ];
  return walls.flatMap((wall, at): Problem[] => {
    const next = walls[at + 1] ?? (closed === true ? walls[0] : undefined);
    if (wall.corner || !next) return [];
    return [
      shapeFinding('warn', 'corner-unmeasured', wall.id, {
        message: `The corner between "${wall.name}" and "${next.name}" has no angle yet.`,
        remedy:
          'Take it with a bevel gauge, or measure from the far end of the one to the far end of the other.',
        source: 'joinery A10',
      }),
    ];
  });
}

/** Findings name readings by their ids, which here are ids of walls: put their names beside them. */
function wordFindings(findings: readonly Problem[], { walls }: MeasuredWalls): readonly Problem[] {
  return findings.map((finding) => {
    const wall = walls.find(({ id }) => id === finding.about);
    return wall ? { ...finding, message: `Wall "${wall.name}": ${finding.message}` } : finding;
  });
}
