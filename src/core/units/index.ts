export { formatLength, millimetresPerInch } from './format-length.ts';
export type { LengthFormat, LengthSystem } from './format-length.ts';
export { formatMoney, formatNumber } from './format-number.ts';
export { markSize, sayLengths, sayLengthsWithin } from './marked-size.ts';
export { parseLength } from './parse-length.ts';
export { roundDown, roundNearest, roundUp } from './round.ts';
