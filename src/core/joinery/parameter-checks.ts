import type { Problem } from '#core/problems';
import type { ParameterInfo } from './piece-types.ts';

/** Findings on numbers outside the limits of their table: outside a limit a `warn`, no usable number at all a `stop`. */
export function checkParameters(
  parameters: object,
  infos: readonly ParameterInfo[],
  about: string,
): readonly Problem[] {
  const given = parameters as Readonly<Record<string, unknown>>;
  return infos.flatMap((info) => checkOne(given[info.key], info, about));
}

function checkOne(value: unknown, info: ParameterInfo, about: string): readonly Problem[] {
  if (Array.isArray(value) && info.type === 'lengths') return value.flatMap((v) => checkOne(v, info, about));
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
