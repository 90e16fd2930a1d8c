import type { Problem } from '#core/problems';
import type { ParameterInfo } from './piece-types.ts';

/** How far beyond a usual limit a number may lie before it can only be a slip: it would make parts without end, or none. */
const slip = { times: 10, share: 1 / 100, mostMm: 100_000 } as const;

/** Findings on numbers outside the limits of their table: outside a limit a `warn`, far outside it or no usable number at all a `stop`. */
export function checkParameters(
  parameters: object,
  infos: readonly ParameterInfo[],
  about: string,
): readonly Problem[] {
  const given = parameters as Readonly<Record<string, unknown>>;
  return infos.flatMap((info) => checkOne(given[info.key], info, about));
}

function checkOne(value: unknown, info: ParameterInfo, about: string): readonly Problem[] {
  const isList = info.type === 'lengths' || info.type === 'numbers';
  if (Array.isArray(value) && isList) return value.flatMap((v) => checkOne(v, info, about));
  if (typeof value !== 'number') return [];
  const say = (severity: Problem['severity'], code: string, message: string, remedy: string): Problem => ({
    severity,
    code,
    about,
    message: `${info.label}: ${message}`,
    remedy,
    ...(info.source && { source: info.source }),
  });
  const nothing = value === 0 && info.min !== undefined && info.min > 0;
  if (!Number.isFinite(value) || value < 0 || nothing) {
    return [say('stop', 'parameter-unusable', `${value} is not a size.`, 'Enter a positive number.')];
  }
  const most = info.max === undefined ? slip.mostMm : Math.min(slip.mostMm, slip.times * info.max);
  if (value > most) {
    const remedy = `Enter ${info.max ?? most} or less; ${most} is the most that can be reckoned with.`;
    return [say('stop', 'parameter-unusable', `${value} is far too much.`, remedy)];
  }
  if (info.min !== undefined && value < slip.share * info.min) {
    const remedy = `Enter ${info.min} or more.`;
    return [say('stop', 'parameter-unusable', `${value} is far too little.`, remedy)];
  }
  if (info.min !== undefined && value < info.min) {
    return [
      say(
        'warn',
        'parameter-below-limit',
        `${value} is below the usual least of ${info.min}.`,
        `Use ${info.min} or more, unless this is meant.`,
      ),
    ];
  }
  if (info.max !== undefined && value > info.max) {
    return [
      say(
        'warn',
        'parameter-above-limit',
        `${value} is above the usual most of ${info.max}.`,
        `Use ${info.max} or less, unless this is meant.`,
      ),
    ];
  }
  return [];
}
