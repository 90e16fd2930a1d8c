import { say } from './check-words.ts';
import type { Trial } from './saving.ts';
import type { CutRules, CuttingJob, Trim } from './types.ts';

const edges = ['left', 'right', 'bottom', 'top'] as const;

/** Each trimmed edge left as it is, to find the one that costs a sheet; and all of them where there are several. */
export function trimTrials(job: CuttingJob): readonly Trial[] {
  const trim = job.trim ?? {};
  const flat = job.cuts?.style === 'length';
  const trimmed = edges.filter((edge) => (trim[edge] ?? 0) > 0 && !(flat && isAcross(edge)));
  const one = trimmed.map((edge) => {
    const [place, width] = [flat ? 'end' : 'edge', say(trim[edge] ?? 0)];
    return trialOf(job, { ...trim, [edge]: 0 }, `With the ${width} mm off the ${edge} ${place} not trimmed`);
  });
  if (trimmed.length < 2) return one;
  return [...one, trialOf(job, {}, flat ? 'With no end trimmed' : 'With no edge trimmed')];
}

function isAcross(edge: (typeof edges)[number]): boolean {
  return edge === 'bottom' || edge === 'top';
}

function trialOf(job: CuttingJob, trim: Trim, words: string): Trial {
  return { change: 'trim', words, job: { ...job, trim } };
}

/** Each limit of the saw taken away, and the bad spots of the stock: what they cost is worth knowing. */
export function limitTrials(job: CuttingJob): readonly Trial[] {
  const { cuts = {} } = job;
  const without = (words: string, change: Partial<CutRules>): Trial => ({
    ...{ change: 'limit', words },
    job: { ...job, cuts: { ...cuts, ...change } },
  });
  const trials: Trial[] = [];
  if (isSawn(cuts)) {
    if (cuts.maxStages != null)
      trials.push(
        without(`With more than ${cuts.maxStages} stages of cutting`, { maxStages: null, exact: false }),
      );
    if (cuts.maxRip != null)
      trials.push(without(`With rips wider than ${say(cuts.maxRip)} mm`, { maxRip: null }));
    if (cuts.maxCut != null)
      trials.push(without(`With cuts longer than ${say(cuts.maxCut)} mm`, { maxCut: null }));
    if (cuts.firstCut === 'along' || cuts.firstCut === 'across')
      trials.push(without('With the first cut either way', { firstCut: 'either' }));
  }
  const spotted = job.stock.filter(({ keepOut }) => (keepOut ?? []).length > 0);
  if (spotted.length === 0) return trials;
  const stock = job.stock.map((each) => ({ ...each, keepOut: [] }));
  const words = `With no bad spots in ${spotted.map(({ id }) => id).join(', ')}`;
  return [...trials, { change: 'spot', words, job: { ...job, stock } }];
}

function isSawn({ style }: CutRules): boolean {
  return (style ?? 'guillotine') === 'guillotine';
}
