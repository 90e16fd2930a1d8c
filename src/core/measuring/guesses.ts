import type { Problem } from '#core/problems';
import { knowsHand } from './datum.ts';
import { isSided } from './network.ts';
import type { Position } from './network.ts';
import type { Study } from './study.ts';
import { joinWords } from './words.ts';

/** What was taken for granted because no reading tells it: left or right, above or below, upright. */
export function findGuesses(study: Study): readonly Problem[] {
  const { found, survey, readings, loose } = study;
  if (loose.points.length > 0) return [];
  const findings: Problem[] = [];
  const names = found.fit.network.points;
  const upright = readings.some((r) => r.kind === 'plumb') && readings.some((r) => r.kind === 'level');
  const sided = found.fit.network.observations.some(isSided);
  const signed = upright || sided;
  if (names.length > 2 && !knowsHand(names) && !survey.corners && !signed && study.datum)
    findings.push({
      severity: 'note',
      code: 'hand-guessed',
      message: `Distances cannot tell this shape from its mirror image: ${names.find((n) => found.fit.position.points[n]?.y !== 0) ?? names[2] ?? ''} is taken to lie above the first line.`,
      remedy: `Compare the drawing with what you see ${survey.seenFrom}.`,
      source: 'joinery 0.1',
    });
  if (
    knowsHand(names) &&
    study.datum &&
    !sided &&
    Object.values(found.fit.position.points).some(({ y }) => y < -1)
  )
    findings.push({
      severity: 'note',
      code: 'shown-mirrored',
      message:
        'The first distance makes the opening lie below its line; the coordinates listed are mirrored to lie above it.',
      remedy: 'Enter the bottom width first to see the opening as it stands.',
    });
  if (knowsHand(names) && names.length > 3 && !found.fit.network.tiltFree)
    findings.push({
      severity: 'note',
      code: 'upright-unknown',
      message:
        'No plumb or level reading says how the opening stands to the boat’s upright; the sill is taken as level.',
      remedy: 'Measure the lean of both jambs and the rise of sill and head against the boat’s datum.',
      source: 'joinery A10',
    });
  if (found.rival) findings.push(tellRival(study, found.rival));
  return findings;
}

/** Points further apart than this in two shapes that fit equally well are told, mm. */
const elsewhere = 1;

function tellRival({ found }: Study, rival: Position): Problem {
  const { points, position } = { points: found.fit.network.points, position: found.fit.position };
  const moved = points.filter((name) => {
    const [p, q] = [position.points[name], rival.points[name]];
    return p && q && Math.hypot(p.x - q.x, p.y - q.y) > elsewhere;
  });
  const who = moved.length > 0 ? joinWords(moved.slice(0, 4)) : 'a point';
  return {
    severity: 'warn',
    code: 'shape-ambiguous',
    about: moved[0],
    message: `Another shape fits these readings as well: ${who} may lie on the other side of a line.`,
    remedy: `Measure from ${moved[0] ?? 'that point'} to one more point, off that line; or an offset, which has a side.`,
    source: 'joinery A4',
  };
}
