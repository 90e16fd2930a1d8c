const perUnit: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
  '': 25.4 / 96,
};

/** A length of an SVG attribute in mm, with mm for one of its units; null when it is none. `isReal` unless it is in pixels. */
export function readLength(
  text: string,
): { readonly millimetres: number; readonly perUnit: number; readonly isReal: boolean } | null {
  const match = /^\s*([+-]?[\d.]+(?:e[+-]?\d+)?)\s*(mm|cm|q|in|pt|pc|px|)\s*$/i.exec(text);
  const value = Number(match?.[1]);
  const unit = (match?.[2] ?? '?').toLowerCase();
  const factor = perUnit[unit];
  if (!match || factor === undefined || !Number.isFinite(value) || value <= 0) return null;
  return { millimetres: value * factor, perUnit: factor, isReal: unit !== 'px' && unit !== '' };
}
