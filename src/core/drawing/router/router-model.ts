import makerjs from 'makerjs';
import { arcBetween, sidesOf } from '#core/geometry';
import type { Outline } from '#core/geometry';
import type { Part } from '#core/joinery';
import { asSeen, seenPoint } from '../part-view.ts';
import { layerColour } from './layers.ts';
import type { Contour } from './operations.ts';

export interface RouterText {
  readonly layer: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

const accuracy = 1e-6; // mm and bulge, far finer than any machine; coarser rounding would bend arcs
const degrees = 180 / Math.PI;

/** An outline, or a line with two ends, as a model of lines and arcs. */
function modelOfOutline(outline: Outline, isOpen = false): makerjs.IModel {
  const paths: makerjs.IPathMap = {};
  const sides = sidesOf(outline);
  (isOpen ? sides.slice(0, -1) : sides).forEach(({ from, to, bulge }, i) => {
    const arc = arcBetween(from, to, bulge);
    if (!arc) {
      paths[`side${i}`] = new makerjs.paths.Line([from.x, from.y], [to.x, to.y]);
      return;
    }
    const [start, end] = [arc.start * degrees, (arc.start + arc.sweep) * degrees];
    const [low, high] = arc.sweep > 0 ? [start, end] : [end, start];
    paths[`side${i}`] = new makerjs.paths.Arc([arc.centre.x, arc.centre.y], arc.radius, low, high);
  });
  return { paths };
}

/** A contour of the part's own frame as seen from its face side: y runs the other way (`asSeen`). */
export function turnFaceUp(contour: Contour, part: Part): Contour {
  const { circle, outline, layer } = contour;
  return {
    layer,
    outline: outline.length > 0 ? asSeen(outline, part) : [],
    ...(circle && { circle: { ...circle, ...seenPoint(circle, part) } }),
  };
}

/**
 * DXF (lines, closed polylines with bulges, circles, texts) and SVG of a side. Each contour goes in on a layer of its own, so
 * that contours that touch are never joined; in the DXF the layers then get their shared names back.
 */
export function writeRouterModel(
  contours: readonly Contour[],
  texts: readonly RouterText[],
  lettering: Readonly<Record<string, number>>,
): { readonly dxf: string; readonly svg: string; readonly layers: readonly string[] } {
  const models: Record<string, makerjs.IModel> = {};
  contours.forEach((contour, i) => {
    const { circle, outline, isOpen } = contour;
    const model: makerjs.IModel = circle
      ? { paths: { circle: new makerjs.paths.Circle([circle.x, circle.y], circle.radius) } }
      : modelOfOutline(outline, isOpen);
    models[`contour${i}`] = { ...model, layer: `${contour.layer}-${i + 1}` };
  });
  texts.forEach(({ layer, text, x, y }, i) => {
    const anchor = new makerjs.paths.Line([x - 1, y], [x + 1, y]);
    models[`text${i}`] = { layer, caption: { text: toAscii(text), anchor } };
  });
  const layers = [...new Set([...contours, ...texts].map(({ layer }) => layer))];
  // of the numbered layers the first of each name goes into the table of layers
  const listed = new Map(
    [...Object.values(models)].reverse().map(({ layer = '' }) => [layer.replace(numbering, ''), layer]),
  );
  const layerOptions = Object.fromEntries(
    layers.map((layer) => {
      const fontSize = lettering[layer];
      const color = layerColour(layer);
      return [listed.get(layer) ?? layer, { color, ...(fontSize !== undefined && { fontSize }) }];
    }),
  );
  const model: makerjs.IModel = { models, units: makerjs.unitType.Millimeter };
  const dxf = makerjs.exporter.toDXF(model, {
    units: makerjs.unitType.Millimeter,
    usePOLYLINE: true,
    accuracy,
    layerOptions,
  });
  const svg = makerjs.exporter.toSVG(model, {
    units: makerjs.unitType.Millimeter,
    accuracy,
    fontSize: '4px',
  });
  return { dxf: shareLayers(dxf), svg, layers };
}

const numbering = /-\d+$/;

/** Takes the number off each layer name, in entities and in the table of layers: `POCKET_D06_50-3` becomes `POCKET_D06_50`. */
function shareLayers(dxf: string): string {
  const lines = dxf.split('\n');
  const named = (i: number) => lines[i - 1] === '8' || (lines[i - 1] === '2' && lines[i - 2] === 'LAYER');
  return lines
    .map((line, i) => (i % 2 === 1 && named(i) ? line.replace(numbering, '') : line))
    .join('\n')
    .concat('\n');
}

/** Text for a DXF file, which has no code page: plain ASCII on one line. */
export function toAscii(text: string): string {
  const replaced = text
    .replace(/×/g, 'x')
    .replace(/[–—\u2212]/g, '-')
    .replace(/[ØøÖö]/g, (c) => (c === 'Ø' ? 'dia ' : 'o'));
  return Array.from(replaced.normalize('NFKD'))
    .map((c) => (/[\u0300-\u036f]/.test(c) ? '' : c >= ' ' && c <= '~' ? c : '?'))
    .join('');
}
