import { resolve } from 'node:path';

import { planEverything, understandProject } from '#core/pipeline';
import { makeBundle } from '#formats/bundle';
import { readProject } from '#formats/json';
import { cutTogether, nestTogether } from '#solver/threads';

import type { Arguments } from '../arguments.ts';
import { readFonts } from '../fonts.ts';
import type { Io } from '../io.ts';
import type { Outcome } from '../outcome.ts';
import { readInput } from '../read-input.ts';
import { checkFolder, writeFolder } from '../write-folder.ts';
import { countWorkers } from './count-workers.ts';
import { oneFile } from './one-file.ts';

/** Time of the whole run unless told otherwise, and what of it is kept for drawing and writing (of a short time a share), seconds. */
const defaultSeconds = 6;
const reserve = { most: 2.5, share: 0.6 } as const;

/** `plan PROJECT.json`: the whole chain from readings to files, written all at once. */
export async function runPlan(io: Io, given: Arguments): Promise<Outcome> {
  const file = oneFile(given, 'plan PROJECT.json');
  if (!file.ok) return { kind: 'refused', findings: file.problems };
  const folder = resolve(io.folder, given.output ?? 'joggle-out');
  const refused = checkFolder(folder);
  if (refused.length > 0) return { kind: 'refused', findings: refused };
  const text = readInput(io, file.value);
  if (!text.ok) return { kind: 'refused', findings: text.problems };
  const read = readProject(text.value);
  if (!read.ok) return { kind: 'refused', findings: read.problems };
  const project = read.value;
  const understanding = understandProject(project);
  const total = given.seconds ?? defaultSeconds;
  const seconds = Math.max(0.1, total - io.elapsed() - Math.min(reserve.most, total * reserve.share));
  const limits = { workers: countWorkers(given), work: given.work, seed: given.seed ?? 1 };
  const { planned, routed } = await planEverything(understanding, {
    clock: () => io.elapsed() * 1000,
    isByWork: given.work !== undefined,
    cut: (job, share, start) => cutTogether(job, { ...limits, seconds: share, start }),
    nest: (job, share) => nestTogether(job, { ...limits, seconds: share }),
    ...(given.work === undefined || given.seconds !== undefined ? { seconds } : {}),
  });
  const bundle = await makeBundle({ project, understanding, planned, routed, fonts: readFonts() });
  const written = writeFolder(folder, bundle.files);
  if (!written.ok) return { kind: 'refused', findings: written.problems };
  const contentOf = (path: string): string =>
    String(bundle.files.find((each) => each.path === path)?.content ?? '');
  io.say(`${bundle.files.length} files written to ${folder}\n`);
  return {
    kind: 'done',
    document: JSON.parse(contentOf('plan.json')) as unknown,
    text: contentOf('summary.txt'),
    findings: bundle.findings,
    project,
  };
}
