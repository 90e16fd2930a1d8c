/** Currencies without a minor unit (ISO 4217). */
const wholeCurrencies: readonly string[] = [
  'CLP',
  'ISK',
  'JPY',
  'KRW',
  'PYG',
  'UGX',
  'VND',
  'XAF',
  'XOF',
  'XPF',
];

/** Plain digits with a decimal point, at most `decimals` of them, trailing zeros left off; never an exponent or minus zero. */
export function formatNumber(value: number, decimals = 1): string {
  const fixed = formatFixed(value, decimals);
  return fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
}

/** An amount with its ISO 4217 code after it, as `78.00 EUR`. */
export function formatMoney(amount: number, currency: string): string {
  return `${formatFixed(amount, wholeCurrencies.includes(currency) ? 0 : 2)} ${currency}`;
}

function formatFixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new Error(`not a number to show: ${value}`);
  if (Math.abs(value) >= 1e21) return BigInt(Math.round(value)).toString();
  // A hair above the tie, so that 1.005 shows as 1.01: the double nearest to it lies just below.
  const nudged = value + Math.sign(value) * Math.abs(value) * Number.EPSILON;
  const fixed = nudged.toFixed(decimals);
  return Number(fixed) === 0 ? fixed.replace('-', '') : fixed;
}
