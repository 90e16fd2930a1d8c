export { formatNumber, pathData } from './path-data.ts';
export { fillPattern, paperColours, patternFills, penStyle } from './style.ts';
export type { PatternTile } from './style.ts';
export { escapeXml, fontFamily, writePageSvg, writeSvg } from './write.ts';
export { readSvgDrawing } from './read-drawing.ts';
