import {
  adjustShape,
  chooseOutline,
  traceOutline,
  type OutlineCandidate,
  type OutlineChoice,
} from '#core/pipeline';
import { fail, hasStop, succeed, type Problem, type Result } from '#core/problems';
import { applyCommand, type MeasuredOutline, type Project } from '#core/project';
import { formatNumber } from '#core/units';
import { readDxfDrawing } from '#formats/dxf';
import { readProject } from '#formats/json';
import { readSvgDrawing } from '#formats/svg';

import { wrongUse, type Arguments } from '../arguments.ts';
import type { Io } from '../io.ts';
import type { Outcome } from '../outcome.ts';
import { readInput } from '../read-input.ts';
import { oneFile } from './one-file.ts';

const usage = 'trace DRAWING.dxf|.svg [--into PROJECT.json]';

/**
 * `trace DRAWING`: the closed contours of a drawing. With `--into PROJECT` one of them becomes a shape of the project, which is
 * answered whole and not written over.
 */
export async function runTrace(io: Io, given: Arguments): Promise<Outcome> {
  const choice = readChoice(io, given);
  if (!choice.ok) return { kind: 'refused', findings: choice.problems };
  const { candidates, findings } = choice.value;
  if (given.into === undefined) return listCandidates(choice.value);
  const candidate = pick(candidates, given);
  if (!candidate.ok) return { kind: 'refused', findings: [...findings, ...candidate.problems] };
  const added = addOutline(io, given.into, (project) => makeShape(project, candidate.value, given));
  if (!added.ok) return { kind: 'refused', findings: added.problems };
  const { shape, project } = added.value;
  const told = adjustShape(shape).adjustment.findings;
  return {
    kind: 'done',
    document: project,
    text: `${shape.name}: ${describe(candidate.value)}, corners ${shape.corners.join(', ')}. Add --json and send the answer to a new file to keep it.\n`,
    findings: [...findings, ...told],
  };
}

const units: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };

function readChoice(io: Io, given: Arguments): Result<OutlineChoice> {
  const file = oneFile(given, usage);
  if (!file.ok) return file;
  const unit = given.unit === undefined ? undefined : units[given.unit];
  if (given.unit !== undefined && unit === undefined)
    return fail(
      wrongUse('--unit', `--unit is "${given.unit}"; it must be one of ${Object.keys(units).join(', ')}.`),
    );
  const text = readInput(io, file.value);
  if (!text.ok) return text;
  const drawing =
    /\.svg$/i.test(file.value) || text.value.trimStart().startsWith('<')
      ? readSvgDrawing(text.value)
      : readDxfDrawing(text.value);
  if (!drawing.ok) return drawing;
  const choice = chooseOutline(drawing.value, unit);
  return hasStop(choice.findings) ? fail(...choice.findings) : succeed(choice);
}

function listCandidates({ candidates, findings }: OutlineChoice): Outcome {
  const rows = candidates.map(({ number, layer, width, height, area, inside }) => ({
    ...{ contour: number + 1, layer, width, height, area, inside },
  }));
  const lines = candidates.map((candidate) => `  ${candidate.number + 1}. ${describe(candidate)}`);
  return { kind: 'done', document: { contours: rows, findings }, text: `${lines.join('\n')}\n`, findings };
}

function describe({ layer, width, height, inside }: OutlineCandidate): string {
  const where = layer === '' ? '' : ` on the layer "${layer}"`;
  const within = inside === 0 ? '' : `, ${inside} within it`;
  return `${formatNumber(width)} × ${formatNumber(height)} mm${where}${within}`;
}

/** The contour asked for; without being asked the largest, of the layer if one is named. */
function pick(
  candidates: readonly OutlineCandidate[],
  { layer, contour }: Arguments,
): Result<OutlineCandidate> {
  const onLayer = candidates.filter((each) => layer === undefined || each.layer === layer);
  const found = contour === undefined ? onLayer[0] : onLayer.find(({ number }) => number + 1 === contour);
  if (found) return succeed(found);
  const known = [...new Set(candidates.map((each) => each.layer))].join(', ');
  return fail(
    wrongUse(
      contour === undefined ? '--layer' : '--contour',
      `The drawing has no contour ${contour ?? ''} ${layer === undefined ? '' : `on the layer "${layer}"`}`
        .trim()
        .concat('.'),
      `It has ${candidates.length}; layers: ${known || 'none'}.`,
    ),
  );
}

function makeShape(project: Project, candidate: OutlineCandidate, given: Arguments): MeasuredOutline {
  const source = given.files[0]?.replace(/^.*[/\\]/, '') ?? '-';
  const name = given.name ?? source.replace(/\.[^.]*$/, '');
  const taken = project.shapes.map(({ id }) => id);
  const plain =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'outline';
  let id = plain;
  for (let count = 2; taken.includes(id); count += 1) id = `${plain}-${count}`;
  return traceOutline(candidate, { id, name, seenFrom: given.seenFrom ?? '', source });
}

function addOutline(
  io: Io,
  path: string,
  make: (project: Project) => MeasuredOutline,
): Result<{ readonly shape: MeasuredOutline; readonly project: Project }> {
  const text = readInput(io, path);
  if (!text.ok) return text;
  const read = readProject(text.value);
  if (!read.ok) return read;
  const shape = make(read.value);
  if (shape.seenFrom === '') return fail(...lacksSide);
  const added = applyCommand(read.value, { kind: 'add-shape', shape });
  return added.ok ? succeed({ shape, project: added.value }) : added;
}

const lacksSide: readonly Problem[] = [
  wrongUse(
    '--seen-from',
    'Nothing says from which side the drawing is seen, and it cannot be told from its mirror image.',
    'Add --seen-from "standing in the saloon, looking forward".',
  ),
];
