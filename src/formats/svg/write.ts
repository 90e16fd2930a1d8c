import { sizePerHeight } from '#core/drawing';
import type { Drawing, Fill, Mark, Page } from '#core/drawing';
import { formatNumber as n, pathData } from './path-data.ts';
import { fillPattern, paperColours, patternFills, penStyle } from './style.ts';

/** Families to set text in; the first is the one the paper is printed with. */
export const fontFamily = "'DejaVu Sans Condensed', 'DejaVu Sans', 'Arial Narrow', Arial, sans-serif";

/** The drawing as an SVG file of true size: 1 user unit is 1 mm. The same drawing gives the same bytes. */
export function writeSvg(drawing: Drawing): string {
  const { minX, minY, maxX, maxY } = drawing.bounds;
  const [width, height] = [maxX - minX, maxY - minY];
  return [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" viewBox="${n(minX)} ${n(-maxY)} ${n(width)} ${n(height)}">`,
    `<title>${escapeXml(drawing.title)}</title>`,
    writeDefs(usedFills(drawing.marks)),
    `<rect x="${n(minX)}" y="${n(-maxY)}" width="${n(width)}" height="${n(height)}" fill="${paperColours.paper}"/>`,
    ...writePictures(drawing),
    writeMarks(drawing.marks),
    `</svg>\n`,
  ].join('\n');
}

/** A page of paper as an SVG file of true size, its drawings in place. */
export function writePageSvg(page: Page): string {
  const items = page.items.map(({ drawing, at, clip }) => {
    const { minX, minY } = drawing.bounds;
    const moved = `<g transform="translate(${n(at.x - minX)} ${n(page.height - at.y + minY)})">\n${[...writePictures(drawing), writeMarks(drawing.marks)].join('\n')}\n</g>`;
    if (!clip) return moved;
    const [w, h] = [clip.maxX - clip.minX, clip.maxY - clip.minY];
    const [x, y] = [clip.minX, page.height - clip.maxY];
    return `<svg x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}" viewBox="${n(x)} ${n(y)} ${n(w)} ${n(h)}" overflow="hidden">\n${moved}\n</svg>`;
  });
  const fills = usedFills(page.items.flatMap((item) => item.drawing.marks));
  return [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(page.width)}mm" height="${n(page.height)}mm" viewBox="0 0 ${n(page.width)} ${n(page.height)}">`,
    `<title>${escapeXml(page.title)}</title>`,
    writeDefs(fills),
    `<rect width="${n(page.width)}" height="${n(page.height)}" fill="${paperColours.paper}"/>`,
    ...items,
    `</svg>\n`,
  ].join('\n');
}

function usedFills(marks: readonly Mark[]): readonly Fill[] {
  return patternFills.filter((fill) => marks.some((mark) => mark.kind === 'path' && mark.fill === fill));
}

function writeDefs(fills: readonly Fill[]): string {
  const tiles = fills.flatMap((fill) => fillPattern(fill).tile ?? []);
  const patterns = tiles.map((tile) => {
    const dash = tile.dash ? ` stroke-dasharray="${tile.dash}"` : '';
    return `<pattern id="${tile.id}" width="${n(tile.width)}" height="${n(tile.height)}" patternUnits="userSpaceOnUse" patternTransform="rotate(${n(tile.turn)})"><path d="${tile.path}" stroke="${paperColours[tile.tone]}" stroke-width="${tile.lineWidth}" fill="none"${dash}/></pattern>`;
  });
  return `<defs>${patterns.join('')}</defs>`;
}

function writePictures({ pictures = [] }: Drawing): readonly string[] {
  return pictures.map(({ image, box }) => {
    const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
    return `<image x="${n(box.minX)}" y="${n(-box.maxY)}" width="${n(w)}" height="${n(h)}" preserveAspectRatio="none" href="${escapeXml(image)}"/>`;
  });
}

function writeMarks(marks: readonly Mark[]): string {
  const drawn = marks.map((mark) => (mark.kind === 'text' ? writeText(mark) : writePath(mark))).join('\n');
  return `<g fill="none" stroke-linecap="butt" stroke-linejoin="round" font-family="${fontFamily}">\n${drawn}\n</g>`;
}

function writePath(mark: Extract<Mark, { kind: 'path' }>): string {
  const d = pathData(mark);
  const link = mark.link === undefined ? '' : ` data-link="${escapeXml(mark.link)}"`;
  const { ground, tile } = fillPattern(mark.fill ?? 'none');
  const pen = penStyle(mark.pen);
  const stroke = pen
    ? ` stroke="${paperColours[pen.tone]}" stroke-width="${pen.width}"${pen.dash ? ` stroke-dasharray="${pen.dash}"` : ''}`
    : '';
  if (!tile) return `<path d="${d}"${ground ? ` fill="${paperColours[ground]}"` : ''}${stroke}${link}/>`;
  const under = ground ? `<path d="${d}" fill="${paperColours[ground]}"/>\n` : '';
  return `${under}<path d="${d}" fill="url(#${tile.id})"${stroke}${link}/>`;
}

function writeText(mark: Extract<Mark, { kind: 'text' }>): string {
  const tone = paperColours[mark.tone ?? 'ink'];
  const [x, y] = [n(mark.at.x), n(-mark.at.y)];
  const turn = mark.turn ? ` transform="rotate(${n((-mark.turn * 180) / Math.PI)} ${x} ${y})"` : '';
  const anchor = mark.align === 'start' ? '' : ` text-anchor="${mark.align}"`;
  const weight = mark.weight === 'bold' ? ' font-weight="bold"' : '';
  const link = mark.link === undefined ? '' : ` data-link="${escapeXml(mark.link)}"`;
  return `<text x="${x}" y="${y}" font-size="${n(mark.height * sizePerHeight)}" fill="${tone}"${anchor}${weight}${turn}${link} xml:space="preserve">${escapeXml(mark.text)}</text>`;
}

/** Text made safe for XML content and attributes; characters XML forbids are left out. */
export function escapeXml(text: string): string {
  return Array.from(text)
    .filter((c) => isXmlCharacter(c.codePointAt(0) ?? 0))
    .join('')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
}

// XML 1.0, production 2
function isXmlCharacter(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || code >= 0x10000;
}
