import { unreachable } from '#core/problems';
import type { Problem } from '#core/problems';
import { refuse } from './refuse.ts';
import { showMm } from './words.ts';
import type { Reading } from './types.ts';

/** Longer than this no batten and no board is, mm. */
const longestStation = 100_000;

/** What is wrong with where a reading was taken: points that lack a name, or are the same; null when all is well. */
export function checkPlaces(reading: Reading): Problem | null {
  switch (reading.kind) {
    case 'width':
      return checkWidth(reading);
    case 'offset':
      return checkThree(reading, reading.point);
    case 'angle':
      return checkThree(reading, reading.at);
    case 'ordinate':
      return checkThree(reading, reading.point) ?? checkStation(reading);
    case 'tick':
      return checkName(reading, reading.point) ?? checkBoard(reading) ?? checkStation(reading);
    case 'twist':
      return checkStrings(reading);
    case 'thickness':
      return reading.place.trim() === ''
        ? refuse(
            'place-unnamed',
            reading,
            'does not say where it was taken.',
            'Name the place, as "left jamb, at the sill".',
          )
        : null;
    case 'distance':
    case 'plumb':
    case 'level':
    case 'bow':
      return checkEnds(reading, [reading.from, reading.to]);
    default:
      return unreachable(reading);
  }
}

function checkThree(reading: Extract<Reading, { from: string }>, third: string): Problem | null {
  const { from, to } = reading;
  return (
    checkEnds(reading, [from, to]) ?? checkEnds(reading, [third, from]) ?? checkEnds(reading, [third, to])
  );
}

function checkStation(reading: Extract<Reading, { station: number }>): Problem | null {
  if (Number.isFinite(reading.station) && Math.abs(reading.station) <= longestStation) return null;
  return refuse(
    'station-not-a-number',
    reading,
    `has the station ${Number.isFinite(reading.station) ? `${showMm(reading.station)} mm` : 'that is not a number'}, which cannot be used.`,
    'Give how far along the batten or board it was taken, in mm.',
  );
}

function checkBoard(reading: Extract<Reading, { kind: 'tick' }>): Problem | null {
  if (reading.reach !== undefined && !(reading.reach >= 0 && reading.reach <= 10))
    return refuse(
      'reach-outside',
      reading,
      `has a stick that reaches ${String(reading.reach)} times its traced edge.`,
      'Give the reach beyond the traced edge over the traced length, 3 at most; or leave it out.',
    );
  if (reading.board.trim() !== '' && reading.board !== '__proto__') return null;
  return refuse(
    'board-unnamed',
    reading,
    'has a board without a name.',
    'Name the board it was ticked on, as "1".',
  );
}

function checkStrings(reading: Extract<Reading, { kind: 'twist' }>): Problem | null {
  const { first, second } = reading;
  const fault = checkEnds(reading, first) ?? checkEnds(reading, second);
  if (fault) return fault;
  if (new Set([...first, ...second]).size === 4) return null;
  return refuse(
    'strings-meet',
    reading,
    'has two strings that share an end, so they cross nowhere.',
    'Stretch each string from corner to opposite corner.',
  );
}

function checkWidth(reading: Extract<Reading, { kind: 'width' }>): Problem | null {
  if (!(reading.at >= 0 && reading.at <= 1))
    return refuse(
      'fraction-outside',
      reading,
      `is taken at the fraction ${String(reading.at)} of the edges.`,
      'Give a fraction from 0 to 1.',
    );
  const same = [...reading.left].sort().join() === [...reading.right].sort().join();
  if (same)
    return refuse(
      'edges-alike',
      reading,
      'names the same edge on both sides.',
      'Name the left and the right edge.',
    );
  return checkEnds(reading, reading.left) ?? checkEnds(reading, reading.right);
}

function checkEnds(reading: Reading, [from, to]: readonly [string, string]): Problem | null {
  const fault = checkName(reading, from) ?? checkName(reading, to);
  if (fault || from !== to) return fault;
  return refuse(
    'ends-alike',
    reading,
    `runs from ${from} to ${to}, the same point.`,
    'Name two different points.',
  );
}

function checkName(reading: Reading, name: string): Problem | null {
  if (name.trim() === '')
    return refuse('point-unnamed', reading, 'has a point without a name.', 'Name all of its points.');
  if (name !== '__proto__') return null;
  return refuse(
    'point-unnamed',
    reading,
    'has a point named __proto__, which cannot be used.',
    'Name it otherwise.',
  );
}
